//! What is kept on this device, where the person has asked for it: one record in the browser's own database.
//!
//! Each record has a mark, drawn by chance when it is written. Whoever writes says which mark it takes the place of, and
//! the comparing and the writing are one transaction: of two tabs, the second is refused and told what stands there now.
//! Connections last for one step, so that none is in the way of taking the whole database away.

use std::cell::Cell;
use std::rc::Rc;

use gloo::utils::window;
use idb::event::VersionChangeEvent;
use idb::{Database, DatabaseEvent, Factory, ObjectStoreParams, Transaction, TransactionMode};
use js_sys::{Array, Function, Math, Promise, Reflect};
use serde::{Deserialize, Serialize};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::DomException;

use super::failure::app_root;

/// The start script takes this database away when the reader leaves.
const DATABASE: &str = "self-check";
const VERSION: u32 = 1;
const STORE: &str = "records";
const KEY: &str = "1";

/// Tells one writing of the record from every other.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Mark(f64);

impl Mark {
    /// The mark of this number.
    pub const fn new(number: f64) -> Self {
        Self(number)
    }

    pub(super) const fn number(self) -> f64 {
        self.0
    }
}

/// A record with its mark.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Record {
    /// Which writing it is.
    pub mark: Mark,
    /// What was kept.
    pub text: String,
}

/// What is kept.
#[derive(Clone, Debug, PartialEq)]
pub enum Found {
    /// Nothing.
    Nothing,
    /// A record; whether its text can be read is another question.
    Record(Record),
    /// Something that this page cannot have written, or that was damaged since.
    Foreign,
    /// Something a later version of this page has written.
    Later,
}

/// What a writer takes the place of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Expected {
    /// Nothing may be there.
    Nothing,
    /// The record with this mark.
    Mark(Mark),
}

impl Expected {
    fn fits(self, found: &Found) -> bool {
        match (self, found) {
            (Self::Nothing, Found::Nothing) => true,
            (Self::Mark(mark), Found::Record(record)) => mark == record.mark,
            _ => false,
        }
    }
}

/// What came of writing.
#[derive(Clone, Debug, PartialEq)]
pub enum Outcome {
    /// It is done; the record now has this mark.
    Done(Mark),
    /// Something else than expected is there. It was left alone.
    Refused(Found),
}

/// Why nothing was kept, read or removed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum KeepTrouble {
    /// The browser does not let this page keep anything.
    Denied,
    /// There is no room left.
    Full,
    /// Something else went wrong in the browser.
    Failed,
    /// The person has left the page.
    HasLeft,
}

/// Reads what is kept. Where nothing is, nothing is created.
pub async fn read_kept() -> Result<Found, KeepTrouble> {
    let database = match open(false).await? {
        Opened::Nothing => return Ok(Found::Nothing),
        Opened::Later => return Ok(Found::Later),
        Opened::Database(database) => database,
    };
    let transaction = begin(&database, TransactionMode::ReadOnly);
    let found = match transaction {
        Ok(transaction) => look(&transaction).await,
        // Another kind of database under our name.
        Err(_) => Ok(Found::Foreign),
    };
    database.close();
    found
}

/// Writes `text` if what is kept is what was expected.
pub async fn write_kept(expected: Expected, text: &str) -> Result<Outcome, KeepTrouble> {
    match open(true).await? {
        Opened::Nothing => Err(KeepTrouble::Failed),
        Opened::Later => Ok(Outcome::Refused(Found::Later)),
        Opened::Database(database) => {
            let outcome = change_in(&database, expected, Some(text)).await;
            database.close();
            outcome
        }
    }
}

/// Takes the record away if it is what was expected, and then the database with it.
pub async fn drop_kept(expected: Expected) -> Result<Outcome, KeepTrouble> {
    let outcome = match open(false).await? {
        Opened::Nothing => return Ok(Outcome::Done(Mark(0.0))),
        Opened::Later => return Ok(Outcome::Refused(Found::Later)),
        Opened::Database(database) => {
            let outcome = change_in(&database, expected, None).await;
            database.close();
            outcome?
        }
    };
    if matches!(outcome, Outcome::Done(_)) {
        remove_kept().await?;
    }
    Ok(outcome)
}

/// Removes the whole database, whatever is in it.
pub async fn remove_kept() -> Result<(), KeepTrouble> {
    let request = Factory::new().and_then(|factory| factory.delete(DATABASE));
    request.map_err(why)?.await.map_err(why)
}

/// Compares and writes in one transaction. `None` takes the record away.
async fn change_in(
    database: &Database,
    expected: Expected,
    text: Option<&str>,
) -> Result<Outcome, KeepTrouble> {
    let Ok(transaction) = begin(database, TransactionMode::ReadWrite) else {
        return Ok(Outcome::Refused(Found::Foreign));
    };
    let found = look(&transaction).await?;
    if !expected.fits(&found) {
        return Ok(Outcome::Refused(found));
    }
    if app_root().is_none() {
        return Err(KeepTrouble::HasLeft);
    }
    let store = transaction.object_store(STORE).map_err(why)?;
    let mark = Mark(Math::random());
    // Dropping a request would leave its failure to the transaction's own end, which is waited for below.
    let request = match text {
        Some(text) => {
            let text = text.to_owned();
            let record = serde_wasm_bindgen::to_value(&Record { mark, text });
            let record = record.map_err(|_| KeepTrouble::Failed)?;
            store.put(&record, Some(&KEY.into())).map(drop)
        }
        None => store.delete(JsValue::from(KEY)).map(drop),
    };
    request.map_err(why)?;
    ended(transaction).await?;
    Ok(Outcome::Done(mark))
}

fn begin(database: &Database, mode: TransactionMode) -> Result<Transaction, idb::Error> {
    database.transaction(&[STORE], mode)
}

async fn look(transaction: &Transaction) -> Result<Found, KeepTrouble> {
    let store = transaction.object_store(STORE).map_err(why)?;
    let value = store
        .get(JsValue::from(KEY))
        .map_err(why)?
        .await
        .map_err(why)?;
    Ok(match value {
        None => Found::Nothing,
        Some(value) => serde_wasm_bindgen::from_value(value).map_or(Found::Foreign, Found::Record),
    })
}

/// Waits until the browser says that the transaction is done, or why it is not.
async fn ended(mut transaction: Transaction) -> Result<(), KeepTrouble> {
    let promise = Promise::new(&mut |resolve, reject| {
        transaction.on_complete(move |_| {
            let _ = resolve.call0(&JsValue::NULL);
        });
        transaction.on_abort(move |event| {
            let transaction: Option<web_sys::IdbTransaction> =
                event.target().and_then(|target| target.dyn_into().ok());
            let error = transaction.and_then(|transaction| transaction.error());
            let _ = reject.call1(&JsValue::NULL, &error.into());
        });
    });
    let result = JsFuture::from(promise).await;
    drop(transaction);
    result.map(drop).map_err(|error| named(&error))
}

enum Opened {
    Nothing,
    Later,
    Database(Database),
}

/// Opens the database. One that is not there is created only if asked for.
async fn open(create: bool) -> Result<Opened, KeepTrouble> {
    if app_root().is_none() {
        return Err(KeepTrouble::HasLeft);
    }
    // WebKit goes on listing a database whose creation was broken off, so the list is asked first where there is one.
    let names = database_names().await;
    if !create && names.is_ok_and(|names| names.iter().all(|name| name != DATABASE)) {
        return Ok(Opened::Nothing);
    }
    let factory = Factory::new().map_err(why)?;
    let mut request = factory.open(DATABASE, Some(VERSION)).map_err(why)?;
    let was_missing = Rc::new(Cell::new(false));
    let noted = Rc::clone(&was_missing);
    request.on_upgrade_needed(move |event| {
        if create {
            create_store(&event);
        } else {
            noted.set(true);
            undo_creation(&event);
        }
    });
    match request.await {
        Ok(database) => Ok(Opened::Database(database)),
        Err(_) if was_missing.get() => Ok(Opened::Nothing),
        Err(idb::Error::DomException(error)) if error.name() == "VersionError" => Ok(Opened::Later),
        Err(error) => Err(why(error)),
    }
}

fn create_store(event: &VersionChangeEvent) {
    if let Ok(database) = event.database() {
        let _ = database.create_object_store(STORE, ObjectStoreParams::new());
    }
}

/// The names of this site's databases, where the browser tells them.
pub async fn database_names() -> Result<Vec<String>, JsValue> {
    let factory = window().indexed_db()?.ok_or(JsValue::UNDEFINED)?;
    let ask: Function = Reflect::get(&factory, &"databases".into())?.dyn_into()?;
    let answer: Promise = ask.call0(&factory)?.dyn_into()?;
    let list: Array = JsFuture::from(answer).await?.dyn_into()?;
    let name = |one: JsValue| Reflect::get(&one, &"name".into()).ok()?.as_string();
    Ok(list.iter().filter_map(name).collect())
}

/// A database whose creation is broken off is not there afterwards.
fn undo_creation(event: &VersionChangeEvent) {
    use idb::{Event, Request};
    if let Some(transaction) = event
        .target()
        .ok()
        .and_then(|request| request.transaction())
    {
        let _ = transaction.abort();
    }
}

fn why(error: idb::Error) -> KeepTrouble {
    use idb::Error::*;
    match error {
        DomException(error) => named(&error),
        // There is no such thing in this browser, or none for this page.
        IndexedDbNotFound(_) => KeepTrouble::Denied,
        IndexedDbOpenFailed(error) | UpdateFailed(error) | IndexedDbDeleteFailed(error) => {
            named(&error)
        }
        _ => KeepTrouble::Failed,
    }
}

fn named(error: &JsValue) -> KeepTrouble {
    let name = error.dyn_ref::<DomException>().map(DomException::name);
    match name.as_deref() {
        Some("QuotaExceededError") => KeepTrouble::Full,
        Some("SecurityError" | "NotAllowedError" | "InvalidStateError") => KeepTrouble::Denied,
        _ => KeepTrouble::Failed,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn start_script_takes_away_this_database() {
        let script = include_str!("../../../public/boot.js");
        assert!(script.contains(&format!("deleteDatabase(\"{DATABASE}\")")));
    }
}
