//! The page for the locksmith of a pair of doors with a master key.

use std::path::Path;

use self_check_tests::{Look, Page, Result, journey};

use crate::keys::to_the_locksmiths_page_all_alike;
use crate::looking::look;
use crate::print::read_back;
use crate::walking::arrive;

/// Front and back door with a key each, and a restricted master key to both, which the sitter lost near home.
const MASTER_PAIR: &str = r#"{"version":1,"record":"keys-and-doors","next":16,
 "doors":[{"id":3,"kind":"front-door","decides":"household"},{"id":5,"kind":"back-door","decides":"household"}],
 "holders":[{"id":7,"role":"resident"},{"id":10,"role":"sitter"}],
 "keys":[{"id":1},{"id":2},{"id":13,"restricted":true}],
 "locks":[{"id":4,"door":3,"kind":"pin-tumbler","keys":[1,13],"arrangement":"master-keyed"},
          {"id":6,"door":5,"kind":"pin-tumbler","keys":[2,13],"arrangement":"master-keyed"}],
 "ways":[],
 "copies":[{"id":8,"key":1,"place":"held","who":7},{"id":9,"key":2,"place":"held","who":7},
           {"id":11,"key":1,"place":"held","who":10},{"id":12,"key":2,"place":"held","who":10},
           {"id":14,"key":13,"place":"held","who":7},
           {"id":15,"key":13,"place":"lost","who":10,"loss":"near-home"}],
 "prices":{"included":0,"items":[]}}"#;

/// What stands on paper, in one row of words, and on one page.
async fn on_paper(page: &Page, name: &str) -> Result<String> {
    let (pages, text) = read_back(&page.print().await?, name)?;
    assert_eq!(pages, 1, "{text}");
    let words: Vec<&str> = text.split_whitespace().collect();
    Ok(words.join(" "))
}

#[test]
fn lost_master_key_of_a_pair_is_named_with_the_keys_that_go_on_turning() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        let record = Path::new(env!("CARGO_TARGET_TMPDIR")).join("master-pair.json");
        std::fs::write(&record, MASTER_PAIR)?;
        page.open_at("#/keys").await?;
        arrive(page, "Keys and doors").await?;
        page.choose_file(&record).await?;
        arrive(page, "One key could be in wrong hands").await?;
        page.click("link", "A page for the locksmith").await?;
        arrive(page, "A page for the locksmith").await?;
        let text = on_paper(page, "locksmith-master.pdf").await?;
        for part in [
            "its master key is restricted today",
            "master-keyed, and stays so",
            "A (master), B (own)",
            "A (master), C (own)",
            "New master key A opens locks 1, 2.",
            "Own key B opens lock 1, stays as it is and must go on turning, and we bring it.",
            "Own key C opens lock 2, stays as it is and must go on turning, and we bring it.",
            "Extra for each master-keyed lock",
            "see that the old master key no longer turns in locks 1, 2.",
        ] {
            assert!(text.contains(part), "{part}: {text}");
        }
        page.set_look(Look::PHONE).await?;
        look(page).await?;
        page.set_look(Look::DESKTOP).await?;
        to_the_locksmiths_page_all_alike(page).await?;
        let text = on_paper(page, "locksmith-one-key.pdf").await?;
        assert!(text.contains("takes several keys today, one after the work"));
        assert!(text.contains("New key A opens locks 1, 2."), "{text}");
        for gone in ["master-keyed", "must go on turning", "(master)"] {
            assert!(!text.contains(gone), "{gone}: {text}");
        }
        Ok(())
    })
}
