//! What the page holds. One pure reducer; it goes with the page.

use std::rc::Rc;

use self_check_core::key::FamilyChoice;
use self_check_core::metadata::PictureFile;
use self_check_core::picture::{Caveat, Marks, Point, Readable, Size};
use yew::prelude::*;

use crate::browser::{CopyFormat, LocalFile, SafeCopy, Working};
use crate::copy::Trouble;

/// A picture that is open.
pub struct Opened {
    /// Where its pixels are read from again.
    pub file: LocalFile,
    /// What its file tells.
    pub read: Rc<PictureFile>,
    /// What is shown.
    pub working: Working,
}

/// What a measured picture says.
#[derive(Clone, Debug, PartialEq)]
pub struct Outcome {
    /// How readable the key is.
    pub readable: Readable,
    /// What may make that differ from the truth.
    pub caveats: Vec<Caveat>,
}

/// A covered part of the shown picture: left, top, width, height.
pub type Cover = (u32, u32, u32, u32);

/// What is being done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Busy {
    /// The picture is decoded.
    Opening,
    /// It is measured.
    Measuring,
    /// The copy is made.
    Copying,
}

/// Where the reader is taken, once for each change.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Focus {
    /// The element.
    pub id: &'static str,
    times: u32,
}

/// The whole state of the page.
#[derive(Clone, Default)]
pub struct Desk {
    /// What is wrong.
    pub trouble: Option<Trouble>,
    /// What is being done, and how far it is.
    pub busy: Option<(Busy, f64)>,
    /// Whether work was stopped last.
    pub was_cancelled: bool,
    /// What the file tells, also where the browser cannot show its picture.
    pub read: Option<Rc<PictureFile>>,
    /// The picture.
    pub opened: Option<Rc<Opened>>,
    /// Shoulder and tip, in pixels of the shown picture.
    pub marks: [(f64, f64); 2],
    /// Which of them were moved.
    pub moved: [bool; 2],
    /// Which mark is being set.
    pub active: Option<usize>,
    /// What kind of key it is.
    pub family: Option<FamilyChoice>,
    /// What was measured.
    pub outcome: Option<Outcome>,
    /// What is covered.
    pub covers: Vec<Cover>,
    /// The cover of the key that followed from the marks last.
    pub key_cover: Option<Cover>,
    /// What the copy is saved as.
    pub format: CopyFormat,
    /// The finished copy.
    pub copy: Option<Rc<SafeCopy>>,
    /// Where the reader is taken.
    pub focus: Option<Focus>,
}

fn lies_under((x, y): (f64, f64), (left, top, width, height): Cover) -> bool {
    let within = |at: f64, from: u32, size: u32| {
        (f64::from(from)..=f64::from(from) + f64::from(size)).contains(&at)
    };
    within(x, left, width) && within(y, top, height)
}

/// What can happen on the page.
pub enum Act {
    /// Work begins.
    Begin(Busy),
    /// Work has come so far.
    Progress(f64),
    /// Work was stopped.
    Cancelled,
    /// Something is wrong.
    Refuse(Trouble),
    /// The file was read.
    Told(Rc<PictureFile>),
    /// A picture is open.
    Open(Rc<Opened>),
    /// A mark is set, at its place on the shown picture.
    Mark(usize, (f64, f64)),
    /// A mark is being set, or none is any more.
    Activate(Option<usize>),
    /// A kind of key is chosen.
    Choose(FamilyChoice),
    /// The picture is measured.
    Measured(Outcome),
    /// A cover is added.
    AddCover(Cover),
    /// A cover is moved or sized.
    SetCover(usize, Cover),
    /// A cover is taken away.
    RemoveCover(usize),
    /// A format is chosen.
    Format(CopyFormat),
    /// The copy is made.
    Copied(Rc<SafeCopy>),
    /// Everything is dropped.
    Clear,
}

impl Desk {
    /// Whether something is being done.
    pub fn is_busy(&self) -> bool {
        self.busy.is_some()
    }

    /// What kind of key it is, "not sure" unless chosen.
    pub fn family(&self) -> FamilyChoice {
        self.family.unwrap_or(FamilyChoice::NotSure)
    }

    /// The marks on the picture at full size; errs where they cannot be taken.
    pub fn full_marks(&self) -> Result<Marks, Trouble> {
        let opened = self.opened.as_ref().ok_or(Trouble::MarksNotMoved)?;
        if self.moved != [true, true] {
            return Err(Trouble::MarksNotMoved);
        }
        let working = &opened.working;
        let size = Size {
            width: working.full_width,
            height: working.full_height,
        };
        let [shoulder, tip] = self.marks.map(|(x, y)| Point {
            x: x / f64::from(working.width) * f64::from(size.width),
            y: y / f64::from(working.height) * f64::from(size.height),
        });
        Marks::new(size, shoulder, tip).map_err(Trouble::Marks)
    }

    /// The cover of the key that follows from the marks, on the shown picture.
    fn cover_of_key(&self) -> Option<Cover> {
        let working = &self.opened.as_ref()?.working;
        let size = Size {
            width: working.width,
            height: working.height,
        };
        let [shoulder, tip] = self.marks.map(|(x, y)| Point { x, y });
        let cover = Marks::new(size, shoulder, tip).ok()?.cover();
        Some((cover.left, cover.top, cover.width, cover.height))
    }

    /// Whether the whole line from mark to mark lies under covers. Some fifty places along it are looked
    /// at: no cover that a person draws is narrower than the gap between two of them.
    pub fn key_is_covered(&self) -> bool {
        const PLACES: u32 = 50;
        let [(x, y), (to_x, to_y)] = self.marks;
        (0..=PLACES).all(|place| {
            let share = f64::from(place) / f64::from(PLACES);
            let at = (x + share * (to_x - x), y + share * (to_y - y));
            self.covers.iter().any(|cover| lies_under(at, *cover))
        })
    }

    /// The key is covered where it is marked now; what the reader has covered stays.
    fn with_key_covered(mut self) -> Self {
        let (before, now) = (self.key_cover, self.cover_of_key());
        if before != now {
            self.covers.retain(|cover| Some(*cover) != before);
            self.covers.splice(0..0, now);
            self.key_cover = now;
        }
        self
    }

    fn focused(mut self, id: &'static str) -> Self {
        let times = self.focus.map_or(0, |focus| focus.times) + 1;
        self.focus = Some(Focus { id, times });
        self
    }

    fn at_rest(mut self) -> Self {
        self.busy = None;
        self.trouble = None;
        self.was_cancelled = false;
        self
    }

    /// After a change that work and copy do not know of: both are void.
    fn changed(mut self) -> Self {
        self.busy = None;
        self.copy = None;
        self
    }

    fn after(self, act: Act) -> Self {
        match act {
            Act::Begin(busy) => Self {
                busy: Some((busy, 0.0)),
                trouble: None,
                was_cancelled: false,
                ..self
            },
            Act::Progress(share) => Self {
                busy: self.busy.map(|(busy, _)| (busy, share)),
                ..self
            },
            Act::Cancelled => {
                let id = match self.busy {
                    Some((Busy::Measuring, _)) => "picture-mark",
                    Some((Busy::Copying, _)) => "picture-copy",
                    Some((Busy::Opening, _)) | None => "picture-file",
                };
                Self {
                    was_cancelled: true,
                    ..self.at_rest()
                }
                .focused(id)
            }
            Act::Refuse(trouble) => Self {
                trouble: Some(trouble),
                ..self.at_rest()
            }
            .focused("picture-trouble"),
            Act::Told(read) => Self {
                read: Some(read),
                ..self
            },
            Act::Open(opened) => Self::holding(opened).focused("picture-mark"),
            Act::Mark(which, place) => {
                let mut next = Self {
                    active: Some(which),
                    outcome: None,
                    ..self.changed()
                };
                if let (Some(mark), Some(moved)) =
                    (next.marks.get_mut(which), next.moved.get_mut(which))
                {
                    (*mark, *moved) = (place, true);
                }
                next
            }
            Act::Activate(active) => Self { active, ..self },
            Act::Choose(family) => Self {
                family: Some(family),
                outcome: None,
                ..self.changed()
            },
            Act::Measured(outcome) => Self {
                outcome: Some(outcome),
                active: None,
                ..self.with_key_covered().at_rest()
            }
            .focused("picture-outcome"),
            Act::AddCover(cover) => {
                let mut next = self.changed();
                next.covers.push(cover);
                next
            }
            Act::SetCover(which, cover) => {
                let mut next = self.changed();
                if let Some(slot) = next.covers.get_mut(which) {
                    *slot = cover;
                }
                next
            }
            Act::RemoveCover(which) => {
                let mut next = self.changed();
                if which < next.covers.len() {
                    next.covers.remove(which);
                }
                next.focused("picture-add-cover")
            }
            Act::Format(format) => Self {
                format,
                ..self.changed()
            },
            Act::Copied(copy) => Self {
                copy: Some(copy),
                ..self.at_rest()
            }
            .focused("picture-second-look"),
            Act::Clear => Self::default(),
        }
    }

    /// A picture just opened, its marks waiting beside its middle.
    fn holding(opened: Rc<Opened>) -> Self {
        let (width, height) = (opened.working.width, opened.working.height);
        let (width, height) = (f64::from(width), f64::from(height));
        Self {
            marks: [(0.3 * width, 0.5 * height), (0.7 * width, 0.5 * height)],
            read: Some(Rc::clone(&opened.read)),
            opened: Some(opened),
            ..Self::default()
        }
    }
}

impl Reducible for Desk {
    type Action = Act;

    fn reduce(self: Rc<Self>, act: Act) -> Rc<Self> {
        Rc::new(Self::clone(&self).after(act))
    }
}
