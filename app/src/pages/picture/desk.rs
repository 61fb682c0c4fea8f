//! What the page holds. One pure reducer; it goes with the page.

use std::rc::Rc;

use self_check_core::key::LockFace;
use self_check_core::metadata::PictureFile;
use self_check_core::picture::{Caveat, Judgement, Marks, Point, Rectangle, Size};
use yew::prelude::*;

use super::covers::room_for_one_more;
use crate::browser::{Area, CopyFormat, LocalFile, SafeCopy, Working};
use crate::copy::Trouble;
use crate::ui::ERROR_SUMMARY;

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
    pub judgement: Judgement,
    /// What may make that differ from the truth.
    pub caveats: Vec<Caveat>,
}

/// A covered part of the shown picture.
pub type Cover = Area;

/// A part of the page in which something is entered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Entry {
    /// The file.
    File,
    /// The two marks.
    Marks,
    /// The covers.
    Covers,
    /// The kind of file of the copy.
    Format,
}

/// How the covers lie to the key, as far as that follows from the marks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hiding {
    /// There is no cover.
    Nothing,
    /// Nobody has said where the key is.
    NotMarked,
    /// Not all of the blade is covered.
    Bare,
    /// It is covered where it was marked, but no key was found there.
    Beside,
    /// All of the blade is covered.
    Covered,
}

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
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Focus {
    /// The element.
    pub id: AttrValue,
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
    /// What the key's lock looks like.
    pub face: LockFace,
    /// What was measured.
    pub outcome: Option<Outcome>,
    /// Whether a copy is wanted without that.
    pub wants_copy: bool,
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

/// The element of a mark.
pub fn mark_id(which: usize) -> AttrValue {
    format!("picture-mark-{which}").into()
}

/// The element of a cover.
pub fn cover_id(which: usize) -> AttrValue {
    format!("picture-cover-{which}").into()
}

fn rectangle(cover: &Cover) -> Rectangle {
    Rectangle {
        left: cover.left,
        top: cover.top,
        width: cover.width,
        height: cover.height,
    }
}

/// A cover made as wide and high as lets it be seen and taken hold of, around the same middle.
fn made_visible(cover: Rectangle, size: Size) -> Cover {
    let least = (size.width.max(size.height) / LEAST_COVER).max(1);
    let span = |from: u32, own: u32, whole: u32| {
        let grown = own.max(least).min(whole);
        let from = (from + own / 2).saturating_sub(grown / 2);
        (from.min(whole - grown), grown)
    };
    let (left, width) = span(cover.left, cover.width, size.width);
    let (top, height) = span(cover.top, cover.height, size.height);
    Cover {
        left,
        top,
        width,
        height,
    }
}

/// A key's cover is at least this part of the picture's longer side: our assumption of what a finger finds.
const LEAST_COVER: u32 = 12;

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
    /// A mark is being set.
    Activate(Option<usize>),
    /// A mark or a cover stands where it was meant to: what was wrong before is no longer said. Sooner, the
    /// page would move under the finger.
    Settle,
    /// A lock's face is chosen.
    Choose(LockFace),
    /// The picture is measured.
    Measured(Outcome),
    /// A copy is asked for, and nothing else.
    CopyAlone,
    /// A cover is drawn.
    DrawCover(Cover),
    /// A cover is asked for, wherever there is room.
    AddCover,
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

    /// What is wrong with an entry.
    pub fn trouble_with(&self, entry: Entry) -> Option<Trouble> {
        self.trouble.filter(|trouble| entry_of(*trouble) == entry)
    }

    /// The element to go to, so as to put right what is wrong.
    pub fn field_of(&self, trouble: Trouble) -> AttrValue {
        match entry_of(trouble) {
            Entry::File => "picture-file".into(),
            Entry::Marks => mark_id(usize::from(self.moved == [true, false])),
            Entry::Covers => "picture-add-cover".into(),
            Entry::Format => "picture-format-0".into(),
        }
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

    /// The marks on the shown picture, and its size.
    fn shown_marks(&self) -> Option<(Marks, Size)> {
        let working = &self.opened.as_ref()?.working;
        let size = Size {
            width: working.width,
            height: working.height,
        };
        let [shoulder, tip] = self.marks.map(|(x, y)| Point { x, y });
        Some((Marks::new(size, shoulder, tip).ok()?, size))
    }

    /// The cover of the key that follows from the marks, on the shown picture.
    fn cover_of_key(&self) -> Option<Cover> {
        let (marks, size) = self.shown_marks()?;
        Some(made_visible(marks.cover(), size))
    }

    /// What can be said of covers and key.
    pub fn hiding(&self) -> Hiding {
        let beside = [Caveat::NoUsableEdge, Caveat::OneColour];
        let is_beside =
            |outcome: &Outcome| beside.iter().any(|caveat| outcome.caveats.contains(caveat));
        if self.covers.is_empty() {
            Hiding::Nothing
        } else if self.moved != [true, true] {
            Hiding::NotMarked
        } else if !self.key_is_covered() {
            Hiding::Bare
        } else if self.outcome.as_ref().is_some_and(is_beside) {
            Hiding::Beside
        } else {
            Hiding::Covered
        }
    }

    /// Whether all that a blade between the marks can take up lies under covers.
    fn key_is_covered(&self) -> bool {
        let covers: Vec<Rectangle> = self.covers.iter().map(rectangle).collect();
        let marks = self.shown_marks();
        marks.is_some_and(|(marks, _)| marks.blade_is_under(&covers))
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

    fn focused(mut self, id: impl Into<AttrValue>) -> Self {
        let times = self.focus.map_or(0, |focus| focus.times) + 1;
        let id = id.into();
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
            .focused(ERROR_SUMMARY),
            Act::Told(read) => Self {
                read: Some(read),
                ..self
            },
            Act::Open(opened) => Self::holding(opened).focused("picture-told"),
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
            Act::Settle => Self {
                trouble: None,
                active: None,
                ..self
            },
            Act::Choose(face) => Self {
                face,
                outcome: None,
                ..self.changed()
            },
            Act::Measured(outcome) => Self {
                outcome: Some(outcome),
                active: None,
                ..self.with_key_covered().at_rest()
            }
            .focused("picture-outcome"),
            Act::CopyAlone => Self {
                wants_copy: true,
                ..self.at_rest()
            }
            .focused("picture-copy"),
            Act::DrawCover(cover) => {
                let mut next = self.changed();
                next.covers.push(cover);
                next
            }
            Act::AddCover => {
                let mut next = self.at_rest().changed();
                let Some(opened) = &next.opened else {
                    return next;
                };
                let (width, height) = (opened.working.width, opened.working.height);
                let cover = room_for_one_more(&next.covers, width, height);
                next.covers.push(cover);
                let last = next.covers.len() - 1;
                next.focused(cover_id(last))
            }
            Act::SetCover(which, cover) => {
                let mut next = self.changed();
                if let Some(slot) = next.covers.get_mut(which) {
                    *slot = cover;
                }
                next
            }
            Act::RemoveCover(which) => {
                let mut next = self.at_rest().changed();
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

/// The entry that has to be changed.
fn entry_of(trouble: Trouble) -> Entry {
    match trouble {
        Trouble::File(_)
        | Trouble::BreaksOff
        | Trouble::Undecodable
        | Trouble::TooManyPixels
        | Trouble::TooManyBytes
        | Trouble::Unreadable => Entry::File,
        Trouble::Marks(_) | Trouble::MarksNotMoved => Entry::Marks,
        Trouble::NothingCovered => Entry::Covers,
        Trouble::CopyFailed | Trouble::CopyRefused => Entry::Format,
    }
}

impl Reducible for Desk {
    type Action = Act;

    fn reduce(self: Rc<Self>, act: Act) -> Rc<Self> {
        Rc::new(Self::clone(&self).after(act))
    }
}
