#![allow(clippy::unwrap_used)]

use super::*;

const PASSPHRASE: &str = "brass hinge under a quiet lamp";
const RECORD: &[u8] = br#"{"version":1,"record":"keys-and-doors"}"#;

/// As little work as the format allows, so that a test can lock many times.
fn sealed() -> Vec<u8> {
    seal_with(1, PASSPHRASE, RECORD).unwrap()
}

#[test]
fn locked_record_opens_with_its_passphrase_alone() {
    let file = sealed();
    assert!(is_sealed(&file));
    assert!(!is_sealed(RECORD));
    assert_eq!(examine(&file), Ok(()));
    assert_eq!(open(PASSPHRASE, &file).as_deref(), Ok(RECORD));
    for other in [
        "",
        "brass hinge under a quiet lamp ",
        "Brass hinge under a quiet lamp",
    ] {
        assert_eq!(
            open(other, &file),
            Err(OpenError::WrongPassphrase),
            "{other:?}"
        );
    }
}

#[test]
fn locked_record_shows_nothing_of_itself_and_is_never_the_same_twice() {
    let (file, again) = (sealed(), sealed());
    assert_ne!(file, again);
    let shown = String::from_utf8_lossy(&file);
    assert!(!shown.contains("record"), "{shown}");
}

#[test]
fn our_own_work_opens_again() {
    let file = seal(PASSPHRASE, RECORD).unwrap();
    assert_eq!(Head::read(&file).map(|head| head.work), Ok(WORK));
    assert_eq!(open(PASSPHRASE, &file).as_deref(), Ok(RECORD));
}

#[test]
fn locked_record_is_no_longer_than_told() {
    for length in [0, 1, 64 * 1024 - 1, 64 * 1024, 64 * 1024 + 1, 1_000_000] {
        let file = seal_with(1, PASSPHRASE, &vec![b' '; length]).unwrap();
        assert!(file.len() <= longest(length), "{length}");
    }
}

/// Files that another program of the standard has written: age-encryption 0.3.1, by the standard's author, at work 2.
/// Each holds so many bytes, that at place n being n modulo 251.
const ELSEWHERE: [(usize, &[u8]); 4] = [
    (0, include_bytes!("data/nothing.age")),
    (1000, include_bytes!("data/thousand.age")),
    (64 * 1024, include_bytes!("data/one-chunk.age")),
    (64 * 1024 + 1, include_bytes!("data/two-chunks.age")),
];

#[test]
fn files_of_another_program_open_and_are_written_alike_to_the_last_bit() {
    for (length, file) in ELSEWHERE {
        let record: Vec<u8> = (0..length).map(|at| (at % 251) as u8).collect();
        assert_eq!(open(PASSPHRASE, file).as_ref(), Ok(&record), "{length}");
        let drawn = Head::read(file).unwrap().drawn(PASSPHRASE).unwrap();
        assert_eq!(
            drawn.lock(PASSPHRASE, 2, &record).unwrap(),
            file,
            "{length}"
        );
    }
}

#[test]
fn chunks_left_out_swapped_or_cut_off_err() {
    let chunk = 64 * 1024 + 16;
    let file = seal_with(1, PASSPHRASE, &vec![7; 3 * 64 * 1024]).unwrap();
    let start = file.len() - 3 * chunk;
    let (head, chunks) = file.split_at(start);
    let [a, b, c] = [0, 1, 2].map(|at| &chunks[at * chunk..][..chunk]);
    for parts in [
        vec![a, c],
        vec![b, a, c],
        vec![a, b],
        vec![a],
        vec![],
        vec![a, b, c, c],
    ] {
        let file = [head, &parts.concat()].concat();
        assert_eq!(
            open(PASSPHRASE, &file),
            Err(OpenError::Damaged),
            "{} chunks",
            parts.len()
        );
    }
}

/// What the standard's own test vectors ("CCTV", C2SP) name as faults of this line.
#[test]
fn heads_that_are_not_canonical_are_refused() {
    let file = String::from_utf8_lossy(&sealed()).into_owned();
    let line = file.lines().nth(1).unwrap();
    let salt = line.split(' ').nth(2).unwrap();
    let (most, last) = salt.split_at(salt.len() - 1);
    let other_last = if last == "B" { "C" } else { "B" };
    for line in [
        format!("-> scrypt {salt}"),
        format!("-> scrypt {salt} 1 1"),
        format!("-> scrypt {salt}  1"),
        format!("-> scrypt {salt} 01"),
        format!("-> scrypt {salt} 0"),
        format!("-> scrypt {salt} +1"),
        format!("-> scrypt {salt} -1"),
        format!("-> scrypt {salt} 0x1"),
        format!("-> scrypt {salt} 1a"),
        format!("-> scrypt {salt} "),
        format!("-> scrypt {salt}== 1"),
        format!("-> scrypt {salt}AAAA 1"),
        format!("-> scrypt {} 1", &salt[..4]),
        format!("-> scrypt {most}{other_last} 1"),
        "-> scrypt".to_owned(),
        format!("->scrypt {salt} 1"),
    ] {
        let hostile = sealed_with_line(&line);
        assert_eq!(
            open(PASSPHRASE, &hostile),
            Err(OpenError::Damaged),
            "{line}"
        );
    }
    let upper = sealed_with_line(&format!("-> Scrypt {salt} 1"));
    assert_eq!(open(PASSPHRASE, &upper), Err(OpenError::LockedOtherwise));
    // The sum is over this line too.
    let again = String::from_utf8_lossy(&sealed()).into_owned();
    let foreign = sealed_with_line(again.lines().nth(1).unwrap());
    assert_eq!(open(PASSPHRASE, &foreign), Err(OpenError::WrongPassphrase));
}

#[test]
fn every_beginning_of_a_locked_file_errs() {
    let file = sealed();
    for end in 0..file.len() {
        let error = open(PASSPHRASE, &file[..end]).unwrap_err();
        assert_eq!(error, OpenError::Damaged, "{end}");
    }
}

#[test]
fn bit_turned_in_any_byte_errs() {
    let file = sealed();
    for place in 0..file.len() {
        let mut damaged = file.clone();
        damaged[place] ^= 1 << (place % 8);
        assert!(open(PASSPHRASE, &damaged).is_err(), "byte {place}");
    }
}

#[test]
fn file_that_asks_for_too_much_is_refused_before_any_work() {
    let file = String::from_utf8_lossy(&sealed()).into_owned();
    let head = file.split("---").next().unwrap();
    for (work, error) in [
        ("21", OpenError::TooMuchWork),
        ("30", OpenError::TooMuchWork),
        ("63", OpenError::TooMuchWork),
        ("64", OpenError::TooMuchWork),
        ("255", OpenError::TooMuchWork),
        ("99999999999", OpenError::TooMuchWork),
    ] {
        let line = head.lines().nth(1).unwrap();
        let harder = line.strip_suffix(" 1").unwrap().to_owned() + " " + work;
        let hostile = sealed_with_line(&harder);
        let begun = std::time::Instant::now();
        assert_eq!(open(PASSPHRASE, &hostile), Err(error), "{work}");
        assert_eq!(examine(&hostile), Err(error), "{work}");
        assert!(begun.elapsed().as_secs() < 1, "{work}");
    }
}

/// A locked file with another second line.
fn sealed_with_line(line: &str) -> Vec<u8> {
    let file = sealed();
    let mut lines: Vec<&[u8]> = file.split(|&byte| byte == b'\n').collect();
    lines[1] = line.as_bytes();
    lines.join(&b'\n')
}

#[test]
fn files_locked_in_another_way_are_told_apart() {
    let by_key = b"age-encryption.org/v1\n-> X25519 TEiF0ypqr+bpvcqXNyCVJpL7OuwPdVwPL7KQEbFDOCc\n";
    assert!(is_sealed(by_key));
    assert_eq!(open(PASSPHRASE, by_key), Err(OpenError::LockedOtherwise));
    let as_text = b"-----BEGIN AGE ENCRYPTED FILE-----\nYWdl\n";
    assert!(is_sealed(as_text));
    assert_eq!(open(PASSPHRASE, as_text), Err(OpenError::LockedOtherwise));
    let later = b"age-encryption.org/v9\n-> x y\n\n--- z\n";
    assert!(is_sealed(later));
    assert_eq!(open(PASSPHRASE, later), Err(OpenError::LockedOtherwise));
}
