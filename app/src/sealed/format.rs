//! The age file format, version 1, with a passphrase: C2SP, "The age file encryption format" (c2sp.org/age).
//!
//! ```text
//! age-encryption.org/v1
//! -> scrypt SALT WORK
//! FILE KEY, wrapped
//! --- SUM
//! NONCE, then the record in chunks of 64 KiB
//! ```
//!
//! The passphrase gives a key by scrypt; that unwraps the file key, drawn by chance; from it come the key of the sum over
//! the head and the key of the chunks. Here stands only how these are put together; every step of cryptography is a
//! library's.

use base64::Engine;
use base64::engine::general_purpose::STANDARD_NO_PAD;
use chacha20poly1305::aead::stream::{DecryptorBE32, EncryptorBE32};
use chacha20poly1305::aead::{Aead, KeyInit};
use chacha20poly1305::{ChaCha20Poly1305, Key, Nonce};
use hkdf::Hkdf;
use hmac::{Hmac, Mac};
use sha2_for_age::Sha256;

use super::{OpenError, SealError};

/// The first line.
const VERSION: &[u8] = b"age-encryption.org/v1";
/// What every file of the standard begins with, of whatever version.
pub const STANDARD: &[u8] = b"age-encryption.org/";
const STANZA: &str = "-> ";
const BY_PASSPHRASE: &str = "scrypt";
const SUM: &str = "---";

const SALT_LABEL: &[u8] = b"age-encryption.org/v1/scrypt";
const SALT_BYTES: usize = 16;
const FILE_KEY_BYTES: usize = 16;
const NONCE_BYTES: usize = 16;
const TAG_BYTES: usize = 16;
const CHUNK_BYTES: usize = 64 * 1024;

type FileKey = [u8; FILE_KEY_BYTES];

/// The head of a file that a passphrase may open.
pub struct Head<'f> {
    /// The power of two that says how much work the passphrase is.
    pub work: u8,
    salt: [u8; SALT_BYTES],
    wrapped: [u8; FILE_KEY_BYTES + TAG_BYTES],
    sum: [u8; 32],
    /// What the sum is over.
    summed: &'f [u8],
    payload: &'f [u8],
}

impl<'f> Head<'f> {
    /// Reads a head; canonical or not at all, as the standard asks.
    pub fn read(file: &'f [u8]) -> Result<Self, OpenError> {
        let mut rest = file;
        let first = line(&mut rest)?;
        if first != VERSION {
            return Err(if first.starts_with(STANDARD) {
                OpenError::LockedOtherwise
            } else {
                OpenError::Damaged
            });
        }
        let stanza = text(line(&mut rest)?)?;
        let mut words = stanza
            .strip_prefix(STANZA)
            .ok_or(OpenError::Damaged)?
            .split(' ');
        if words.next() != Some(BY_PASSPHRASE) {
            return Err(OpenError::LockedOtherwise);
        }
        let (Some(salt), Some(work), None) = (words.next(), words.next(), words.next()) else {
            return Err(OpenError::Damaged);
        };
        let wrapped = bytes(text(line(&mut rest)?)?)?;
        let start = file.len() - rest.len();
        let sum = text(line(&mut rest)?)?;
        let sum = sum.strip_prefix(SUM).ok_or(OpenError::Damaged)?;
        Ok(Self {
            work: number(work)?,
            salt: bytes(salt)?,
            wrapped,
            sum: bytes(sum.strip_prefix(' ').ok_or(OpenError::Damaged)?)?,
            summed: &file[..start + SUM.len()],
            payload: rest,
        })
    }

    /// The record, if `passphrase` is the one it was locked with.
    pub fn open(&self, passphrase: &str) -> Result<Vec<u8>, OpenError> {
        let file_key = self.file_key(passphrase)?;
        let (nonce, chunks) = self
            .payload
            .split_at_checked(NONCE_BYTES)
            .ok_or(OpenError::Damaged)?;
        let key = derived(&file_key, nonce, b"payload").ok_or(OpenError::Damaged)?;
        open_chunks(&key, chunks)
    }

    fn file_key(&self, passphrase: &str) -> Result<FileKey, OpenError> {
        let key = passphrase_key(passphrase, &self.salt, self.work);
        let key = key.ok_or(OpenError::TooMuchWork)?;
        let unwrapped = ChaCha20Poly1305::new(&key).decrypt(&Nonce::default(), &self.wrapped[..]);
        let unwrapped = unwrapped.map_err(|_| OpenError::WrongPassphrase)?;
        let file_key: FileKey = unwrapped.try_into().map_err(|_| OpenError::Damaged)?;
        sum_over(&file_key, self.summed)
            .and_then(|sum| sum.verify_slice(&self.sum).ok())
            .ok_or(OpenError::Damaged)?;
        Ok(file_key)
    }

    /// What was drawn by chance when this file was locked.
    #[cfg(test)]
    pub fn drawn(&self, passphrase: &str) -> Option<Drawn> {
        let (nonce, _) = self.payload.split_at_checked(NONCE_BYTES)?;
        Some(Drawn {
            file_key: self.file_key(passphrase).ok()?,
            salt: self.salt,
            nonce: nonce.try_into().ok()?,
        })
    }
}

/// What is drawn by chance for one file and never used again.
pub struct Drawn {
    file_key: FileKey,
    salt: [u8; SALT_BYTES],
    nonce: [u8; NONCE_BYTES],
}

impl Drawn {
    /// Draws anew.
    pub fn new() -> Result<Self, SealError> {
        Ok(Self {
            file_key: by_chance()?,
            salt: by_chance()?,
            nonce: by_chance()?,
        })
    }

    /// A record, locked.
    pub fn lock(self, passphrase: &str, work: u8, record: &[u8]) -> Result<Vec<u8>, SealError> {
        let Self {
            file_key,
            salt,
            nonce,
        } = self;
        let key = passphrase_key(passphrase, &salt, work).ok_or(SealError::Failed)?;
        let wrapped = ChaCha20Poly1305::new(&key).encrypt(&Nonce::default(), &file_key[..]);
        let wrapped = wrapped.map_err(|_| SealError::Failed)?;
        let mut file = VERSION.to_vec();
        file.extend(
            format!(
                "\n{STANZA}{BY_PASSPHRASE} {} {work}\n{}\n{SUM}",
                STANDARD_NO_PAD.encode(salt),
                STANDARD_NO_PAD.encode(wrapped),
            )
            .bytes(),
        );
        let sum = sum_over(&file_key, &file).ok_or(SealError::Failed)?;
        let sum = STANDARD_NO_PAD.encode(sum.finalize().into_bytes());
        file.extend(format!(" {sum}\n").bytes());
        file.extend(nonce);
        let key = derived(&file_key, &nonce, b"payload").ok_or(SealError::Failed)?;
        lock_chunks(&key, record, &mut file)?;
        Ok(file)
    }
}

fn lock_chunks(key: &Key, record: &[u8], file: &mut Vec<u8>) -> Result<(), SealError> {
    // The standard numbers chunks in eleven bytes; seven of zero and the library's own four are the same.
    let mut stream = EncryptorBE32::from_aead(ChaCha20Poly1305::new(key), &Default::default());
    let mut rest = record;
    while rest.len() > CHUNK_BYTES {
        let (chunk, after) = rest.split_at(CHUNK_BYTES);
        file.extend(stream.encrypt_next(chunk).map_err(|_| SealError::Failed)?);
        rest = after;
    }
    file.extend(stream.encrypt_last(rest).map_err(|_| SealError::Failed)?);
    Ok(())
}

fn open_chunks(key: &Key, chunks: &[u8]) -> Result<Vec<u8>, OpenError> {
    const LOCKED_CHUNK: usize = CHUNK_BYTES + TAG_BYTES;
    let mut stream = DecryptorBE32::from_aead(ChaCha20Poly1305::new(key), &Default::default());
    let mut record = Vec::new();
    let mut rest = chunks;
    while rest.len() > LOCKED_CHUNK {
        let (chunk, after) = rest.split_at(LOCKED_CHUNK);
        record.extend(stream.decrypt_next(chunk).map_err(|_| OpenError::Damaged)?);
        rest = after;
    }
    if rest.len() < TAG_BYTES {
        return Err(OpenError::Damaged);
    }
    // A file that ends between two chunks ends with one that is not marked as the last: it was cut short.
    let was_empty = record.is_empty();
    let last = stream.decrypt_last(rest).map_err(|_| OpenError::Damaged)?;
    if last.is_empty() && !was_empty {
        return Err(OpenError::Damaged);
    }
    record.extend(last);
    Ok(record)
}

fn passphrase_key(passphrase: &str, salt: &[u8], work: u8) -> Option<Key> {
    let mut key = Key::default();
    let salt = [SALT_LABEL, salt].concat();
    let params = scrypt::Params::new(work, 8, 1, key.len()).ok()?;
    scrypt::scrypt(passphrase.as_bytes(), &salt, &params, &mut key).ok()?;
    Some(key)
}

fn derived(file_key: &FileKey, salt: &[u8], purpose: &[u8]) -> Option<Key> {
    let mut key = Key::default();
    let source = Hkdf::<Sha256>::new(Some(salt), file_key);
    source.expand(purpose, &mut key).ok()?;
    Some(key)
}

fn sum_over(file_key: &FileKey, head: &[u8]) -> Option<Hmac<Sha256>> {
    let key = derived(file_key, &[], b"header")?;
    let mut sum = <Hmac<Sha256> as Mac>::new_from_slice(&key).ok()?;
    sum.update(head);
    Some(sum)
}

fn by_chance<const N: usize>() -> Result<[u8; N], SealError> {
    let mut bytes = [0; N];
    getrandom::getrandom(&mut bytes).map_err(|_| SealError::Failed)?;
    Ok(bytes)
}

/// Takes the next line off, without its end.
fn line<'f>(rest: &mut &'f [u8]) -> Result<&'f [u8], OpenError> {
    let end = rest.iter().position(|&byte| byte == b'\n');
    let end = end.ok_or(OpenError::Damaged)?;
    let line = &rest[..end];
    *rest = &rest[end + 1..];
    Ok(line)
}

fn text(line: &[u8]) -> Result<&str, OpenError> {
    std::str::from_utf8(line).map_err(|_| OpenError::Damaged)
}

fn bytes<const N: usize>(text: &str) -> Result<[u8; N], OpenError> {
    let bytes = STANDARD_NO_PAD
        .decode(text)
        .map_err(|_| OpenError::Damaged)?;
    bytes.try_into().map_err(|_| OpenError::Damaged)
}

/// A number in the standard's one way of writing it: digits, and no zero before them. One that is too large for us is
/// still a number.
fn number(word: &str) -> Result<u8, OpenError> {
    let is_canonical = word.bytes().all(|byte| byte.is_ascii_digit())
        && !word.is_empty()
        && !word.starts_with('0');
    if !is_canonical {
        return Err(OpenError::Damaged);
    }
    word.parse().map_err(|_| OpenError::TooMuchWork)
}
