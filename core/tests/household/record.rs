//! Records from anywhere.

use std::collections::BTreeSet;

use self_check_core::household::file::{ImportError, MOST_BYTES, MOST_NESTING, export, import};
use self_check_core::household::*;

use super::estate::{Size, estate};

fn text() -> String {
    export(&demonstration::household()).unwrap()
}

/// The record with one piece of text put in another's place; fails where there is none.
fn with(from: &str, to: &str) -> Vec<u8> {
    let text = text();
    assert!(text.contains(from), "the record has no {from}");
    text.replacen(from, to, 1).into_bytes()
}

#[test]
fn record_begins_with_its_version_and_names_itself() {
    assert!(text().starts_with(r#"{"version":1,"record":"keys-and-doors","#));
}

#[test]
fn record_written_by_hand_is_read() {
    let text = r#" { "version": 1, "record": "keys-and-doors", "next": 6,
        "doors": [{"id": 1, "kind": "front-door", "decides": "household", "label": "f\u00fcr 2"}],
        "holders": [{"id": 2, "role": "neighbour"}],
        "keys": [{"id": 3, "finding": "exposed-soon"}],
        "locks": [{"id": 4, "door": 1, "kind": "lever", "keys": [3], "arrangement": "one-key"}],
        "ways": [], "copies": [{"id": 5, "key": 3, "place": "held", "who": 2}],
        "prices": {"included": 0, "items": []} } "#;
    let home = import(text.as_bytes()).unwrap();
    let door = home.door(DoorId::new(1)).unwrap();
    assert_eq!(door.label.as_ref().map(Label::as_str), Some("für 2"));
    assert_eq!(home.next_door(), DoorId::new(6));
    assert_eq!(plan(&home, Choices::default()).works.len(), 1);
}

#[test]
fn other_texts_are_told_apart() {
    let cases: [(&[u8], ImportError); 14] = [
        (b"", ImportError::CutShort),
        (b"   ", ImportError::CutShort),
        (b"{", ImportError::CutShort),
        (b"\xff\xfe{}", ImportError::Damaged),
        (b"PK\x03\x04", ImportError::Damaged),
        (b"<html></html>", ImportError::Damaged),
        (b"{}", ImportError::Foreign),
        (b"[]", ImportError::Foreign),
        (b"null", ImportError::Foreign),
        (b"42", ImportError::Foreign),
        (br#"{"version":1}"#, ImportError::Foreign),
        (
            br#"{"version":1,"record":"something-else"}"#,
            ImportError::Foreign,
        ),
        (
            br#"{"version":"1","record":"keys-and-doors"}"#,
            ImportError::Foreign,
        ),
        (
            br#"{"version":1,"record":"keys-and-doors"}"#,
            ImportError::Damaged,
        ),
    ];
    for (bytes, error) in cases {
        assert_eq!(
            import(bytes),
            Err(error),
            "{}",
            String::from_utf8_lossy(bytes)
        );
    }
}

#[test]
fn other_versions_are_named() {
    for version in [0, 2, 7, u32::MAX] {
        let bytes = with(r#""version":1"#, &format!(r#""version":{version}"#));
        assert_eq!(import(&bytes), Err(ImportError::UnknownVersion(version)));
    }
    let later = br#"{"version":2,"record":"keys-and-doors","rooms":[{"a":[1]}]}"#;
    assert_eq!(import(later), Err(ImportError::UnknownVersion(2)));
}

#[test]
fn damaged_fields_are_refused() {
    let cases = [
        (r#""next":"#, r#""next":1,"next":"#),
        (r#""doors":["#, r#""more":0,"doors":["#),
        (r#""kind":"front-door""#, r#""kind":"trap-door""#),
        (r#""kind":"front-door""#, r#""kind":7"#),
        (r#""kind":"front-door","#, ""),
        (r#""place":"held""#, r#""place":"lost""#),
        (r#""place":"key-safe""#, r#""place":"held""#),
        (r#""copies":["#, r#""copies":[null,"#),
        (r#""finding":"not-exposed""#, r#""finding":"4-7-1-1""#),
    ];
    for (from, to) in cases {
        assert_eq!(
            import(&with(from, to)),
            Err(ImportError::Damaged),
            "{from} -> {to}"
        );
    }
    let mut longer = text().into_bytes();
    longer.extend(b"{}");
    assert_eq!(import(&longer), Err(ImportError::Damaged));
}

#[test]
fn ids_twice_or_beyond_the_next_are_refused() {
    let home = quick::one_door(DoorKind::Shed, LockKind::Lever, &[Role::Resident]).unwrap();
    let text = export(&home).unwrap();
    let (door, _) = home.doors().next().unwrap();
    let row = format!(
        r#"{{"id":{},"kind":"shed","decides":"household"}}"#,
        door.number()
    );
    assert!(text.contains(&row));
    let twice = text.replacen(&row, &format!("{row},{row}"), 1);
    assert_eq!(import(twice.as_bytes()), Err(ImportError::Damaged));
    for id in [0, 1_000, u32::MAX] {
        let beyond = text.replacen(
            &row,
            &row.replacen(&door.number().to_string(), &id.to_string(), 1),
            1,
        );
        assert_eq!(import(beyond.as_bytes()), Err(ImportError::Damaged), "{id}");
    }
    let next = format!(r#""next":{}"#, home.next_door().number());
    let last = text.replacen(&next, r#""next":1000000001"#, 1);
    let full = import(last.as_bytes()).unwrap();
    assert_eq!(
        full.with(Change::AddKey(Key::default())),
        Err(Refusal::NoMoreIds)
    );
    let over = text.replacen(&next, r#""next":1000000002"#, 1);
    assert_eq!(import(over.as_bytes()), Err(ImportError::Damaged));
}

#[test]
fn parts_that_do_not_fit_are_refused_by_the_rules_of_changes() {
    let home = demonstration::household();
    let (lock, part) = home.locks().next().unwrap();
    let key = part.keys.first().unwrap().number();
    let (other, _) = home.keys().nth(1).unwrap();
    let bytes = with(
        &format!(r#""keys":[{key}]"#),
        &format!(r#""keys":[{key},{}]"#, other.number()),
    );
    let opened_by = KeyId::new(key);
    let refusal = Refusal::SecondKeyUnexplained { lock, opened_by };
    assert_eq!(import(&bytes), Err(ImportError::DoesNotFit(refusal)));
    let unknown = with(&format!(r#""keys":[{key}]"#), r#""keys":[9999]"#);
    let refusal = Refusal::UnknownKey(KeyId::new(9999));
    assert_eq!(import(&unknown), Err(ImportError::DoesNotFit(refusal)));
    let twice = with(
        &format!(r#""keys":[{key}]"#),
        &format!(r#""keys":[{key},{key}]"#),
    );
    assert_eq!(import(&twice), Err(ImportError::Damaged));
}

#[test]
fn labels_are_checked_again_and_never_repeated() {
    let label = |text: &str| {
        with(
            r#""decides":"household""#,
            &format!(r#""decides":"household","label":"{text}""#),
        )
    };
    assert!(import(&label("the blue one")).is_ok());
    for (text, refusal) in [
        ("7 4 1 1", LabelRefusal::TooManyDigits),
        ("\\u0667\\u0664\\u0661", LabelRefusal::TooManyDigits),
        ("a label that is far too long", LabelRefusal::TooLong),
        ("", LabelRefusal::Empty),
        ("a\\u202eb", LabelRefusal::UnseenCharacter),
    ] {
        let error = import(&label(text)).unwrap_err();
        assert_eq!(error, ImportError::Label(refusal));
        let said = format!("{error} {error:?}");
        assert!(text.is_empty() || !said.contains(text));
    }
}

#[test]
fn prices_are_checked_again() {
    let bytes = with(r#""low":6000"#, r#""low":10000"#);
    assert!(matches!(
        import(&bytes),
        Err(ImportError::DoesNotFit(Refusal::Price(_)))
    ));
    let negative = with(r#""low":6000"#, r#""low":-1"#);
    assert_eq!(import(&negative), Err(ImportError::Damaged));
    let twice = with(r#""item":"copy""#, r#""item":"call-out""#);
    assert_eq!(import(&twice), Err(ImportError::Damaged));
}

#[test]
fn huge_and_deep_texts_are_refused_before_they_are_read() {
    let huge = vec![b' '; MOST_BYTES + 1];
    assert_eq!(import(&huge), Err(ImportError::TooLarge));
    let deep = "[".repeat(MOST_NESTING + 1);
    assert_eq!(import(deep.as_bytes()), Err(ImportError::TooDeep));
    let very_deep = "{\"a\":".repeat(1_000_000);
    assert_eq!(import(very_deep.as_bytes()), Err(ImportError::TooDeep));
    let brackets_in_a_text = format!(r#"{{"version":1,"a":"\"{}"}}"#, "[".repeat(50));
    assert_eq!(
        import(brackets_in_a_text.as_bytes()),
        Err(ImportError::Foreign)
    );
    let as_large_as_may_be = vec![b' '; MOST_BYTES];
    assert_eq!(import(&as_large_as_may_be), Err(ImportError::CutShort));
}

#[test]
fn too_many_parts_are_refused() {
    let rows: Vec<String> = (1..=Limit::Doors.most() + 1)
        .map(|id| format!(r#"{{"id":{id},"kind":"store","decides":"household"}}"#))
        .collect();
    let text = format!(
        r#"{{"version":1,"record":"keys-and-doors","next":5000,"doors":[{}],"holders":[],"keys":[],"locks":[],"ways":[],"copies":[],"prices":{{"included":0,"items":[]}}}}"#,
        rows.join(",")
    );
    let refusal = Refusal::Full(Limit::Doors);
    assert_eq!(
        import(text.as_bytes()),
        Err(ImportError::DoesNotFit(refusal))
    );
}

#[test]
fn small_estate_leads_back_to_itself_and_fits_many_times() {
    let estate = estate(Size::SMALL_ESTATE).unwrap();
    let text = export(&estate).unwrap();
    assert!(text.len() < MOST_BYTES / 20, "{}", text.len());
    assert_eq!(import(text.as_bytes()), Ok(estate));
}

/// A household at every limit, with ids and labels as long as they come.
fn full() -> Household {
    let start = format!(
        r#"{{"version":1,"record":"keys-and-doors","next":{},"doors":[],"holders":[],"keys":[],"locks":[],"ways":[],"copies":[],"prices":{{"included":0,"items":[]}}}}"#,
        999_000_000
    );
    let mut home = import(start.as_bytes()).unwrap();
    let label = Some(Label::new(&"\u{1d54f}".repeat(Label::MOST_CHARACTERS)).unwrap());
    let of = |limit: Limit| limit.most();
    let doors = (0..of(Limit::Doors)).map(|_| {
        Change::AddDoor(Door {
            label: label.clone(),
            material: Some(Material::Composite),
            ..Door::of(DoorKind::BuildingEntrance)
        })
    });
    home = home.with_all(doors).unwrap();
    let ids: Vec<DoorId> = home.doors().map(|(door, _)| door).collect();
    let each = of(Limit::Needs) / of(Limit::Holders);
    let needs: BTreeSet<DoorId> = ids.iter().copied().take(each).collect();
    let holders = (0..of(Limit::Holders)).map(|_| {
        Change::AddHolder(Holder {
            label: label.clone(),
            needs: Some(needs.clone()),
            no_longer_should: true,
            ..Holder::of(Role::FamilyElsewhere)
        })
    });
    home = home.with_all(holders).unwrap();
    let restricted = Some(false);
    let keys = (0..of(Limit::Keys)).map(|_| {
        Change::AddKey(Key {
            restricted,
            finding: None,
            may_be_copied: Some(self_check_core::advice::Urgency::WhenConvenient),
        })
    });
    home = home.with_all(keys).unwrap();
    let each = of(Limit::Openings) / of(Limit::Locks);
    let keys: BTreeSet<KeyId> = home.keys().map(|(key, _)| key).take(each).collect();
    let locks = (0..of(Limit::Locks)).map(|_| {
        Change::AddLock(Lock {
            keys: keys.clone(),
            arrangement: Arrangement::CentralLock,
            inside: Some(Inside::ThumbTurn),
            keyway: Keyway::new(26).ok(),
            lengths: CylinderLengths::new(100, 100).ok(),
            ..Lock::on(ids[0], LockKind::EuropeanProfile)
        })
    });
    home = home.with_all(locks).unwrap();
    let each = of(Limit::Knowers) / of(Limit::Ways);
    let people: BTreeSet<HolderId> = home
        .holders()
        .map(|(holder, _)| holder)
        .take(each)
        .collect();
    let ways = (0..of(Limit::Ways)).map(|_| {
        Change::AddWay(Way {
            known_by: people.clone(),
            given_away: Some(Loss::WithTheAddress),
            lost_by: people
                .iter()
                .map(|&holder| (holder, Loss::WithTheAddress))
                .collect(),
            ..Way::at(ids[0], WayKind::Remote)
        })
    });
    home = home.with_all(ways).unwrap();
    let key = home.keys().next().unwrap().0;
    let by = home.holders().next().map(|(holder, _)| holder);
    let place = Place::Lost {
        by,
        loss: Loss::WithTheAddress,
        from_safe: None,
    };
    let copies = (0..of(Limit::Copies)).map(|_| Change::AddCopy(KeyCopy { key, place }));
    home.with_all(copies).unwrap()
}

#[test]
fn household_at_every_limit_can_be_kept_and_read() {
    let full = full();
    let text = export(&full).unwrap();
    assert!(text.len() < MOST_BYTES * 3 / 4, "{}", text.len());
    assert_eq!(import(text.as_bytes()), Ok(full));
}
