//! Every text, gathered by walking over the ids, so that none is left out of a test.

use self_check_core::advice::{Action, Advice, RuleId, Urgency, rules};
use self_check_core::answers::Answers;
use self_check_core::assess::{Headline, Level, NoCount, Number, WayOut};
use self_check_core::assumptions::Assumption;
use self_check_core::exposure::{Event, KeyRange, KeysLeft, Reading, Standing};
use self_check_core::household::file::ImportError;
use self_check_core::household::{Change, Household, LabelRefusal, Loss, Refusal, demonstration};
use self_check_core::key::{Dimension, LockFace};
use self_check_core::metadata::{FileError, Metadata, Place};
use self_check_core::picture::{Caveat, Judgement, MarkError, Readable};
use self_check_core::questions::{Choice, Question};
use self_check_core::regions::{Licensing, REGIONS, TenancyRule};
use self_check_core::sight::Scene;
use self_check_core::sources::SourceKind;
use self_check_core::units::Metres;
use self_check_core::verdict::Verdict;

use crate::browser::{FileTrouble, KeepTrouble};
use crate::copy::{self, Block, Figure, LearnPage, PageWords, Term, Trouble, keep, picture, site};
use crate::sealed::OpenError;

/// What a reader meets together: one question, one action, one page.
pub struct Page {
    /// Its name in a report.
    pub name: String,
    /// Its texts, in the order in which they are met.
    pub texts: Vec<String>,
}

impl Page {
    /// Of these texts.
    pub fn new<T: Into<String>>(
        name: impl Into<String>,
        texts: impl IntoIterator<Item = T>,
    ) -> Self {
        Self {
            name: name.into(),
            texts: texts.into_iter().map(Into::into).collect(),
        }
    }

    /// The texts made of sentences; labels and headings left out.
    pub fn prose(&self) -> String {
        let sentences: Vec<&str> = self
            .texts
            .iter()
            .map(String::as_str)
            .filter(|text| text.ends_with(['.', '?', ':', '”']))
            .collect();
        sentences.join("\n")
    }

    /// All texts in one.
    pub fn whole(&self) -> String {
        self.texts.join("\n")
    }
}

/// Every page and part of a page.
pub fn all() -> Vec<Page> {
    let mut pages: Vec<Page> = Question::ALL.into_iter().map(question).collect();
    pages.extend(Action::ALL.into_iter().map(action));
    pages.extend([
        page("next hour", copy::next_hour()),
        safety(),
        page("about", copy::about()),
        page("matters more", copy::matters_more()),
        Page::new("landlord's letter", letters()),
        Page::new("rules", rules().map(|rule| copy::rule(rule.id))),
        Page::new("site", site_texts()),
        Page::new("picture", picture_texts()),
        Page::new("findings", findings()),
        Page::new("headlines", headlines()),
        Page::new("distance", distance()),
        Page::new("keep", keep_texts()),
    ]);
    pages.extend(LearnPage::ALL.into_iter().map(|id| {
        let words = copy::learn(id);
        page(words.title, words)
    }));
    pages.extend(super::keys::all());
    pages.push(Page::new("regions", regions()));
    pages.push(Page::new(
        "terms",
        Term::ALL.into_iter().map(|id| copy::term(id).meaning),
    ));
    pages
}

/// The safety page and what else is shown on its branch alone.
pub fn safety() -> Page {
    page("safety", copy::safety())
}

/// An action with all its words.
pub fn action(action: Action) -> Page {
    let words = copy::action(action);
    let mut texts = vec![words.title, words.how, words.who];
    texts.extend(words.may_hurt);
    texts.push(words.cost);
    texts.extend(copy::what_if(action));
    if action == Action::StopGap {
        texts.extend(copy::AROUND_AN_ACTION);
    }
    for (urgency, kind) in [
        (Urgency::Habit, Choice::CutsOnOneEdge),
        (Urgency::Soon, Choice::CardFobCodeOrPhone),
        (Urgency::Soon, Choice::InteriorWarded),
    ] {
        let advice = Advice {
            action,
            urgency,
            because: vec![RuleId::KeyWasNotReturned],
        };
        let answers = Answers::none()
            .give(Question::KeyKind, &[kind])
            .unwrap_or_default();
        let words = copy::advised(&advice, &answers);
        for text in [words.title, words.how, words.who, words.cost] {
            if !texts.contains(&text) {
                texts.push(text);
            }
        }
    }
    Page::new(format!("{action:?}"), texts)
}

fn question(id: Question) -> Page {
    let mut texts: Vec<&str> = Vec::new();
    for answers in ways_to_come() {
        let words = copy::question_on(id, &answers);
        for text in [
            words.title,
            words.hint,
            words.why,
            words.drawing_title,
            words.drawing_desc,
            words.not_sure,
        ] {
            if !texts.contains(&text) {
                texts.push(text);
            }
        }
    }
    for &choice in id.row().choices {
        let words = copy::choice(choice);
        texts.push(words.label);
        texts.extend(words.hint);
    }
    texts.extend([
        copy::short(id),
        copy::find_out(id),
        site::nothing_chosen(id),
    ]);
    texts.extend(copy::caption(id));
    if id == Question::Opens {
        texts.extend(copy::OTHER_WAYS_TO_FIND_OUT);
    }
    Page::new(format!("{id:?}"), texts)
}

/// Answers under which the words of a question differ.
fn ways_to_come() -> Vec<Answers> {
    let begun = |reason| {
        Answers::none()
            .give(Question::Reason, &[reason])
            .unwrap_or_default()
    };
    let with = |answers: Answers, choice: Choice| {
        answers
            .give(choice.question(), &[choice])
            .unwrap_or_default()
    };
    let reasons = Question::Reason.row().choices.iter().copied().map(begun);
    let mut ways: Vec<Answers> = reasons.collect();
    for reason in [Choice::LookAtMyKeys, Choice::KeyMissing] {
        ways.push(with(begun(reason), Choice::ChangedAndCounted));
    }
    for choice in [Choice::LetItOut, Choice::Mailbox] {
        ways.push(with(begun(Choice::LookAtMyKeys), choice));
    }
    ways
}

/// The letter for each lock that a tenant may ask for.
fn letters() -> Vec<&'static str> {
    let opens = [
        Choice::FlatDoor,
        Choice::BlockEntrance,
        Choice::Mailbox,
        Choice::GarageShedOrGate,
    ];
    let answers = opens.map(|choice| {
        Answers::none()
            .give(Question::Opens, &[choice])
            .unwrap_or_default()
    });
    answers
        .iter()
        .flat_map(|answers| copy::landlord_letter(answers))
        .collect()
}

fn page(name: &str, words: PageWords) -> Page {
    let mut texts = vec![words.title.to_owned(), words.lede.to_owned()];
    for block in words.blocks {
        match *block {
            Block::Heading(text) | Block::Paragraph(text) | Block::Caution(text) => {
                texts.push(text.to_owned());
            }
            Block::List(items) | Block::Steps(items) => {
                texts.extend(items.iter().map(|&item| item.to_owned()));
            }
            Block::Figure(figure) => {
                let words = copy::figure(figure);
                texts.extend([words.title, words.desc, words.caption].map(str::to_owned));
            }
            Block::Source(_) | Block::Regions => {}
        }
    }
    Page::new(name, texts)
}

fn site_texts() -> Vec<String> {
    let left = KeysLeft {
        fewest: 1.0,
        most: 2_500.0,
    };
    let mut texts: Vec<String> = site::ALL.iter().map(|&text| text.to_owned()).collect();
    texts.extend([
        site::RULE_NOTE.to_owned(),
        site::keys_left(left),
        site::build_is("abcdefab"),
        site::rule_caption(
            &KeyRange {
                fewest: 100.0,
                most: 5_000.0,
            },
            &left,
        ),
    ]);
    for requests in 0..3 {
        for second_part in [false, true] {
            for kept_page in [false, true] {
                texts.push(site::requests_since_ready(requests, second_part, kept_page));
            }
        }
        texts.push(site::requests_elsewhere(requests));
    }
    for &reason in Question::Reason.row().choices {
        texts.push(site::direct_start(reason).line.to_owned());
    }
    texts
}

/// The same with one copy lost: all numbers agree.
fn with_a_loss(household: &Household) -> Household {
    let copy = household.copies().next().map(|(copy, _)| copy);
    let loss = Loss::NearHome;
    let lost = copy.map(|copy| household.with(Change::Lose { copy, loss }));
    lost.and_then(Result::ok).unwrap_or_default()
}

fn keep_texts() -> Vec<String> {
    let example = demonstration::household();
    let mut texts: Vec<String> = keep::ALL.iter().map(|&text| text.to_owned()).collect();
    texts.extend([
        keep::on_this_page(&example),
        keep::on_this_page(&Household::empty()),
        keep::on_this_device(&example),
        keep::replaces(&example, &example),
        keep::replaces(&example, &with_a_loss(&example)),
    ]);
    for trouble in [FileTrouble::TooLarge, FileTrouble::CouldNotRead] {
        texts.push(keep::file_trouble(trouble).to_owned());
    }
    for error in [
        OpenError::WrongPassphrase,
        OpenError::Damaged,
        OpenError::LockedOtherwise,
        OpenError::TooMuchWork,
    ] {
        texts.push(keep::open_error(error).to_owned());
    }
    for error in [
        ImportError::TooLarge,
        ImportError::CutShort,
        ImportError::Damaged,
        ImportError::Foreign,
        ImportError::UnknownVersion(2),
        ImportError::Label(LabelRefusal::TooLong),
        ImportError::DoesNotFit(Refusal::NoMoreIds),
    ] {
        texts.push(keep::not_opened(error));
    }
    for trouble in [KeepTrouble::Denied, KeepTrouble::Full, KeepTrouble::Failed] {
        texts.push(keep::keep_trouble(trouble).to_owned());
    }
    texts
}

/// What the panel says where safety comes first.
pub fn keep_safely() -> Page {
    Page::new(
        "keep, safety first",
        [
            keep::EMPTY,
            keep::EMPTY_SAFELY,
            keep::EMPTYING,
            keep::EMPTIED,
            keep::NOT_EMPTIED,
            keep::LEFT_RECORD,
            keep::LEFT_DATABASES,
            keep::LEFT_ENTRIES,
            keep::LEFT_COOKIES,
            keep::LEFT_STORED,
            keep::LEFT_NONE,
            keep::LEFT_SOME,
            keep::LEFT_NOT_SAID,
        ],
    )
}

fn picture_texts() -> Vec<String> {
    let mut texts: Vec<String> = picture::ALL.iter().map(|&text| text.to_owned()).collect();
    let mut add = |text: &str| texts.push(text.to_owned());
    for trouble in [
        Trouble::File(FileError::Empty),
        Trouble::File(FileError::NotAPicture),
        Trouble::File(FileError::Broken),
        Trouble::BreaksOff,
        Trouble::Undecodable,
        Trouble::TooManyPixels,
        Trouble::TooManyBytes,
        Trouble::Unreadable,
        Trouble::Marks(MarkError::OnePoint),
        Trouble::Marks(MarkError::Outside),
    ] {
        add(picture::trouble(trouble));
    }
    for readable in [
        Readable::Yes,
        Readable::Partly,
        Readable::No,
        Readable::CannotTell,
    ] {
        for is_sure in [true, false] {
            for caveats in [&[][..], &[Caveat::TooSmall], &[Caveat::OneColour]] {
                let words = picture::band(Judgement { readable, is_sure }, caveats);
                for text in [words.name, words.meaning, words.to_do] {
                    add(text);
                }
            }
        }
    }
    for caveat in Caveat::ALL {
        add(picture::caveat(caveat));
    }
    for face in LockFace::ALL {
        add(picture::face(face));
    }
    for metres in [1.0, 200.0, 5_000.0] {
        let place = Place {
            within: Metres::new(metres).ok(),
            is_named: false,
        };
        add(picture::place(Some(place), true));
    }
    let named = Place {
        within: None,
        is_named: true,
    };
    add(picture::place(Some(named), true));
    for metadata in [
        Metadata::default(),
        Metadata {
            has_time: true,
            ..Metadata::default()
        },
        Metadata {
            place: Some(named),
            ..Metadata::default()
        },
        Metadata {
            has_others: true,
            ..Metadata::default()
        },
    ] {
        picture::told_means(&metadata, true)
            .into_iter()
            .for_each(&mut add);
    }
    add(&picture::mark_at((10.0, 20.0), 40, 40));
    add(&picture::cover_at((10.0, 20.0), (5, 10), 40, 40));
    add(&picture::covers_are_plain(1));
    add(&picture::covers_are_plain(3));
    add(&picture::cover_corner(2));
    add(&picture::remove_cover(2));
    add(&picture::change_cover(2));
    texts
}

fn findings() -> Vec<String> {
    let mut texts: Vec<String> = Vec::new();
    for level in [
        Level::Kept,
        Level::CannotBeToldYet,
        Level::InDoubt,
        Level::GivenAway,
    ] {
        let words = copy::level(level);
        texts.extend([words.name, words.meaning].map(str::to_owned));
    }
    for urgency in [
        Urgency::Today,
        Urgency::Soon,
        Urgency::WhenConvenient,
        Urgency::Habit,
    ] {
        let words = copy::urgency(urgency);
        texts.extend([words.name, words.meaning].map(str::to_owned));
    }
    for kind in [
        SourceKind::Published,
        SourceKind::Secondary,
        SourceKind::CommonPractice,
        SourceKind::FromMemory,
        SourceKind::OurAssumption,
    ] {
        let words = copy::source_kind(kind);
        texts.extend([words.name, words.meaning].map(str::to_owned));
    }
    texts.extend(Event::ALL.map(|event| copy::event(event).to_owned()));
    texts.extend(Event::ALL.map(|event| copy::reading(event, Reading::Held).to_owned()));
    for event in [Event::PublicPicture, Event::NumberOnLockFace] {
        for reading in [Reading::CodeSeen, Reading::CutsSeen] {
            texts.push(copy::reading(event, reading).to_owned());
        }
    }
    for reason in [
        NoCount::KindNotModelled,
        NoCount::NoCuts,
        NoCount::SharedSystem,
        NoCount::Vehicle,
    ] {
        texts.push(copy::no_count(reason).to_owned());
    }
    for verdict in [
        Verdict::Applies,
        Verdict::DoesNotApply,
        Verdict::Unknown(Question::Link),
    ] {
        texts.push(copy::knows_the_door(verdict).to_owned());
    }
    texts.push(copy::level_meaning(Level::Kept, &Headline::EndedByChange).to_owned());
    texts.push(copy::waits_for(Question::Link));
    for standing in [
        Standing::Counts,
        Standing::EndedByChange,
        Standing::ByChoice,
        Standing::NotRuledOut,
    ] {
        texts.push(copy::standing(standing));
    }
    texts.extend(Question::ALL.map(|open| copy::standing(Standing::Unknown(open))));
    texts
}

/// The sentences of the distance page that are made of numbers, and the names in its lists.
fn distance() -> Vec<String> {
    let mut texts = vec![
        site::DISTANCE_CAPTION.to_owned(),
        copy::seen_from("Phone across a room", 12.0, "about 300", 80_000.0),
    ];
    texts.extend(Scene::ALL.map(|scene| copy::number_legible(&scene.legibility())));
    texts.push(copy::planned_to_identify(5.7, "about 10,000"));
    let dimensions = [
        Dimension::Cuts,
        Dimension::Depths,
        Dimension::Step,
        Dimension::Pitch,
        Dimension::Flat,
        Dimension::LargestStep,
    ];
    texts.extend(dimensions.map(|id| copy::dimension(id).to_owned()));
    texts.extend(Assumption::ALL.map(|id| copy::assumption(id).to_owned()));
    texts
}

fn regions() -> Vec<String> {
    let mut texts: Vec<&str> = REGIONS.iter().map(|row| copy::region(row.region)).collect();
    for licensing in [
        Licensing::Licensed,
        Licensing::LicensedLocally,
        Licensing::NotLicensed,
        Licensing::Unclear,
    ] {
        texts.push(copy::licensing(licensing));
    }
    for rule in [
        TenancyRule::RekeyedBetweenTenants,
        TenancyRule::RekeyedWheneverTenantAsks,
        TenancyRule::ChangedOnRequestForSafety,
        TenancyRule::KeysAreLogged,
    ] {
        texts.push(copy::tenancy_rule(rule));
    }
    let mut texts: Vec<String> = texts.into_iter().map(str::to_owned).collect();
    texts.extend((1..=12).map(|month| copy::regions_compared((2026, month))));
    let rules = REGIONS.iter().flat_map(|row| row.tenancy);
    texts.extend(rules.filter_map(|rule| copy::tenancy_scope(rule.scope)));
    texts
}

fn headlines() -> Vec<String> {
    let mut found = vec![
        Headline::SafetyFirst,
        Headline::VehicleOnly,
        Headline::AnothersDoor,
        Headline::VehicleAndAnothersDoor,
        Headline::MayTurnUp,
        Headline::PictureTellsItsDoor,
        Headline::CannotBeToldYet,
        Headline::EndedByChange,
        Headline::OnlyByChoice,
        Headline::NobodyOutside,
        Headline::CouldHaveCopied {
            people: vec![Event::FormerOccupants, Event::HadItAlone],
            also: vec![Event::HiddenOutside, Event::ListingPicture],
        },
    ];
    found.push(Headline::KeyIsOutWithItsDoor);
    found.extend(WayOut::ALL.map(Headline::KeyIsOut));
    for event in Event::ALL {
        found.push(Headline::CouldHaveCopied {
            people: vec![event],
            also: vec![event],
        });
        found.push(Headline::CouldHaveCopied {
            people: Vec::new(),
            also: vec![event, event],
        });
        found.extend([true, false].map(|without_its_door| Headline::CouldBeRead {
            readers: vec![event],
            without_its_door,
        }));
    }
    let groups = found.iter().filter_map(copy::headline_groups);
    let numbers = [
        Number::MayBeTheCode,
        Number::NamesTheBlank,
        Number::IsTheCode,
    ];
    let numbers = numbers.into_iter().filter_map(copy::number_on_the_key);
    let headlines = found.iter().map(copy::headline);
    headlines
        .chain(groups)
        .chain(numbers.map(str::to_owned))
        .collect()
}

#[test]
fn figures_and_learn_pages_all_have_words() {
    for figure in Figure::ALL {
        assert!(!copy::figure(figure).desc.is_empty());
    }
    let used: Vec<Figure> = LearnPage::ALL
        .into_iter()
        .flat_map(|id| copy::learn(id).blocks)
        .filter_map(|block| match block {
            Block::Figure(figure) => Some(*figure),
            _ => None,
        })
        .collect();
    for figure in Figure::ALL {
        assert!(used.contains(&figure), "{figure:?} stands on no page");
    }
}

#[test]
fn rules_say_each_claim_once() {
    let mut claims: Vec<(&str, RuleId)> =
        rules().map(|rule| (copy::rule(rule.id), rule.id)).collect();
    claims.sort_unstable();
    for pair in claims.windows(2) {
        assert_ne!(pair[0].0, pair[1].0, "{:?} and {:?}", pair[0].1, pair[1].1);
    }
}
