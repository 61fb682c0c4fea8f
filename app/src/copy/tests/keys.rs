//! Every text of keys and doors, gathered page by page.

use self_check_core::advice::{Action, Urgency};
use self_check_core::household::brief::{
    AfterVisit, Ask, BriefKey, BriefRecipient, Due, KeyRank, Keying, Measure, OldKey, OnlyIf,
    Quote, Restricted, Visit,
};
use self_check_core::household::plan::{Note, Recipient, Step};
use self_check_core::household::remedy::WhoActs;
use self_check_core::household::{
    Arrangement, Choices, CylinderLengths, DoorId, DoorKind, ExposedBy, Finding, FoundExposure,
    Grouping, HolderId, Inside, KeyId, LabelRefusal, Limit, LockId, LockKind, Loss, Material,
    PriceItem, PriceRange, PriceRefusal, Priced, Prices, Quantities, Refusal, Reply, Role, WayId,
    WayKind, WhoDecides, demonstration, plan,
};

use super::gathered::Page;
use crate::copy::en::household::{self, board, brief, plan as words};
use crate::copy::{Listed, Names};
use crate::household::{Did, LoadedFrom, Part, Told};

/// Every page of keys and doors.
pub fn all() -> Vec<Page> {
    vec![
        Page::new("keys: lists", lists()),
        Page::new("keys: board", board()),
        Page::new("keys: refusals", refusals()),
        Page::new("keys: plan", plan_texts()),
        Page::new("keys: brief", brief_texts()),
    ]
}

fn words_of<T: Listed>() -> impl Iterator<Item = String> {
    T::all().iter().map(|one| one.words().to_owned())
}

fn lists() -> Vec<String> {
    let mut texts: Vec<String> = words_of::<Role>().collect();
    texts.extend(words_of::<DoorKind>());
    texts.extend(words_of::<WhoDecides>());
    texts.extend(words_of::<Material>());
    texts.extend(words_of::<LockKind>());
    texts.extend(words_of::<Arrangement>());
    texts.extend(words_of::<Inside>());
    texts.extend(words_of::<Loss>());
    texts.extend(words_of::<PriceItem>());
    texts.extend(words_of::<Grouping>());
    let meanings = Grouping::all().iter();
    texts.extend(meanings.map(|&grouping| household::grouping_meaning(grouping).to_owned()));
    texts.push(board::ADD_WAY.to_owned());
    // The short names of ways in stand beside the words that say what each is.
    texts.push("small tag, a small box with a code".to_owned());
    texts.extend(words_of::<WayKind>());
    texts
}

/// What can be out, and how many keys there are.
fn headlines() -> Vec<(board::Out, usize)> {
    let out = |keys, remotes, ways| board::Out {
        keys,
        remotes,
        ways,
        ..board::Out::default()
    };
    let copied = |keys, remotes| board::Out {
        is_only_copied: true,
        ..out(keys, remotes, 0)
    };
    let keys = 40;
    vec![
        (out(0, 0, 0), 0),
        (out(0, 0, 0), keys),
        (out(0, 0, 1), keys),
        (out(0, 0, 2), keys),
        (out(0, 1, 0), keys),
        (out(0, 2, 0), keys),
        (out(0, 1, 1), keys),
        (out(1, 0, 0), keys),
        (out(12, 0, 1), keys),
        (out(2, 1, 0), keys),
        (copied(3, 0), keys),
        (copied(1, 2), keys),
    ]
}

#[test]
fn headline_says_what_is_out_and_no_more() {
    let said = headlines().into_iter();
    let said = said.map(|(out, keys)| {
        let doors = board::headline_doors("shed", 1, out);
        let opens = doors.trim_end_matches(" one door: shed.").to_owned();
        (board::headline(out, keys), opens)
    });
    let expected = [
        ("Your doors so far", "That opens"),
        ("No key here is known to be in wrong hands", "That opens"),
        ("A way in could be known to others", "That opens"),
        ("Some ways in could be known to others", "They open"),
        ("A remote could be in wrong hands", "That opens"),
        ("Two remotes could be in wrong hands", "They open"),
        ("Some ways in could be open to others", "They open"),
        ("One key could be in wrong hands", "That opens"),
        ("12 keys could be in wrong hands", "They open"),
        ("Two keys and a remote could be in wrong hands", "They open"),
        ("Three keys may have been copied", "They open"),
        (
            "One key may have been copied, and two remotes could be in wrong hands",
            "They open",
        ),
    ];
    let expected = expected.map(|(headline, opens)| (headline.to_owned(), opens.to_owned()));
    assert_eq!(said.collect::<Vec<_>>(), expected);
}

fn board() -> Vec<String> {
    let mut texts: Vec<String> = board::ALL.iter().map(|&text| text.to_owned()).collect();
    for (out, keys) in headlines() {
        texts.push(board::headline(out, keys));
        for doors in [0, 1, 30] {
            texts.push(board::headline_doors("front door", doors, out));
            texts.push(board::headline_held("front door"));
        }
    }
    texts.extend([
        board::sizes(7, 5, 18, 8),
        board::more_losses(1),
        board::more_losses(3),
        board::show_more(12),
        board::shown(12, 40),
        board::ring_is_lost("Sitter", Loss::NearHome, true),
        board::ring_is_lost("Gardener", Loss::NearHome, false),
        board::ring_is_lost("Sitter", Loss::NotReturned, true),
        board::carries(&[], 0),
        board::carries(&[("front door and back door".to_owned(), 1)], 0),
        board::carries(&[("front door".to_owned(), 1), ("shed".to_owned(), 2)], 3),
        board::lock_kind(LockKind::NotSure).to_owned(),
        board::copies(4, &[]),
        board::copies(4, &[("lost", 1), ("not given back", 1)]),
        board::key_to("front door"),
        board::needs_of("Sitter"),
        board::had_copies("Sitter"),
        board::left_out("sitter", 0),
        board::left_out("sitter", 2),
        board::how_lost(Some("Sitter"), "front door"),
        board::how_lost(None, "front door"),
        board::of_step(board::UNDO, None),
        board::way_lost(WayKind::Remote).to_owned(),
        board::way_lost(WayKind::App).to_owned(),
        board::decides(WhoDecides::Household, DoorKind::FlatDoor)
            .unwrap_or_default()
            .to_owned(),
        board::and_more(4),
    ]);
    let home = demonstration::household();
    let names = Names::of(&home);
    for told in [
        Told::Changed,
        Told::Unchanged,
        Told::Planned,
        Told::Undone,
        Told::Redone,
        Told::CarriedOut,
        Told::Emptied,
        Told::TakenOver(home.keys().next().map_or(KeyId::new(0), |(id, _)| id)),
        Told::LetGo,
        Told::Loaded(LoadedFrom::File),
        Told::Loaded(LoadedFrom::Device),
    ] {
        texts.push(board::told(told, &names));
    }
    for did in [
        Did::Began,
        Did::Lost,
        Did::SaidHow,
        Did::TurnedUp,
        Did::Worked,
        Did::Several,
    ] {
        texts.push(board::of_step(board::UNDO, Some(did)));
    }
    for part in [
        Part::Doors,
        Part::Locks,
        Part::Keys,
        Part::Checks,
        Part::Copies,
        Part::Places,
        Part::People,
        Part::Ways,
        Part::Prices,
    ] {
        texts.push(board::of_step(board::REDO, Some(Did::Changed(part))));
    }
    for exposure in [
        FoundExposure::NotExposed,
        FoundExposure::CannotTell,
        FoundExposure::Exposed(Urgency::Soon),
    ] {
        let found = Finding {
            exposure,
            safety_first: false,
        };
        texts.push(board::finding(Some(found)).to_owned());
    }
    texts.push(board::finding(None).to_owned());
    let others = WhoDecides::all().iter();
    texts.extend(
        others
            .filter_map(|&who| board::decides(who, DoorKind::FrontDoor))
            .map(str::to_owned),
    );
    texts.extend(Loss::all().iter().map(|&loss| board::gone(loss).to_owned()));
    let ways = WayKind::all().iter();
    texts.extend(ways.map(|&kind| board::way_changed(kind).to_owned()));
    texts
}

fn refusals() -> Vec<String> {
    let names = Names::of(&demonstration::household());
    let limits = [
        Limit::Doors,
        Limit::Locks,
        Limit::Keys,
        Limit::Copies,
        Limit::Holders,
        Limit::Ways,
        Limit::Openings,
        Limit::Needs,
        Limit::Knowers,
    ];
    let labels = [
        LabelRefusal::Empty,
        LabelRefusal::TooLong,
        LabelRefusal::TooManyDigits,
        LabelRefusal::UnseenCharacter,
    ];
    let prices = [PriceRefusal::LowAboveHigh, PriceRefusal::TooHigh];
    let mut all = vec![
        Refusal::UnknownDoor(DoorId::new(1)),
        Refusal::UnknownLock(LockId::new(1)),
        Refusal::UnknownKey(KeyId::new(1)),
        Refusal::UnknownHolder(HolderId::new(1)),
        Refusal::UnknownWay(WayId::new(1)),
        Refusal::DoorWithoutCylinder(DoorId::new(6)),
        Refusal::SecondKeyUnexplained {
            lock: LockId::new(13),
            opened_by: KeyId::new(1),
        },
        Refusal::HolderHasCopies(HolderId::new(20)),
        Refusal::HolderHadCopies(HolderId::new(20)),
        Refusal::NotAKeySafe(WayId::new(1)),
        Refusal::KeySafeHoldsCopies(WayId::new(1)),
        Refusal::OutOfRange,
        Refusal::NoMoreIds,
    ];
    all.extend(limits.map(Refusal::Full));
    all.extend(labels.map(Refusal::Label));
    all.extend(prices.map(Refusal::Price));
    all.into_iter()
        .map(|refusal| household::refusal(refusal, &names))
        .map(|text| text.trim_start_matches(": ").to_owned())
        .collect()
}

/// Lines of the bill that rest on several prices of which one was told, each with what stands beside it.
fn lines_with_one_price() -> Vec<String> {
    let price = PriceRange::new(5_000, 8_000).ok();
    let whats = [
        Priced::CallOutAtAnyHour,
        Priced::RekeyedOrNew,
        Priced::KindNotKnown,
    ];
    let mut texts = Vec::new();
    for what in whats {
        for &item in what.items() {
            let prices = Prices::default().with(item, price);
            let mut one = Quantities::default();
            one.add(what, 1);
            let lines = prices.cost(&one).map(|cost| cost.lines);
            let lines = lines.unwrap_or_default().into_iter();
            texts.extend(lines.map(|line| {
                let (what, total) = (words::priced(what), words::line_total(&line));
                let lacks = words::line_lacks(&line, &prices).unwrap_or_default();
                format!("{what}. {lacks}. {total}")
            }));
        }
    }
    texts
}

#[test]
fn line_of_two_prices_says_which_of_them_is_missing() {
    let texts = lines_with_one_price();
    let ends = [
        "the price for nights and weekends. 50 to 80 or more",
        "the price for ordinary hours. no price yet",
        "the price for a new cylinder. no price yet",
        "the price for rekeying. no price yet",
        "the price for a new cylinder and a new lever lock. no price yet",
    ];
    for (text, end) in texts.iter().zip(ends) {
        assert!(text.ends_with(end), "{text}");
    }
    assert_eq!(texts.len(), 7);
}

fn plan_texts() -> Vec<String> {
    let home = demonstration::household();
    let names = Names::of(&home);
    let mut texts: Vec<String> = words::ALL.iter().map(|&text| text.to_owned()).collect();
    let key = KeyId::new(1);
    let lock = LockId::new(13);
    let way = home.ways().next().map_or(WayId::new(0), |(id, _)| id);
    let holder = home.holders().next().map_or(HolderId::new(0), |(id, _)| id);
    for step in [
        Step::LocksmithVisit(vec![lock]),
        Step::LocksmithVisit(vec![lock, lock]),
        Step::HandOver(Recipient::Holder(holder), Vec::new()),
        Step::HandOver(Recipient::KeySafe(way), Vec::new()),
        Step::HandOver(Recipient::Spare, Vec::new()),
        Step::GetIn(Vec::new()),
        Step::EmptyKeySafes(Vec::new()),
        Step::EmptyKeySafes(vec![way]),
        Step::HandIn(Vec::new()),
        Step::TakeNewKeys,
        Step::ChangedByOthers {
            keys: Vec::new(),
            old: Vec::new(),
        },
        Step::CutCopies(Vec::new()),
        replied(Reply::Waiting),
        replied(Reply::LeftAsItIs),
        Step::GetCopiesBack(Vec::new()),
        Step::ScrapOldCopies(Vec::new()),
    ] {
        texts.push(words::step(&step, &names));
        for is_old_void in [false, true] {
            texts.extend(words::how(&step, is_old_void).map(str::to_owned));
        }
    }
    texts.push(words::TELL_OF_A_REMOTE.to_owned());
    texts.push(words::SOME_STILL_HAVE_IT.to_owned());
    for &kind in WayKind::all() {
        let step = Step::ChangeWays(kind, Vec::new());
        texts.push(words::step(&step, &names));
        texts.extend(words::how(&step, false).map(str::to_owned));
        texts.push(words::stays_with(kind).to_owned());
    }
    for action in [
        Action::RekeyCylinder,
        Action::ChangeCylinder,
        Action::ChangeLockOrLevers,
        Action::ReplaceSmallLock,
        Action::OwnerOfSystemActs,
        Action::TellManager,
        Action::TellLandlord,
        Action::TellOwner,
        Action::ChangeCodesAndUsers,
    ] {
        texts.push(words::verb(action).to_owned());
        texts.push(words::verb_for(action, Some(LockKind::NotSure)).to_owned());
    }
    for who in [
        WhoActs::Household,
        WhoActs::Landlord,
        WhoActs::SystemOwner,
        WhoActs::AnotherOwner,
    ] {
        texts.push(words::who(who).to_owned());
        texts.push(words::done_by(who).to_owned());
        texts.push(words::left_by(who).to_owned());
    }
    let copy = home.copies().next().map(|(id, _)| id);
    if let Some(copy) = copy {
        texts.push(words::reason(
            &ExposedBy::FormerHolder(copy, holder),
            &home,
            &names,
        ));
        for &loss in Loss::all() {
            texts.push(words::reason(
                &ExposedBy::LostCopy(copy, loss),
                &home,
                &names,
            ));
        }
    }
    for by in [
        ExposedBy::Check(Urgency::Soon),
        ExposedBy::MayBeCopied(Urgency::Soon),
    ] {
        texts.push(words::reason(&by, &home, &names));
    }
    let plan = plan(&home, Choices::default());
    texts.extend(plan.notes.iter().map(|&note| words::note(note, &names)));
    for note in [
        Note::MasterInReach {
            exposed: key,
            master: key,
            who: WhoActs::Household,
        },
        Note::MasterInReach {
            exposed: key,
            master: key,
            who: WhoActs::SystemOwner,
        },
        Note::OpensMoreBySafe {
            safe: way,
            door: DoorId::new(6),
        },
        Note::ThumbTurn(lock),
        Note::CameBackWithItsCard(key),
        Note::CannotTell(key),
    ] {
        texts.push(words::note(note, &names));
    }
    texts.extend(
        [
            Priced::CallOutAtAnyHour,
            Priced::RekeyedOrNew,
            Priced::KindNotKnown,
            Priced::ByOthers,
        ]
        .map(|what| words::priced(what).to_owned()),
    );
    texts.extend(lines_with_one_price());
    let price = PriceRange::new(6_000, 9_050).unwrap_or_default();
    texts.extend([
        words::price(price),
        words::from_to(4, 6),
        words::at_least("60"),
        words::sum_and_more("60"),
        words::keys_for(7),
        words::wrong_price("One copy of a key", words::LOW, words::NO_NUMBER),
        words::thumb_turn("Front door, back door"),
        words::copies(1),
        words::copies(3),
        words::copies_with(6, 1),
        words::copies_with(6, 3),
        words::for_whom(3, &[alike(1, "sitter"), alike(2, "lodger")]),
        words::for_whom(2, &[alike(2, "sitter")]),
        words::copies_there_will_be(true, 2, &[alike(2, "sitter")]),
        words::copies_there_will_be(true, 1, &[alike(1, "sitter")]),
        words::for_whom(
            2,
            &[words::Alike {
                people: 2,
                ..alike(1, "sitter")
            }],
        ),
        words::copies_from(&[
            (words::Source::New, 2),
            (words::Source::Home, 1),
            (words::Source::HandedIn, 1),
        ]),
        words::copies_from(&[(words::Source::HandedIn, 2)]),
        words::picture_of("By need", 1),
        words::picture_of("By need", 6),
        words::more_keys(4),
        words::cannot_open(None, 1),
        words::cannot_open(Some("As now"), 2),
        words::counted_though_missing(None, 1),
        words::counted_though_missing(Some("As now"), 2),
        words::opens_more("Key safe at back door", "front door, workshop"),
        words::new_key(1),
        words::KEPT_KEY.to_owned(),
        words::recipient(Recipient::Spare, &names),
    ]);
    texts
}

fn replied(reply: Reply) -> Step {
    Step::Replied {
        reply,
        locks: Vec::new(),
        ways: Vec::new(),
    }
}

fn alike(each: u32, name: &str) -> words::Alike {
    words::Alike {
        each,
        people: 1,
        names: vec![name.to_owned()],
    }
}

fn brief_texts() -> Vec<String> {
    let words = brief::WORDS.iter();
    let mut texts: Vec<String> = words
        .map(|(word, means)| format!("{word}: {means}"))
        .collect();
    texts.extend(brief::ALL.iter().map(|&text| text.to_owned()));
    for ask in [
        Ask::WholePriceBeforeWork,
        Ask::LicenceAndPapers,
        Ask::ProofThatYouMay,
        Ask::KeysThatComeWithIt,
        Ask::InsurersGrade,
        Ask::RestrictedOrNot,
        Ask::OthersNeedANewCylinder,
        Ask::IsCodeOrAddressKept,
        Ask::CodeOnNewKeys,
    ] {
        texts.push(brief::ask(ask).to_owned());
    }
    let old = |rank, locks: &[usize]| OldKey {
        rank,
        locks: locks.to_vec(),
    };
    let old_keys = [
        old(KeyRank::Alone, &[2]),
        old(KeyRank::Master, &[0, 1]),
        old(KeyRank::Own, &[0]),
    ];
    let outlying = [DoorKind::Shed, DoorKind::Gate, DoorKind::Padlock];
    for (old, door) in old_keys.iter().zip(&outlying) {
        let (old, door) = (std::slice::from_ref(old), std::slice::from_ref(door));
        texts.push(brief::after(AfterVisit::OldKeyMustFail, old, door));
        texts.push(brief::after(
            AfterVisit::TryOldKeyInOutlyingDoors,
            old,
            door,
        ));
    }
    for after in [
        AfterVisit::OldKeyMustFail,
        AfterVisit::TryEachNewKeyWithTheDoorOpen,
        AfterVisit::CountTheNewKeys,
        AfterVisit::KeepOldKeysThatOpenOtherLocks,
        AfterVisit::TryOldKeyInOutlyingDoors,
        AfterVisit::ScrapTheOldKeys,
    ] {
        texts.push(brief::after(after, &old_keys, &outlying));
    }
    for recipient in [
        BriefRecipient::Person(Some(Role::Sitter)),
        BriefRecipient::Person(None),
        BriefRecipient::Spare,
    ] {
        texts.push(brief::recipient(recipient, 1));
        texts.push(brief::recipient(recipient, 3));
    }
    texts.extend(
        LockKind::all()
            .iter()
            .map(|&kind| brief::kind(kind).to_owned()),
    );
    let inside = Inside::all().iter().copied().map(Some);
    texts.extend(
        inside
            .chain([None])
            .map(|inside| brief::inside(inside).to_owned()),
    );
    for action in [
        Action::RekeyCylinder,
        Action::ChangeCylinder,
        Action::ChangeLockOrLevers,
        Action::ReplaceSmallLock,
    ] {
        for kind in [LockKind::PinTumbler, LockKind::NotSure] {
            texts.push(brief::work(action, kind).to_owned());
        }
    }
    texts.extend([
        brief::material(Some(Material::Wood)),
        brief::locks(&[0, 2]),
        brief::key(0),
        brief::of_a_kind("small lock", 2),
        brief::of(1, 3),
        brief::of(3, 3),
        brief::of(0, 3),
        brief::of(1, 1),
        brief::numbered(1, "Shed"),
        brief::door(DoorKind::Shed, Some("Hut")),
        brief::material(None),
        brief::included(1),
        brief::included(2),
    ]);
    texts.extend(brief_keys());
    texts.extend(brief_quotes());
    let known = CylinderLengths::new(30, 35).map(Measure::Known);
    texts.extend(known.map(brief::measure));
    for measure in [
        Measure::Lengths,
        Measure::TypeAndLength,
        Measure::CaseAndBackset,
        Measure::Size,
        Measure::KindFirst,
        Measure::Nothing,
    ] {
        texts.push(brief::measure(measure));
    }
    for (urgency, may_be_sooner) in [
        (Some(Urgency::Soon), true),
        (Some(Urgency::Soon), false),
        (None, true),
    ] {
        let due = Due {
            urgency,
            may_be_sooner,
        };
        texts.push(brief::not_of_the_visit(due));
        texts.extend([true, false].map(|is_today_to_open| {
            brief::visit(Visit {
                due,
                is_today_to_open,
            })
        }));
    }
    texts
}

fn brief_keys() -> Vec<String> {
    let mut texts = Vec::new();
    for rank in [KeyRank::Alone, KeyRank::Own, KeyRank::Master] {
        texts.push(brief::key_after("A", rank));
        for is_new in [true, false] {
            let key = BriefKey {
                is_new,
                rank,
                is_left: false,
                is_at_hand: true,
                locks: vec![0],
                other_doors: vec![DoorKind::Shed, DoorKind::Shed, DoorKind::BackDoor],
                copies: Vec::new(),
                total: 0,
            };
            texts.push(brief::key_of("A", &key));
        }
    }
    for keying in [
        Keying::OneKey,
        Keying::MasterKeyed,
        Keying::OneKeyAfterwards,
        Keying::OtherKeysNotTold,
        Keying::KeysOfMany,
    ] {
        texts.extend(brief::keying(keying).map(str::to_owned));
    }
    for restricted in [
        Restricted::ItsKey,
        Restricted::All,
        Restricted::Master,
        Restricted::Own,
        Restricted::Some,
    ] {
        texts.push(brief::restricted(restricted).to_owned());
    }
    texts
}

fn brief_quotes() -> Vec<String> {
    let mut texts = Vec::new();
    for &item in PriceItem::ALL {
        texts.push(brief::price_of(item).to_owned());
    }
    for reason in [
        OnlyIf::VisitCannotWait,
        OnlyIf::CannotTakeTheKeyThatStays,
        OnlyIf::KeyholesDiffer,
        OnlyIf::KindTurnsOutSo,
    ] {
        let quote = Quote {
            item: PriceItem::NewCylinder,
            planned: 0,
            count: Some(3),
            only_if: vec![reason],
            told: None,
        };
        texts.extend(brief::if_more(&quote));
    }
    texts
}

#[test]
fn copies_of_a_key_that_stays_are_told_in_a_sentence() {
    let told = |count, people: &[words::Alike]| words::copies_there_will_be(true, count, people);
    let names = Names::default();
    let home = words::recipient(Recipient::Spare, &names);
    assert_eq!(told(2, &[alike(2, &home)]), "2 more copies for the home");
    assert_eq!(told(1, &[alike(1, "Sitter")]), "1 more copy for Sitter");
    let both = [alike(1, "Sitter"), alike(2, &home)];
    let shared = "3 more copies: 1 for Sitter; 2 for the home";
    assert_eq!(told(3, &both), shared);
    let new = words::copies_there_will_be(false, 3, &both);
    assert_eq!(new, "3 copies: 1 for Sitter; 2 for the home");
}
