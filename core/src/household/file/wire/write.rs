//! From the household to the record.

use super::super::super::kinds::{Loss, PriceItem};
use super::super::super::{
    CopyId, HolderId, Household, KeyCopy, Keyway, Label, Place, Prices, Way, WayId,
};
use super::{
    MARK, Record, WireCopy, WireDoor, WireHolder, WireKey, WireLock, WireLoss, WirePrice,
    WirePrices, WireWay, finding_word, urgency_word,
};

impl<'a> Record<'a> {
    pub(in super::super) fn of(household: &'a Household) -> Self {
        let label = |label: &'a Option<Label>| label.as_ref().map(|label| label.as_str().into());
        Self {
            version: super::super::VERSION,
            record: MARK.into(),
            next: household.next,
            doors: household
                .doors()
                .map(|(id, door)| WireDoor {
                    id: id.0,
                    kind: door.kind.id().into(),
                    decides: door.who_decides.id().into(),
                    material: door.material.map(|material| material.id().into()),
                    label: label(&door.label),
                })
                .collect(),
            holders: household
                .holders()
                .map(|(id, holder)| WireHolder {
                    id: id.0,
                    role: holder.role.id().into(),
                    needs: holder
                        .needs
                        .as_ref()
                        .map(|needs| needs.iter().map(|door| door.0).collect()),
                    former: holder.no_longer_should,
                    label: label(&holder.label),
                })
                .collect(),
            keys: household
                .keys()
                .map(|(id, key)| WireKey {
                    id: id.0,
                    restricted: key.restricted,
                    finding: key
                        .finding
                        .map(|finding| finding_word(finding.exposure).into()),
                    copied: key
                        .may_be_copied
                        .map(|urgency| urgency_word(urgency).into()),
                })
                .collect(),
            locks: household
                .locks()
                .map(|(id, lock)| WireLock {
                    id: id.0,
                    door: lock.door.0,
                    kind: lock.kind.id().into(),
                    keys: lock.keys.iter().map(|key| key.0).collect(),
                    arrangement: lock.arrangement.id().into(),
                    inside: lock.inside.map(|inside| inside.id().into()),
                    keyway: lock.keyway.map(Keyway::number),
                    lengths: lock
                        .lengths
                        .map(|lengths| [lengths.outside_mm(), lengths.inside_mm()]),
                    reply: lock.reply.map(|reply| reply.id().into()),
                })
                .collect(),
            ways: household
                .ways()
                .map(|(id, way)| WireWay {
                    id: id.0,
                    door: way.door.0,
                    kind: way.kind.id().into(),
                    known: way.known_by.iter().map(|holder| holder.0).collect(),
                    given_away: way.given_away.map(|loss| loss.id().into()),
                    assumed: way.is_assumed,
                    lost: WireLoss::of(way),
                    reply: way.reply.map(|reply| reply.id().into()),
                })
                .collect(),
            copies: household
                .copies()
                .map(|(id, copy)| WireCopy::of(id, copy))
                .collect(),
            prices: WirePrices::of(household.prices()),
        }
    }
}

impl WireLoss<'_> {
    /// Those who lost theirs in the same way stand together.
    fn of(way: &Way) -> Vec<Self> {
        let by = |loss: Loss| {
            let lost = way.lost_by.iter().filter(move |&(_, by)| *by == loss);
            lost.map(|(who, _)| who.0).collect()
        };
        let all = Loss::ALL.iter().map(|&loss| Self {
            loss: loss.id().into(),
            who: by(loss),
        });
        all.filter(|lost| !lost.who.is_empty()).collect()
    }
}

impl WireCopy<'_> {
    fn of(id: CopyId, copy: &KeyCopy) -> Self {
        let (place, who, safe, loss) = match copy.place {
            Place::Held(holder) => ("held", Some(holder), None, None),
            Place::InKeySafe(way) => ("key-safe", None, Some(way), None),
            Place::AtHome { returned_by } => ("home", returned_by, None, None),
            Place::Lost {
                by,
                loss,
                from_safe,
            } => ("lost", by, from_safe, Some(loss)),
            Place::Scrapped { by } => ("scrapped", by, None, None),
        };
        Self {
            id: id.0,
            key: copy.key.0,
            place: place.into(),
            who: who.map(HolderId::number),
            safe: safe.map(WayId::number),
            loss: loss.map(|loss| loss.id().into()),
        }
    }
}

impl WirePrices<'_> {
    fn of(prices: &Prices) -> Self {
        let told = PriceItem::ALL.iter();
        let told = told.filter_map(|&item| prices.of(item).map(|price| (item, price)));
        Self {
            included: prices.copies_included,
            items: told
                .map(|(item, price)| WirePrice {
                    item: item.id().into(),
                    low: price.low(),
                    high: price.high(),
                })
                .collect(),
        }
    }
}
