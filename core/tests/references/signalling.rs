//! Mutual information of equally likely levels in Gaussian noise.
//!
//! Source: 40-digit quadrature, an adaptive quadrature and a trapezoid rule, which agree to
//! 1.2e-13, computed apart from this crate. The values are printed to 12 digits, so the tolerance
//! is 1e-9, the precision the crate promises, not that of the print. Rows by decibels are printed
//! to 10 digits: 1e-9 too. Hard decisions are printed to 8 digits: half a unit of the last, 5e-9.
//!
//! The limits for two levels (rate 1/2 at 0.187 dB and so on) are also handbook values of coding
//! theory, printed to three digits there.

use self_check_core::reading::information_per_cut;

const LEVELS: [u8; 4] = [2, 4, 8, 10];

const BY_RATIO: [(f64, [f64; 4]); 6] = [
    (
        0.5,
        [
            0.043729962944,
            0.195960031022,
            0.597269129834,
            0.790574424899,
        ],
    ),
    (
        1.0,
        [
            0.160747219796,
            0.576507877788,
            1.264823894115,
            1.524368093210,
        ],
    ),
    (
        2.0,
        [
            0.485944154133,
            1.219413104132,
            2.086121448120,
            2.381391211804,
        ],
    ),
    (
        3.0,
        [
            0.759979007771,
            1.639890886309,
            2.579846825036,
            2.889766107669,
        ],
    ),
    (
        6.0,
        [
            0.994446709676,
            1.991670064514,
            2.990281741933,
            3.311932172304,
        ],
    ),
    (
        8.0,
        [
            0.999865057408,
            1.999797586112,
            2.999763850464,
            3.321685198222,
        ],
    ),
];

const HARD_DECISIONS: [(f64, [f64; 4]); 3] = [
    (1.0, [0.10852192, 0.51435860, 1.20491879, 1.46489660]),
    (2.0, [0.36891723, 1.06386143, 1.91133289, 2.20275528]),
    (8.0, [0.99948094, 1.99922140, 2.99909164, 3.32099378]),
];

const BY_DECIBELS: [(f64, [f64; 3], f64); 6] = [
    (
        -10.0,
        [0.0687433134, 0.0687478944, 0.0687485619],
        0.0687517619,
    ),
    (
        0.0,
        [0.4859441541, 0.4948706861, 0.4958860619],
        0.5000000000,
    ),
    (
        5.0,
        [0.8591940837, 0.9865836739, 0.9963068115],
        1.0286866043,
    ),
    (
        10.0,
        [0.9967563280, 1.5819715940, 1.6342861782],
        1.7297158093,
    ),
    (
        15.0,
        [0.9999999590, 1.9642658504, 2.3407164447],
        2.5139038367,
    ),
    (
        20.0,
        [1.0000000000, 1.9999749924, 2.9007308985],
        3.3291057414,
    ),
];

/// Levels spaced 1 apart have the variance (M²−1)/12.
fn ratio_at(decibels: f64, levels: u8) -> f64 {
    let snr = 10_f64.powf(decibels / 10.0);
    (12.0 * snr / (f64::from(levels * levels) - 1.0)).sqrt()
}

fn decibels_for(levels: u8, bits: f64) -> f64 {
    let (mut low, mut high) = (-30.0, 40.0);
    for _ in 0..80 {
        let middle = 0.5 * (low + high);
        if information_per_cut(levels, ratio_at(middle, levels)).get() < bits {
            low = middle;
        } else {
            high = middle;
        }
    }
    low
}

#[test]
fn information_by_ratio_agrees_in_every_row() {
    for (ratio, row) in BY_RATIO {
        for (levels, expected) in LEVELS.into_iter().zip(row) {
            let found = information_per_cut(levels, ratio).get();
            assert!((found - expected).abs() < 1e-9, "{levels} {ratio}: {found}");
        }
    }
}

#[test]
fn information_by_decibels_agrees_in_every_row_and_stays_below_the_bound() {
    for (decibels, row, bound) in BY_DECIBELS {
        let snr = 10_f64.powf(decibels / 10.0);
        assert!((0.5 * (1.0 + snr).log2() - bound).abs() < 1e-9);
        for (levels, expected) in [2, 4, 8].into_iter().zip(row) {
            let found = information_per_cut(levels, ratio_at(decibels, levels)).get();
            assert!(
                (found - expected).abs() < 1e-9,
                "{levels} {decibels} dB: {found}"
            );
            assert!(found < bound);
        }
    }
}

/// Deciding each cut for its nearest depth throws information away; its value is computed here
/// from the normal distribution alone, by the chance of landing at each depth from each other.
#[test]
fn deciding_for_the_nearest_level_tells_less() {
    for (ratio, row) in HARD_DECISIONS {
        for (levels, expected) in LEVELS.into_iter().zip(row) {
            let hard = hard_decision(levels, ratio);
            assert!((hard - expected).abs() < 5e-9, "{levels} {ratio}: {hard}");
            assert!(hard < information_per_cut(levels, ratio).get());
        }
    }
}

fn hard_decision(levels: u8, ratio: f64) -> f64 {
    let beyond = |z: f64| 0.5 * libm::erfc(z / std::f64::consts::SQRT_2);
    // By symmetry only distances matter; upper tails keep their digits.
    let transition = |from: u8, to: u8| {
        let apart = f64::from(from.abs_diff(to)) * ratio;
        let outermost = to == 0 || to + 1 == levels;
        match (from == to, outermost) {
            (true, true) => 1.0 - beyond(0.5 * ratio),
            (true, false) => 1.0 - 2.0 * beyond(0.5 * ratio),
            (false, true) => beyond(apart - 0.5 * ratio),
            (false, false) => beyond(apart - 0.5 * ratio) - beyond(apart + 0.5 * ratio),
        }
    };
    let share = 1.0 / f64::from(levels);
    let entropy = |p: f64| if p > 0.0 { -p * p.log2() } else { 0.0 };
    let mut output = 0.0;
    let mut noise = 0.0;
    for to in 0..levels {
        let chances: Vec<f64> = (0..levels).map(|from| transition(from, to)).collect();
        output += entropy(chances.iter().sum::<f64>() * share);
        noise += chances.into_iter().map(entropy).sum::<f64>() * share;
    }
    output - noise
}

#[test]
fn weak_readings_tell_the_first_order_term() {
    let first_order = 3.0 * 0.01 * 0.01 / (24.0 * std::f64::consts::LN_2);
    let found = information_per_cut(2, 0.01).get();
    assert!(
        (found / first_order - 0.9999875).abs() < 1e-8,
        "{}",
        found / first_order
    );
    for levels in 2..=12 {
        let first_order =
            (f64::from(levels * levels) - 1.0) * 1e-8 / (24.0 * std::f64::consts::LN_2);
        assert!((information_per_cut(levels, 1e-4).get() / first_order - 1.0).abs() < 1e-4);
    }
}

/// Energy per bit over noise density, in decibels, at which two levels carry a given rate.
#[test]
fn limits_of_two_levels_agree_with_those_of_coding_theory() {
    for (rate, expected) in [
        (1.0 / 3.0, -0.4954),
        (0.5, 0.1871),
        (2.0 / 3.0, 1.0595),
        (0.75, 1.6264),
        (0.8, 2.0400),
        (0.9, 3.1977),
    ] {
        let snr_decibels = decibels_for(2, rate);
        let per_bit = snr_decibels - 10.0 * (2.0 * rate).log10();
        assert!((per_bit - expected).abs() < 5.1e-5, "{rate}: {per_bit}");
    }
    // Levels ±1 in noise of this standard deviation carry half a bit.
    assert!((information_per_cut(2, 2.0 / 0.978694).get() - 0.5).abs() < 1e-6);
}

#[test]
fn signal_to_noise_for_whole_bits_agrees() {
    for (levels, bits, expected, above_bound) in
        [(4, 1.0, 5.1183, 0.3471), (8, 2.0, 12.6187, 0.8578)]
    {
        let found = decibels_for(levels, bits);
        assert!((found - expected).abs() < 5.1e-5, "{levels}: {found}");
        let bound = 10.0 * (4_f64.powf(bits) - 1.0).log10();
        assert!((found - bound - above_bound).abs() < 5.1e-5);
    }
}

/// The promise of 1e-9 over the whole range, against a trapezoid rule over the reading itself
/// instead of over its error, with eight times as many points.
#[test]
fn information_is_good_to_a_billionth_over_the_whole_range() {
    for levels in 2..=12 {
        for ratio in [
            0.01, 0.03, 0.1, 0.3, 0.7, 1.5, 2.7, 4.4, 7.0, 11.0, 15.0, 20.0,
        ] {
            let found = information_per_cut(levels, ratio).get();
            let other = by_density_of_readings(levels, ratio);
            assert!(
                (found - other).abs() < 1e-9,
                "{levels} {ratio}: {found} {other}"
            );
        }
    }
}

/// Differential entropy of the readings less that of their error.
fn by_density_of_readings(levels: u8, ratio: f64) -> f64 {
    let spacing = 1.0 / 256.0;
    let top = f64::from(levels - 1) * ratio;
    let nodes = ((top + 20.0) / spacing) as i64;
    let root_of_tau = std::f64::consts::TAU.sqrt();
    let mut entropy = 0.0;
    for node in 0..=nodes {
        let reading = node as f64 * spacing - 10.0;
        let density: f64 = (0..levels)
            .map(|level| {
                let apart = reading - f64::from(level) * ratio;
                (-0.5 * apart * apart).exp() / (f64::from(levels) * root_of_tau)
            })
            .sum();
        if density > 0.0 {
            entropy -= spacing * density * density.log2();
        }
    }
    entropy - 0.5 * (std::f64::consts::TAU * std::f64::consts::E).log2()
}
