//! Work that takes a while: opening, measuring, copying. It goes on in small pieces between which the
//! page answers its reader, and stops where nobody waits for it any more.

use std::cell::Cell;
use std::rc::Rc;

use self_check_core::key::Family;
use self_check_core::metadata::{Format, JpegInParts, PictureFile, leftovers, without_leftovers};
use self_check_core::picture::{Judgement, Measurement, Measuring};
use wasm_bindgen_futures::spawn_local;

use super::DeskHandle;
use super::desk::{Act, Busy, Opened, Outcome};
use crate::browser::{self, Area, Decoded, LocalFile, SafeCopy};
use crate::copy::Trouble;

/// Starts work, and knows which was started last.
#[derive(Clone)]
pub struct Work {
    desk: DeskHandle,
    last: Rc<Cell<u32>>,
}

/// One piece of work, for as long as somebody waits for it.
#[derive(Clone)]
struct Job {
    desk: DeskHandle,
    last: Rc<Cell<u32>>,
    number: u32,
    told: Rc<Cell<f64>>,
}

impl Job {
    fn goes_on(&self) -> bool {
        self.last.get() == self.number
    }

    /// Tells how far it is, where that can be seen: each time the page is made anew. False where nobody waits.
    fn progress(&self, share: f64) -> bool {
        if self.goes_on() && share - self.told.get() >= LEAST_STEP {
            self.told.set(share);
            self.desk.dispatch(Act::Progress(share));
        }
        self.goes_on()
    }

    /// Tells something that is known already, or how it ended.
    fn tell(&self, act: Act) {
        if self.goes_on() {
            self.desk.dispatch(act);
        }
    }
}

impl Work {
    pub fn new(desk: DeskHandle, last: Rc<Cell<u32>>) -> Self {
        Self { desk, last }
    }

    /// Stops what is being done.
    pub fn stop(&self) {
        self.last.set(self.last.get() + 1);
    }

    fn begin(&self, busy: Busy) -> Job {
        self.stop();
        self.desk.dispatch(Act::Begin(busy));
        Job {
            desk: self.desk.clone(),
            last: Rc::clone(&self.last),
            number: self.last.get(),
            told: Rc::default(),
        }
    }

    /// Opens a file in the place of any picture that is open.
    pub fn open(&self, file: LocalFile) {
        self.desk.dispatch(Act::Clear);
        let job = self.begin(Busy::Opening);
        spawn_local(async move {
            let act = match opened(&job, file).await {
                Ok(Some(opened)) => Act::Open(Rc::new(opened)),
                Ok(None) => return,
                Err(trouble) => Act::Refuse(trouble),
            };
            job.tell(act);
        });
    }

    /// Measures the picture between the marks.
    pub fn measure(&self) {
        let marks = match self.desk.full_marks() {
            Ok(marks) => marks,
            Err(trouble) => return self.desk.dispatch(Act::Refuse(trouble)),
        };
        let Some(opened) = self.desk.opened.clone() else {
            return;
        };
        let families = self.desk.face.families();
        let measuring = Measuring::new(marks, opened.read.quantisation);
        let job = self.begin(Busy::Measuring);
        spawn_local(async move {
            let act = match measured(&job, &opened, measuring).await {
                Ok(Some(measurement)) => {
                    let judgement = judged(&measurement, families).await;
                    Act::Measured(Outcome {
                        judgement,
                        caveats: measurement.caveats().to_vec(),
                    })
                }
                Ok(None) => return,
                Err(trouble) => Act::Refuse(trouble),
            };
            job.tell(act);
        });
    }

    /// Makes the copy.
    pub fn copy(&self) {
        let Some(opened) = self.desk.opened.clone() else {
            return;
        };
        let covers = self.desk.covers.clone();
        if covers.is_empty() {
            return self.desk.dispatch(Act::Refuse(Trouble::NothingCovered));
        }
        let format = self.desk.format;
        let job = self.begin(Busy::Copying);
        spawn_local(async move {
            let bare = |bytes: &[u8]| without_leftovers(bytes).ok();
            let goes_on = |share| job.progress(share);
            let act = match SafeCopy::make(&opened.working, &covers, format, bare, goes_on).await {
                Ok(Some(copy)) if is_clean(&copy) => Act::Copied(Rc::new(copy)),
                Ok(Some(_)) => Act::Refuse(Trouble::CopyFailed),
                Ok(None) => return,
                Err(_) => Act::Refuse(Trouble::CopyRefused),
            };
            job.tell(act);
        });
    }
}

/// What can be said of any of the families, one after the other so that the page can answer in between.
async fn judged(measurement: &Measurement, families: &[Family]) -> Judgement {
    let mut found = None;
    for &family in families {
        let one = measurement.judge(family);
        found = Some(found.map_or(one, |all: Judgement| all.or(one)));
        browser::breathe().await;
    }
    found.unwrap_or(Judgement::CANNOT_TELL)
}

/// No notes, and every cover one colour: both read from the bytes that will be saved.
fn is_clean(copy: &SafeCopy) -> bool {
    let has_no_notes = leftovers(&copy.bytes).is_ok_and(|found| found.is_empty());
    has_no_notes && copy.plain_areas == copy.areas
}

async fn opened(job: &Job, file: LocalFile) -> Result<Option<Opened>, Trouble> {
    if file.size() > MOST_BYTES {
        return Err(Trouble::TooManyBytes);
    }
    browser::breathe().await;
    let Some(read) = read(job, &file).await? else {
        return Ok(None);
    };
    let read = Rc::new(read);
    job.tell(Act::Told(Rc::clone(&read)));
    let pixels = |width: u32, height: u32| u64::from(width) * u64::from(height);
    if read
        .size
        .is_some_and(|size| pixels(size.width, size.height) > MOST_PIXELS)
    {
        return Err(Trouble::TooManyPixels);
    }
    let decoded = Decoded::of(&file).await;
    let decoded = decoded.map_err(|_| match read.breaks_off {
        true => Trouble::BreaksOff,
        false => Trouble::Undecodable,
    })?;
    if pixels(decoded.width(), decoded.height()) > MOST_PIXELS {
        return Err(Trouble::TooManyPixels);
    }
    let working = decoded
        .working(MOST_SHOWN, |share| job.progress(0.5 + 0.5 * share))
        .await;
    drop(decoded);
    browser::breathe().await;
    if working.is_none() && job.goes_on() {
        return Err(Trouble::Undecodable);
    }
    Ok(working.map(|working| Opened {
        file,
        read,
        working,
    }))
}

/// Reads what the file tells, a part after the other. Of a JPEG only the front is kept.
/// Nothing where nobody waits for it any more.
async fn read(job: &Job, file: &LocalFile) -> Result<Option<PictureFile>, Trouble> {
    let part = async |from: usize| {
        let part = browser::part_of_file(file, from).await;
        let part = part.map_err(|_| Trouble::Unreadable)?;
        let share = (from + part.len()) as f64 / file.size().max(1.0);
        Ok(job.progress(READING * share).then_some(part))
    };
    let Some(mut bytes) = part(0).await? else {
        return Ok(None);
    };
    let is_jpeg = Format::of(&bytes).is_ok_and(|format| format == Format::Jpeg);
    if !is_jpeg {
        // All of it at once: growing bit by bit would copy it again and again.
        let rest = (file.size() as usize).saturating_sub(bytes.len());
        bytes
            .try_reserve_exact(rest)
            .map_err(|_| Trouble::TooManyBytes)?;
    }
    loop {
        if is_jpeg && let Ok(mut reading) = JpegInParts::begin(&bytes) {
            let mut from = bytes.len();
            drop(bytes);
            while !reading.is_done() {
                let Some(next) = part(from).await? else {
                    return Ok(None);
                };
                if next.is_empty() {
                    break;
                }
                reading.read_on(&next);
                from += next.len();
            }
            return Ok(Some(reading.finish()));
        }
        let Some(next) = part(bytes.len()).await? else {
            return Ok(None);
        };
        if next.is_empty() {
            return PictureFile::read(&bytes).map(Some).map_err(Trouble::File);
        }
        bytes.extend(next);
    }
}

async fn measured(
    job: &Job,
    opened: &Opened,
    mut measuring: Measuring,
) -> Result<Option<Measurement>, Trouble> {
    browser::breathe().await;
    let undecodable = |_| Trouble::Undecodable;
    // It could be decoded before: if not now, the file is no longer there.
    let decoded = Decoded::of(&opened.file).await;
    let decoded = decoded.map_err(|_| Trouble::Unreadable)?;
    let canvas = browser::spare_canvas().map_err(undecodable)?;
    while let Some(part) = measuring.next_rows() {
        let area = Area {
            left: part.left,
            top: part.top,
            width: part.width,
            height: part.height,
        };
        let colours = decoded.colours(&canvas, area).map_err(undecodable)?;
        measuring
            .give_rows(&colours)
            .map_err(|_| Trouble::Undecodable)?;
        if !job.goes_on() {
            return Ok(None);
        }
        browser::breathe().await;
    }
    drop(decoded);
    browser::breathe().await;
    browser::work_begins();
    while measuring.work() {
        if browser::has_worked_long() {
            if !job.progress(measuring.share()) {
                return Ok(None);
            }
            browser::breathe().await;
            browser::work_begins();
        }
    }
    browser::breathe().await;
    let measurement = measuring.finish();
    browser::breathe().await;
    Ok(Some(measurement))
}

/// How much of opening a file is reading it.
const READING: f64 = 0.1;

/// The least step of the bar, as a share of the whole.
const LEAST_STEP: f64 = 0.05;

/// No photograph of a phone or a camera is larger than either.
const MOST_BYTES: f64 = 150e6;
const MOST_PIXELS: u64 = 120_000_000;

/// The longer side of what is shown and copied: enough for any screen, and a tenth of the memory.
const MOST_SHOWN: u32 = 2048;
