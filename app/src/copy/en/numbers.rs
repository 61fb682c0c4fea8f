//! Numbers in words, rounded on a logarithmic scale: what is uncertain by a factor is not told to
//! three figures.

use self_check_core::exposure::KeysLeft;

/// "1", "a few", "about 10", "about 30" … "about 3 million": the nearest half decade.
///
/// Boundaries lie halfway between neighbours on a logarithmic scale. A value below 1 reads as 1; one
/// that is no number, or beyond any key, reads as "more than can be counted".
pub fn about_keys(keys: f64) -> String {
    if keys.is_nan() || keys >= BEYOND_COUNTING {
        return "more than can be counted".to_owned();
    }
    match half_decade(keys) {
        0 => "1".to_owned(),
        1 => "a few".to_owned(),
        step => {
            let first = if step % 2 == 0 { 1 } else { 3 };
            format!("about {}", grouped(first * 10_u64.pow(step / 2)))
        }
    }
}

/// The most there can be, rounded up to one figure: "80,000", "5 million". Never less than `keys`.
///
/// What is beyond counting reads as it does in [`about_keys`].
pub fn at_most_keys(keys: f64) -> String {
    if keys.is_nan() || keys >= BEYOND_COUNTING {
        return about_keys(keys);
    }
    let whole = keys.max(1.0).ceil() as u64;
    let unit = 10_u64.pow(whole.ilog10());
    grouped(whole.div_ceil(unit) * unit)
}

/// A range in words; one value where both ends read the same.
pub fn keys_range(keys: KeysLeft) -> String {
    let (fewest, most) = (about_keys(keys.fewest), about_keys(keys.most));
    if fewest == most {
        fewest
    } else {
        format!("from {} to {}", fewest.trim_start_matches("about "), most)
    }
}

/// From here on a rounded number would not fit, and no key has so many.
const BEYOND_COUNTING: f64 = 1e15;

/// The fourth root of ten: half a half decade.
const HALF_STEP: f64 = 1.778_279_410_038_922_8;

/// Which half decade is nearest to `keys`: 0 for 1, 1 for 3, 2 for 10, 3 for 30 and so on.
fn half_decade(keys: f64) -> u32 {
    let mut step = 0;
    let mut boundary = HALF_STEP;
    while keys >= boundary {
        step += 1;
        boundary *= HALF_STEP * HALF_STEP;
    }
    step
}

pub(super) fn grouped(number: u64) -> String {
    if number >= 1_000_000 {
        return format!("{} million", grouped(number / 1_000_000));
    }
    if number >= 1_000 {
        return format!("{},{:03}", number / 1_000, number % 1_000);
    }
    number.to_string()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn about_keys_rounds_to_the_nearest_half_decade() {
        let cases = [
            (0.2, "1"),
            (1.7, "1"),
            (1.8, "a few"),
            (5.6, "a few"),
            (5.7, "about 10"),
            (17.7, "about 10"),
            (17.8, "about 30"),
            (100.0, "about 100"),
            (2_500.0, "about 3,000"),
            (79_666.0, "about 100,000"),
            (29_999.0, "about 30,000"),
            (753_754.0, "about 1 million"),
            (3e9, "about 3,000 million"),
            (f64::INFINITY, "more than can be counted"),
            (f64::NAN, "more than can be counted"),
        ];
        for (keys, words) in cases {
            assert_eq!(about_keys(keys), words, "{keys}");
        }
    }

    #[test]
    fn at_most_keys_rounds_up_to_one_figure() {
        let cases = [
            (0.0, "1"),
            (9.0, "9"),
            (10.0, "10"),
            (10.5, "20"),
            (79_666.0, "80,000"),
            (999_999.0, "1 million"),
            (f64::NAN, "more than can be counted"),
        ];
        for (keys, words) in cases {
            assert_eq!(at_most_keys(keys), words, "{keys}");
        }
    }

    #[test]
    fn about_keys_never_reads_smaller_for_more_keys() {
        let mut last = 0;
        for tenth in 0..150 {
            let step = half_decade(10_f64.powf(f64::from(tenth) / 10.0));
            assert!(step >= last);
            last = step;
        }
        assert_eq!(last, 30);
    }

    #[test]
    fn keys_range_of_one_half_decade_is_one_number() {
        let range = |fewest, most| keys_range(KeysLeft { fewest, most });
        assert_eq!(range(1.0, 1.2), "1");
        assert_eq!(range(1.0, 79_666.0), "from 1 to about 100,000");
        assert_eq!(range(12.0, 900.0), "from 10 to about 1,000");
    }
}
