//! What is known of single regions: whether locksmiths are licensed, in whose register to look, and
//! what the law says on rekeying. Every row names its sources, and one date tells when all rows were
//! last compared with them, which are older; laws change, so a page sends the reader to the register
//! and never to this list alone.

use crate::sources::regional::*;
use crate::sources::{Source, TEXAS_REKEYING};

/// A place with rules of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[allow(missing_docs, reason = "each name says it")]
pub enum Region {
    UnitedKingdom,
    Ireland,
    Quebec,
    Alberta,
    BritishColumbia,
    Queensland,
    NewSouthWales,
    WesternAustralia,
    NewZealand,
    Alabama,
    California,
    Connecticut,
    Florida,
    Illinois,
    Louisiana,
    Maryland,
    Nebraska,
    Nevada,
    NewJersey,
    NewYorkCity,
    NorthCarolina,
    Oklahoma,
    Oregon,
    Seattle,
    Tennessee,
    Texas,
    Virginia,
    /// Not listed: the page says what to ask, and of whom.
    Elsewhere,
}

/// Whether locksmiths need a licence there.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Licensing {
    /// They do.
    Licensed,
    /// The city or county licenses them.
    LicensedLocally,
    /// They do not.
    NotLicensed,
    /// What was read does not say, or says both.
    Unclear,
}

/// What the law says about changing or rekeying locks of a rented home.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum TenancyRule {
    /// Rekeyed by the landlord between tenants, at the landlord's cost.
    RekeyedBetweenTenants,
    /// Rekeyed as often as the tenant asks, at the tenant's cost; at the landlord's where a master
    /// key is the reason. Doors inside the home are left out.
    RekeyedWheneverTenantAsks,
    /// A change on request after domestic violence.
    ChangedOnRequestForSafety,
    /// The landlord keeps a log of keys.
    KeysAreLogged,
}

/// Where in a region a rule on rented homes holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Scope {
    /// Everywhere in it, as far as was read.
    Everywhere,
    /// Only in counties with more than so many people.
    CountiesOver {
        /// The number of people.
        people: u32,
        /// The counties that have so many, by their own names.
        counties: &'static str,
    },
}

/// One rule on locks of rented homes.
#[derive(Clone, Copy, Debug)]
pub struct TenancyRow {
    /// What it says.
    pub rule: TenancyRule,
    /// Where it holds.
    pub scope: Scope,
    /// Where the rule and its scope come from.
    pub source: &'static Source,
}

/// What is known of one region.
#[derive(Debug)]
pub struct RegionRow {
    /// The region.
    pub region: Region,
    /// Whether locksmiths are licensed.
    pub licensing: Licensing,
    /// The authority whose register tells, by its own name; empty where none was found.
    pub register: &'static str,
    /// Rules on locks of rented homes.
    pub tenancy: &'static [TenancyRow],
    /// Where the licensing figure comes from; empty for [`Region::Elsewhere`].
    pub sources: &'static [&'static Source],
}

/// When all rows were last compared with their sources: year and month. A source may be older, and
/// the law newer than either.
pub const LAST_COMPARED: (u16, u8) = (2026, 11);

/// Every row, in the order in which a page lists them.
pub static REGIONS: &[RegionRow] = &[
    row(
        Region::UnitedKingdom,
        Licensing::NotLicensed,
        "",
        &[],
        &[&UK_WRITTEN_ANSWER],
    ),
    row(
        Region::Ireland,
        Licensing::Licensed,
        "Private Security Authority",
        &[],
        &[&IRELAND_PSA_55],
    ),
    row(
        Region::Quebec,
        Licensing::Licensed,
        "Bureau de la sécurité privée",
        &[],
        &[&QUEBEC_PRIVATE_SECURITY],
    ),
    row(
        Region::Alberta,
        Licensing::Licensed,
        "",
        &[],
        &[&ALBERTA_SECURITY_SERVICES],
    ),
    row(
        Region::BritishColumbia,
        Licensing::Licensed,
        "",
        &[],
        &[&BC_LICENSING],
    ),
    row(
        Region::Queensland,
        Licensing::Licensed,
        "Office of Fair Trading",
        &[],
        &[&QUEENSLAND_SECURITY_PROVIDERS],
    ),
    row(
        Region::NewSouthWales,
        Licensing::Unclear,
        "NSW Police, Security Licensing and Enforcement Directorate",
        &[],
        &[&NSW_SECURITY_INDUSTRY],
    ),
    row(
        Region::WesternAustralia,
        Licensing::Licensed,
        "Western Australia Police",
        &[],
        &[&WA_SECURITY_ACTIVITIES],
    ),
    row(
        Region::NewZealand,
        Licensing::Unclear,
        "Private Security Personnel Licensing Authority",
        &[],
        &[&NZ_SECURITY_PERSONNEL],
    ),
    state(Region::Alabama),
    state(Region::California),
    state(Region::Connecticut),
    row(
        Region::Florida,
        Licensing::NotLicensed,
        "",
        &[everywhere(TenancyRule::KeysAreLogged, &FLORIDA_KEY_LOG)],
        &[&STATE_LICENSING_CHANGES],
    ),
    row(
        Region::Illinois,
        Licensing::Licensed,
        "",
        &[
            TenancyRow {
                rule: TenancyRule::RekeyedBetweenTenants,
                scope: Scope::CountiesOver {
                    people: 3_000_000,
                    counties: "Cook County",
                },
                source: &ILLINOIS_REKEYING,
            },
            everywhere(TenancyRule::ChangedOnRequestForSafety, &ILLINOIS_SAFE_HOMES),
        ],
        &[&STATE_LICENSING],
    ),
    state(Region::Louisiana),
    state(Region::Maryland),
    row(
        Region::Nebraska,
        Licensing::NotLicensed,
        "",
        &[],
        &[&STATE_LICENSING_CHANGES],
    ),
    state(Region::Nevada),
    state(Region::NewJersey),
    row(
        Region::NewYorkCity,
        Licensing::LicensedLocally,
        "",
        &[],
        &[&STATE_LICENSING_CHANGES],
    ),
    state(Region::NorthCarolina),
    state(Region::Oklahoma),
    row(
        Region::Oregon,
        Licensing::Licensed,
        "",
        &[everywhere(
            TenancyRule::ChangedOnRequestForSafety,
            &OREGON_LOCK_CHANGE,
        )],
        &[&STATE_LICENSING],
    ),
    row(
        Region::Seattle,
        Licensing::Unclear,
        "",
        &[everywhere(
            TenancyRule::RekeyedBetweenTenants,
            &SEATTLE_HOUSING,
        )],
        &[&SEATTLE_HOUSING],
    ),
    row(
        Region::Tennessee,
        Licensing::NotLicensed,
        "",
        &[],
        &[&STATE_LICENSING_CHANGES],
    ),
    row(
        Region::Texas,
        Licensing::Licensed,
        "",
        &[
            everywhere(TenancyRule::RekeyedBetweenTenants, &TEXAS_REKEYING),
            everywhere(
                TenancyRule::RekeyedWheneverTenantAsks,
                &TEXAS_REKEYING_ON_REQUEST,
            ),
        ],
        &[&STATE_LICENSING],
    ),
    state(Region::Virginia),
    row(Region::Elsewhere, Licensing::Unclear, "", &[], &[]),
];

impl Region {
    /// What is known of the region.
    pub fn row(self) -> &'static RegionRow {
        &REGIONS[self as usize]
    }
}

const fn state(region: Region) -> RegionRow {
    const SOURCES: &[&Source] = &[&STATE_LICENSING];
    row(region, Licensing::Licensed, "", &[], SOURCES)
}

const fn everywhere(rule: TenancyRule, source: &'static Source) -> TenancyRow {
    TenancyRow {
        rule,
        scope: Scope::Everywhere,
        source,
    }
}

const fn row(
    region: Region,
    licensing: Licensing,
    register: &'static str,
    tenancy: &'static [TenancyRow],
    sources: &'static [&'static Source],
) -> RegionRow {
    RegionRow {
        region,
        licensing,
        register,
        tenancy,
        sources,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_stand_in_the_order_of_their_regions() {
        for (index, row) in REGIONS.iter().enumerate() {
            assert_eq!(row.region as usize, index);
        }
        assert_eq!(REGIONS.len(), Region::Elsewhere as usize + 1);
    }

    /// What reads as a duty all over a state or city, and what holds in a part of it only.
    #[test]
    fn rules_hold_everywhere_but_where_a_law_names_its_places() {
        let parts: Vec<_> = REGIONS
            .iter()
            .flat_map(|row| row.tenancy.iter().map(move |rule| (row.region, rule)))
            .filter(|(_, rule)| rule.scope != Scope::Everywhere)
            .map(|(region, rule)| (region, rule.rule, rule.scope))
            .collect();
        let scope = Scope::CountiesOver {
            people: 3_000_000,
            counties: "Cook County",
        };
        let duty = (Region::Illinois, TenancyRule::RekeyedBetweenTenants, scope);
        assert_eq!(parts, [duty]);
    }

    #[test]
    fn rows_all_have_a_source_but_for_the_unlisted_region() {
        for row in REGIONS {
            assert_eq!(row.sources.is_empty(), row.region == Region::Elsewhere);
        }
    }
}
