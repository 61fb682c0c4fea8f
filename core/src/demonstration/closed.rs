//! That nothing a person enters can become a pattern, by the traits that would let it.
//!
//! The examples of [`DemonstrationPattern`] show the same as code that does not compile. An example
//! would also fail to compile for another reason, such as a name that has changed; here the answer
//! is a value, and types that do have the trait are asked beside it.

use super::DemonstrationPattern;
use core::marker::PhantomData;
use core::str::FromStr;

/// `Asked::<T>::YES` for each bound: an associated constant of the type itself, there only where the
/// bound holds, goes before the trait's.
macro_rules! holds {
    ($kind:ty: $($bound:tt)+) => {{
        struct Asked<T>(PhantomData<T>);
        #[allow(dead_code, reason = "unused where the bound holds")]
        trait Otherwise {
            const YES: bool = false;
        }
        impl<T> Otherwise for Asked<T> {}
        #[allow(dead_code, reason = "unused where the bound does not hold")]
        impl<T: $($bound)+> Asked<T> {
            const YES: bool = true;
        }
        <Asked<$kind>>::YES
    }};
}

#[test]
fn pattern_is_not_made_from_depths() {
    assert!(holds!(Vec<u8>: From<&'static [u8]>));
    assert!(!holds!(DemonstrationPattern: From<&'static [u8]>));
    assert!(!holds!(DemonstrationPattern: From<Vec<u8>>));
    assert!(!holds!(DemonstrationPattern: From<[u8; 5]>));
    assert!(holds!([u8; 5]: TryFrom<&'static [u8]>));
    assert!(!holds!(DemonstrationPattern: TryFrom<&'static [u8]>));
    assert!(!holds!(DemonstrationPattern: TryFrom<Vec<u8>>));
    assert!(holds!(Vec<u8>: FromIterator<u8>));
    assert!(!holds!(DemonstrationPattern: FromIterator<u8>));
}

#[test]
fn pattern_is_not_read_from_text_or_a_number() {
    assert!(holds!(u32: FromStr));
    assert!(!holds!(DemonstrationPattern: FromStr));
    assert!(holds!(String: From<&'static str>));
    assert!(!holds!(DemonstrationPattern: From<&'static str>));
    assert!(!holds!(DemonstrationPattern: From<String>));
    assert!(holds!(u64: TryFrom<u128>));
    assert!(!holds!(DemonstrationPattern: TryFrom<u32>));
    assert!(!holds!(DemonstrationPattern: TryFrom<u64>));
}

#[test]
fn pattern_is_not_kept_in_a_record_or_read_from_one() {
    assert!(holds!(Vec<u8>: serde::Serialize));
    assert!(!holds!(DemonstrationPattern: serde::Serialize));
    assert!(holds!(Vec<u8>: serde::de::DeserializeOwned));
    assert!(!holds!(DemonstrationPattern: serde::de::DeserializeOwned));
}

/// Without a value to start from, there is none to change step by step.
#[test]
fn pattern_has_no_default_and_lends_no_depth_for_writing() {
    assert!(holds!(Vec<u8>: Default));
    assert!(!holds!(DemonstrationPattern: Default));
    assert!(holds!(Vec<u8>: AsMut<[u8]>));
    assert!(!holds!(DemonstrationPattern: AsMut<[u8]>));
}
