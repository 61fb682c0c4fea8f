//! How many digits one character stands for, in any script.

/// As many as its number has, but two at most; where it is written out with other characters (as one
/// sign for an hour is), as many as those have. So a sign for ten counts as two, and 12 in ideographs as
/// three: otherwise four digits fit into two signs for ten.
///
/// Numeric_Value and compatibility decompositions of the Unicode Character Database, version 17.0;
/// `core/tests/household/labels.rs` holds every character to it. What is not listed is one digit where
/// the standard library takes it for a number (general categories Nd, Nl and No).
#[rustfmt::skip]
pub(super) fn digits_in(character: char) -> usize {
    match character {
        '\u{2f00}' | '\u{2f06}' | '\u{2f0b}' | '\u{2f33}' | '\u{2f36}' | '\u{32c0}'..='\u{32c8}'
        | '\u{3358}'..='\u{3361}' | '\u{3378}'..='\u{3379}' | '\u{339f}'..='\u{33a6}' | '\u{33a8}'
        | '\u{33af}' | '\u{33e0}'..='\u{33e8}' | '\u{3405}' | '\u{3483}' | '\u{382a}' | '\u{3b4d}'
        | '\u{4e00}' | '\u{4e03}' | '\u{4e09}' | '\u{4e24}' | '\u{4e5d}' | '\u{4e8c}' | '\u{4e94}'
        | '\u{4e96}' | '\u{4ee8}' | '\u{4f0d}' | '\u{4fe9}' | '\u{5006}' | '\u{5169}' | '\u{516b}'
        | '\u{516d}' | '\u{53c1}'..='\u{53c4}' | '\u{56db}' | '\u{58f1}' | '\u{58f9}' | '\u{5e7a}'
        | '\u{5efe}' | '\u{5f0c}'..='\u{5f0e}' | '\u{5f10}' | '\u{62d0}' | '\u{634c}' | '\u{67d2}'
        | '\u{6d1e}' | '\u{6f06}' | '\u{7396}' | '\u{8086}' | '\u{8cae}' | '\u{8cb3}' | '\u{8d30}'
        | '\u{920e}' | '\u{94a9}' | '\u{9646}' | '\u{9678}' | '\u{96f6}' | '\u{f96b}' | '\u{f978}'
        | '\u{f9b2}' | '\u{f9d1}' | '\u{f9d3}' | '\u{fa05}' | '\u{12038}'..='\u{12039}' | '\u{12079}'
        | '\u{12226}' | '\u{1222b}' | '\u{1230b}' | '\u{1230d}' | '\u{12399}' | '\u{1f214}'
        | '\u{1f229}'..='\u{1f22a}' | '\u{1f241}'..='\u{1f242}' | '\u{20001}' | '\u{20064}'
        | '\u{200e2}' | '\u{20121}' | '\u{2092a}' | '\u{20aea}' | '\u{20afd}' | '\u{20b19}'
        | '\u{22390}' | '\u{22998}' | '\u{23b1b}' | '\u{2626d}' | '\u{2f890}' => 1,
        // The last, the keycap ten, has a picture alone, and no number in the database.
        '\u{bc}'..='\u{be}' | '\u{9f9}' | '\u{bf0}'..='\u{bf2}' | '\u{d70}'..='\u{d72}'
        | '\u{1372}'..='\u{137c}' | '\u{16ee}'..='\u{16f0}' | '\u{2150}'..='\u{2151}'
        | '\u{2153}'..='\u{215e}' | '\u{2169}'..='\u{216f}' | '\u{2179}'..='\u{2182}'
        | '\u{2186}'..='\u{2189}' | '\u{2469}'..='\u{2473}' | '\u{247d}'..='\u{2487}'
        | '\u{2491}'..='\u{249b}' | '\u{24eb}'..='\u{24f4}' | '\u{24fe}' | '\u{277f}' | '\u{2789}'
        | '\u{2793}' | '\u{2f17}' | '\u{3038}'..='\u{303a}' | '\u{3229}' | '\u{3248}'..='\u{324f}'
        | '\u{3251}'..='\u{325f}' | '\u{3289}' | '\u{32b1}'..='\u{32bf}' | '\u{32c9}'..='\u{32cb}'
        | '\u{3362}'..='\u{3370}' | '\u{33e9}'..='\u{33fe}' | '\u{4e07}' | '\u{4eac}'
        | '\u{4ebf}'..='\u{4ec0}' | '\u{4edf}' | '\u{4f70}' | '\u{5104}' | '\u{5146}' | '\u{5341}'
        | '\u{5343}'..='\u{5345}' | '\u{534c}' | '\u{5eff}' | '\u{62fe}' | '\u{767e}' | '\u{7695}'
        | '\u{79ed}' | '\u{842c}' | '\u{9621}' | '\u{964c}' | '\u{f973}' | '\u{f9fd}'
        | '\u{10110}'..='\u{10133}' | '\u{10144}'..='\u{10147}' | '\u{10149}'..='\u{1014e}'
        | '\u{10150}'..='\u{10157}' | '\u{10160}'..='\u{10172}' | '\u{10174}'
        | '\u{102ea}'..='\u{102fb}' | '\u{10322}'..='\u{10323}' | '\u{10341}' | '\u{1034a}'
        | '\u{103d3}'..='\u{103d5}' | '\u{1085b}'..='\u{1085f}' | '\u{1087e}'..='\u{1087f}'
        | '\u{108ad}'..='\u{108af}' | '\u{108fd}'..='\u{108ff}' | '\u{10917}'..='\u{10919}'
        | '\u{109c9}'..='\u{109cf}' | '\u{109d2}'..='\u{109f5}' | '\u{10a44}'..='\u{10a47}'
        | '\u{10a7e}' | '\u{10a9e}'..='\u{10a9f}' | '\u{10aed}'..='\u{10aef}'
        | '\u{10b5c}'..='\u{10b5f}' | '\u{10b7c}'..='\u{10b7f}' | '\u{10bad}'..='\u{10baf}'
        | '\u{10cfc}'..='\u{10cff}' | '\u{10e69}'..='\u{10e7a}' | '\u{10f22}'..='\u{10f25}'
        | '\u{10f52}'..='\u{10f54}' | '\u{10fc9}'..='\u{10fcb}' | '\u{1105b}'..='\u{11065}'
        | '\u{111ea}'..='\u{111f4}' | '\u{1173a}'..='\u{1173b}' | '\u{118ea}'..='\u{118f2}'
        | '\u{11c63}'..='\u{11c6c}' | '\u{12432}'..='\u{12433}' | '\u{12467}'..='\u{12468}'
        | '\u{16b5b}'..='\u{16b61}' | '\u{16e8a}'..='\u{16e93}' | '\u{1d2ca}'..='\u{1d2d3}'
        | '\u{1d2ea}'..='\u{1d2f3}' | '\u{1d369}'..='\u{1d371}' | '\u{1ec7a}'..='\u{1eca2}'
        | '\u{1ecb3}'..='\u{1ecb4}' | '\u{1ed0a}'..='\u{1ed2d}' | '\u{1ed37}'..='\u{1ed3b}'
        | '\u{20983}' | '\u{2098c}' | '\u{2099c}' | '\u{1f51f}' => 2,
        '\u{2152}' => 3,
        other => usize::from(other.is_numeric()),
    }
}
