//! Words around the pages: names, buttons, titles, headings, messages.

use self_check_core::exposure::{KeyRange, KeysLeft};
use self_check_core::questions::{Choice, Question};

use super::numbers::keys_range;
use crate::copy::StartWords;

texts! {
    // The frame
    /// The product's name, first part.
    NAME_PLAIN = "House Key";
    /// The product's name, stressed part.
    NAME_STRESSED = "Self-Check";
    /// Leads past the frame.
    SKIP = "Skip to the page";
    /// Empties everything and goes.
    LEAVE_NOW = "Leave now";
    /// Names the list of pages for screen readers.
    NAV_LABEL = "Pages";
    /// The pages to read.
    LEARN = "Learn";
    /// Several keys, people and doors.
    KEYS = "Keys and doors";
    /// How to check this page.
    ABOUT = "How to check this page";
    /// The same, as a link in the footer.
    ABOUT_LINK = "How to check this page, and what “Leave now” cannot remove";
    /// Footer.
    FOOT = "This check gives advice. It does not replace the law where you live, your landlord, your insurer or a locksmith you have checked. It never asks for the number on your key.";
    /// Stands before a caution.
    CAUTION = "Take care.";

    // Start
    /// Title of the start page.
    START_TITLE = "How private is your key?";
    /// Its heading.
    HERO = "How private is your key?";
    /// Its opening line.
    LEDE = "Take your key in your hand and answer a few questions. In five to ten minutes you will know who could have had a copy made, what to do first, and if it is time for a new lock.";
    /// Starts the check.
    CHECK_A_KEY = "Check a key";
    /// Fills in the example.
    TRY_EXAMPLE = "Try it with an example";
    /// Goes on where one stopped.
    GO_ON = "Go on with your check";
    /// Forgets the answers, once asked.
    START_AGAIN = "Forget my answers and start again";
    /// Asked first.
    FORGET_THEM = "Forget all your answers? They cannot be brought back.";
    /// Forgets them.
    YES_FORGET = "Yes, forget them";
    /// Does not.
    NO_KEEP = "No, keep them";
    /// The promise.
    NEVER_TYPE_IT = "You will never be asked for the number on your key. Please never type it anywhere, not even here.";
    /// Heading of the direct starts.
    WHAT_HAPPENED = "Or start from what happened";
    /// Heading of what else there is.
    ALSO_HERE = "Also here";
    /// The picture page, in a line.
    ALSO_PICTURE = "Check a picture: is the key in it readable? And make a copy that is safe to share";
    /// Keys and doors, in a line.
    ALSO_KEYS = "All your keys and doors: who holds which key, what a lost ring opens, and a plan for the locksmith";
    /// The quiet start.
    WORRIED = "Worried about a person?";
    /// Leads to how to check.
    HOW_TO_CHECK = "How to check that";
    /// After a reload.
    ANSWERS_GONE = "This page keeps no answers: closed or loaded again, it begins here.";
    /// Beforehand.
    ANSWERS_WILL_GO = "The check keeps no answers either: close or reload the page, and they are gone.";

    // The example
    /// Names the banner.
    EXAMPLE_LABEL = "Example";
    /// What it is.
    EXAMPLE_NOTE = "These answers belong to an invented home: a terraced house with a workshop behind it.";
    /// Ends it.
    EXAMPLE_END = "Check my own key";

    // The questions
    /// Goes on.
    CONTINUE = "Continue";
    /// One page back.
    BACK = "Back";
    /// To the list of answers.
    TO_ANSWERS = "Back to my answers";
    /// Beside the hint of a question that takes several answers.
    TICK_ALL = "Tick all that apply.";
    /// Unfolds the reason for a question.
    WHY_WE_ASK = "Why this is asked";
    /// Beside "not sure".
    NOT_SURE_HINT = "that is fine: the check goes on without it";
    /// Beside "I have no copy here", where a key is missing.
    NO_COPY_HINT = "that is fine: only the number of keys is left out";
    /// Heading of an error.
    ERROR_TITLE = "There is a problem";

    // The answers
    /// Title and heading.
    ANSWERS_TITLE = "Look over your answers";
    /// Opening line.
    ANSWERS_LEDE = "Change what is not right. Nothing has left this device.";
    /// Changes an answer; the question's name follows.
    CHANGE = "Change";
    /// To the result.
    SEE_RESULT = "See the result";

    // The result
    /// Title.
    RESULT_TITLE = "Your result";
    /// Shows the level on the safety branch.
    SHOW_LEVEL = "Show what the answers say about the key";
    /// Heading of the number.
    COUNT = "Keys left to try";
    /// Heading of the exposures.
    EXPOSURES = "What may have given it away";
    /// Unfolds what level, number and exposures rest on.
    RESTS_ON = "What this rests on";
    /// Heading of the actions.
    TO_DO = "Do this, in this order";
    /// Above the list where somebody may be feared.
    ONLY_IN_A_PLAN = "Do the rest of this list only as part of a plan made with the service. The person may see a locksmith come, or find that a key no longer works.";
    /// In place of a time for the plan itself.
    WHEN_SAFE = "When it is safe for you";
    /// In place of a time, where somebody may be feared.
    WITH_THE_SERVICE = "With the service";
    /// Before something that may have happened.
    NOT_KNOWN = "Not known:";
    /// Where no number of keys is told, because a key was held.
    NO_GUESSING = "No guessing needed";
    /// Who carries an action out.
    WHO_DOES_IT = "Who";
    /// What drives its cost.
    COST = "Cost";
    /// Unfolds an action's reasons.
    WHY = "Why";
    /// To the page on it, below the list of what to do.
    TENANTS_AND_LANDLORDS = "Tenants and landlords: what to ask, and of whom";
    /// To the quiet start, from advice to ask somebody.
    TO_WORRIED = "To the start page, with “Worried about a person?”";
    /// To the page on it, below the list of what to do.
    CHOOSE_A_LOCKSMITH = "How to choose a locksmith, and what to ask";
    /// Heading of what to find out.
    FIND_OUT = "Worth finding out";
    /// Below it.
    FIND_OUT_LEDE = "These are still open. An answer would change the advice.";
    /// Heading where an answer would change nothing that is due.
    NOT_SURE_OF = "What you were not sure of";
    /// Above the rest of what the person was not sure of.
    NOT_SURE_EITHER = "For what to do first, these matter less:";
    /// Heading of the what-ifs.
    WHAT_IF = "What if, from today…";
    /// Below it.
    WHAT_IF_NOTE = "Tick what you might do. What somebody saw or copied stays so. But once every lock that it opens takes a new key, the old key is no use to them.";
    /// Heading of what is left after the what-ifs.
    WHAT_IF_LEFT = "What would then be left";
    /// Before what is still advised after the what-ifs.
    STILL_TO_DO = "Still on the list:";
    /// Above the pointer to what is left.
    RULE_NOW = "left now";
    /// Above the pointer to what there was.
    RULE_BEFORE = "a key nobody saw";
    /// Under the rule: the European standard's lowest grade.
    MARK_LOWEST = "a basic lock";
    /// Under the rule: its fourth grade.
    MARK_GRADE_4 = "a better lock";
    /// Under the rule: as many keys as one can carry to a door and try.
    MARK_POCKETFUL = "a pocketful of keys";
    /// Unfolds all rules.
    WHY_AND_WHY_NOT = "Why, and why not: every rule";
    /// Rules that hold.
    RULES_APPLY = "These fit your answers";
    /// Rules that wait for an answer.
    RULES_UNKNOWN = "These wait for an answer";
    /// Rules that do not hold.
    RULES_DO_NOT = "These do not fit your answers, or the check did not come to them";
    /// Heading of print and copy.
    TAKE_ALONG = "Take it along";
    /// What a copied or printed result may tell.
    TAKE_ALONG_CAUTION = "A printed or copied result tells others about your key. Other programs on this device may keep what you copy.";
    /// Prints.
    PRINT = "Print";
    /// Copies.
    COPY_AS_TEXT = "Copy as text";
    /// Done.
    COPIED = "Copied. Paste it where only you can read it.";
    /// Where the browser does not allow it.
    COPY_BY_HAND = "The browser did not allow it. Mark this text and copy it yourself:";
    /// The last line of the copied text.
    TEXT_CAUTION = "This is advice from House Key Self-Check. Local law, your landlord, your insurer and a locksmith you have checked come first.";
    /// Before what kinds of source there are.
    SOURCE_KINDS = "How far a source can be trusted";
    /// Before the sources of a printed list.
    KNOWN_FROM = "What the steps rest on:";
    /// Heading of the letter.
    LETTER = "A letter to your landlord";
    /// Below it.
    LETTER_NOTE = "It asks, and says nothing of what you answered here. Add your name and the date yourself, on paper or in your own program.";
    /// Copies the letter.
    COPY_LETTER = "Copy the letter";
    /// Back to the answers.
    CHANGE_ANSWERS = "Change my answers";

    // Learn and about
    /// Opening line of the list of pages.
    LEARN_LEDE = "Short pages on keys, copies and locksmiths. Read what you need.";
    /// To the list.
    ALL_PAGES = "All pages";
    /// Before the name of an authority with a register.
    REGISTER = "Register:";
    /// Heading of the glossary.
    WORDS = "Words used here";
    /// Opens the list of all sources.
    SOURCES = "All sources, and how far each can be trusted";
    // Who could read it from where
    /// Title of the page, and the link to it.
    DISTANCE = "Who could read it from where";
    /// Its opening line.
    DISTANCE_LEDE = "Across a table, through a window, from the far side of a street: how much of a key a camera can still tell.";
    /// Proportion first.
    DISTANCE_PEOPLE = "The people who had the key matter more: a copy needs no camera. In England and Wales, in the year to March 2020, a key was used in about 6 of 100 burglaries. Nobody counted copies apart. And someone who sees your key must still find its door. But researchers have read keys from pictures, near and far. So it is worth a habit: carry keys covered.";
    /// Heading of the scenes.
    DISTANCE_SCENE = "Choose a scene";
    /// Names the slider.
    DISTANCE_SLIDER = "Distance:";
    /// Names the recorded picture.
    DISTANCE_PICTURE = "A demonstration key as this camera would record it from this distance";
    /// Under it.
    DISTANCE_PICTURE_CAPTION = "An invented key, with the dots, blur and noise that the numbers rest on.";
    /// Names the chart.
    DISTANCE_CHART = "Keys left to try, by distance";
    /// Describes it.
    DISTANCE_CHART_DESC = "For each scene a line that rises with distance, from a few keys towards half of all. The same numbers are in the table below.";
    /// Under the chart.
    DISTANCE_CAPTION = "Keys left to try for an even chance, of one common kind with five cuts (dips along the edge). Both scales are in steps of ten. The marks at the side are the European standard’s minimum for new locks, not a grade of yours. They count all keys that a lock can have. A key that nobody has seen stands at half of its own: half of them make an even chance.";
    /// Names the table.
    DISTANCE_TABLE = "Keys left to try for an even chance, rounded, for a careful person with software";
    /// First column.
    DISTANCE_COLUMN = "Distance";
    /// Opens the list of figures.
    DISTANCE_ASSUMES = "What this assumes";
    /// Says what is left out.
    DISTANCE_CAVEATS = "All keys of this kind are taken as equally likely. Focus and tilt are taken as perfect, so real pictures tell less. Several pictures together tell more. A key cut along both edges tells as much as two pictures of one edge. Of a key that is cut deep along its whole edge, a soft picture tells more than we say: where we say ten keys, it can be seven. All figures of the scenes are our own.";
    /// Column.
    DISTANCE_FIGURE = "Figure";
    /// Column.
    DISTANCE_VALUE = "Value";
    /// Column.
    DISTANCE_SOURCE = "Known from";
    // Keeping the page
    /// Heading.
    KEEPING = "Use it without a network";
    /// What it means.
    KEEPING_HOW = "Your browser can store this page, so that it opens without a network too. None of your answers are stored. But other people who use this device could find that the page is there. “Leave now” takes it away again.";
    /// Keeps the page.
    KEEP = "Keep this page for use without a network";
    /// It is kept.
    KEPT = "This page is kept in this browser. It opens without a network. With one, your browser looks for a newer page each time.";
    /// Keeps it no longer.
    KEEP_NO_LONGER = "Keep it no longer";
    /// While it is being stored.
    STORING = "Storing the page…";
    /// While it is being taken away.
    REMOVING = "Taking the page away…";
    /// It was taken away.
    KEPT_NO_LONGER = "The page is no longer kept in this browser.";
    /// It was tried in vain.
    KEEP_FAILED = "Your browser did not keep the page. It may have no network or no room left, it may not allow it, or the page may be changing just now. Try again in a while.";
    /// Taking it away was tried in vain.
    REMOVE_FAILED = "Your browser did not take the page away. Try again, or remove what it holds for this site in its settings.";
    /// It cannot be.
    CANNOT_KEEP = "The page cannot be kept here: it was opened from a file or from an address without https, or your browser allows no such store.";
    /// Where somebody may be feared.
    NOT_OFFERED = "Nothing to keep or to download is offered here now: it could be found on this device.";
    /// Heading.
    ONE_FILE = "Take it as one file";
    /// What it is.
    ONE_FILE_HOW = "The whole page also comes as one file. Save it, then open it from your disk. It fetches nothing, and it tells your browser to let it fetch nothing.";
    /// How to check it.
    ONE_FILE_CHECK = "To check it, work out its sum (a long number that changes with each letter of a file). Then look for that number in the list of sums, and compare the list with one from somebody you trust: a friend who has the page too, or somebody who made it from its source. Open a window for commands in the folder where you saved the file, and type one of these lines:";
    /// Before the command there.
    ON_WINDOWS = "On Windows:";
    /// Before the command there.
    ON_A_MAC = "On a Mac:";
    /// Before the command there.
    ON_LINUX = "On Linux:";
    /// The link to it.
    ONE_FILE_DOWNLOAD = "Download the page as one file";
    /// The link to the sums.
    SUMS_DOWNLOAD = "Download the list of sums";
    /// Within that file.
    IS_ONE_FILE = "This is the page as one file. All of it is inside, and it fetches nothing.";
    // The ruler
    /// To the ruler, from the result.
    SHARPEN = "Sharpen the number with a ruler on the screen";
    /// Title of the page.
    RULER = "Count along the key";
    /// Its opening line.
    RULER_LEDE = "A cut is a dip along the blade (the part that goes into the lock). How many places for a cut your key has tells how many keys of its kind there can be. How deep a cut goes is never asked.";
    /// First heading.
    RULER_SCALE = "Set the scale";
    /// How.
    RULER_SCALE_HOW = "Take a bank card. Lay its short side gently on the frame, or hold it just beside the screen. Move the slider until the frame is as wide as the card. Do not press or scratch the screen.";
    /// Names the slider.
    RULER_SLIDER = "Width of the frame";
    /// One step narrower.
    RULER_NARROWER = "A little narrower";
    /// One step wider.
    RULER_WIDER = "A little wider";
    /// Second heading.
    RULER_LAY = "Lay the key along the ruler";
    /// How.
    RULER_LAY_HOW = "The shoulder is the step that stops the key in the lock. Put it at the thick line, with the blade along the ruler. The dark marks show where cuts may lie on common keys.";
    /// For keys without a shoulder.
    RULER_FROM_TIP = "My key has no shoulder: start from the tip";
    /// Where the screen is too small.
    RULER_TOO_WIDE = "This screen is too small to show the ruler at true size. Turn it on its side, or leave the count out: the result holds without it.";
    /// Describes the ruler.
    RULER_DESC = "A ruler at true size with seven numbered marks along the blade.";
    /// What counts.
    RULER_HIDDEN = "Count every mark from the first to the last cut, also one where you see no dip: a shallow cut can hide between deep ones. The slope at the tip is not a cut. Marks cannot tell what make a key is.";
    /// Question.
    RULER_COUNT = "How many marks lie along the cuts?";
    /// Answer.
    RULER_FIVE = "Five";
    /// Answer.
    RULER_SIX = "Six";
    /// Answer.
    RULER_OTHER = "Another number, or I cannot tell";
    /// What becomes of it.
    RULER_KEPT = "Scale and count are kept in this tab only, until you leave or reload the page.";
    /// Names the end of the blade on a drawing.
    TIP = "Tip";
    /// Names the long groove in the side of the blade.
    GROOVE = "Groove";
    /// Heading of the browser's list.
    REQUESTS = "What your browser lists";
    /// What adds to the list, where the page has parts to fetch.
    SECOND_PART = "This site has a second part: this page, Check a picture, Keys and doors, and the pages under Learn. Your browser fetches it from this same address when you first open one of them, and that adds three lines to the list. They carry nothing from you. To keep this page, or to download it, adds lines too.";
    /// Reads it again.
    LOOK_AGAIN = "Look again";
    /// No list.
    NO_REQUEST_LIST = "This browser gives pages no such list. Its developer tools may still show one.";

    // The second part of the page
    /// While it is being fetched.
    ROOM_LOADING = "This page is loading.";
    /// Title where it could not be.
    ROOM_MISSING = "This page could not be loaded";
    /// Why.
    ROOM_MISSING_WHY = "It belongs to the second part of this site, which your browser fetches when you first open it. That did not work just now.";
    /// What to do.
    ROOM_MISSING_HOW = "Turn your network on, then try again. Your answers are still here, and the check works without a network. If your network is on and it still fails, this site may have changed since you opened it. Then load the page anew. That forgets your answers.";
    /// Fetches it again.
    TRY_AGAIN = "Try again";

    // Elsewhere
    /// An address that leads nowhere.
    NOT_FOUND = "There is no such page";
    /// To the start.
    TO_START = "Go to the start page";
}

/// Which build of the page this is.
pub fn build_is(number: &str) -> String {
    format!(
        "This page is build {number}. The same page as one file has this number in its name. Another number means that something in the page was changed. A false page could show any number, so go by the sum."
    )
}

/// A document title: the page, then the product.
pub fn full_title(page: &str) -> String {
    format!("{page} · {NAME_PLAIN} {NAME_STRESSED}")
}

/// The title of a page of the check. It names no question: a title stays in the history.
pub fn step_title(step: usize) -> String {
    format!("Step {step}")
}

/// How far one has come. Some answers make the check shorter.
pub fn step_of(step: usize, total: usize, may_shorten: bool) -> String {
    let at_most = if may_shorten { "at most " } else { "" };
    format!("Step {step} of {at_most}{total}")
}

/// The title while something is wrong.
pub fn error_page_title(title: &str) -> String {
    format!("Error: {title}")
}

/// The title while the example is shown.
pub fn example_title(title: &str) -> String {
    format!("{title} ({})", EXAMPLE_LABEL.to_ascii_lowercase())
}

/// What is wrong when nothing was chosen, and what to do.
pub fn nothing_chosen(question: Question) -> &'static str {
    if question.row().takes_several {
        "Tick at least one line. “I am not sure” is an answer too."
    } else {
        "Choose one line. “I am not sure” is an answer too."
    }
}

/// A way to start from what happened.
pub fn direct_start(reason: Choice) -> StartWords {
    let line = match reason {
        Choice::KeyMissing => "what to do in the next hour",
        Choice::SharedAPicture => "what to do about it",
        Choice::JustMovedIn => "who else may have a key",
        Choice::SomeoneHadIt => "a cleaner, a repair, a car park, a flatmate",
        Choice::NumberOnIt => "is that bad?",
        _ => "",
    };
    StartWords {
        title: super::choice(reason).label,
        line,
    }
}

/// To the next page to read.
pub fn next_page(title: &str) -> String {
    format!("Next: {title}")
}

/// What the browser lists since the page was ready, but for the second part: it should be nothing.
/// `second_part` tells whether that was fetched too, and `kept_page` whether the browser fetched what a kept
/// page is called by.
pub fn requests_since_ready(requests: usize, second_part: bool, kept_page: bool) -> String {
    let but_for = match (second_part, kept_page) {
        (false, false) => "",
        (true, false) => " but for the second part of this site",
        (false, true) => " but for the kept page’s name and icons",
        (true, true) => " but for the second part of this site, and the kept page’s name and icons",
    };
    match requests {
        0 => format!("Since this page was ready, your browser has listed no request{but_for}."),
        1 => format!(
            "Since this page was ready, your browser has listed 1 request{but_for}. There should be none."
        ),
        _ => format!(
            "Since this page was ready, your browser has listed {requests} requests{but_for}. There should be none."
        ),
    }
}

/// What the browser lists that went to another address than the page's own. It should be nothing.
pub fn requests_elsewhere(requests: usize) -> String {
    match requests {
        0 => "None went to another address.".to_owned(),
        1 => "1 went to another address. There should be none.".to_owned(),
        _ => format!("{requests} went to another address. There should be none."),
    }
}

/// How many keys an exposure left to try.
pub fn keys_left(left: KeysLeft) -> String {
    format!("Keys left to try: {}", keys_range(left))
}

/// The line below the rule: what the number says, and what it does not.
pub fn rule_caption(of: &KeyRange, left: &KeysLeft) -> String {
    let before = keys_range(of.untouched());
    let now = keys_range(*left);
    let left = if now == before {
        "After what you told us, that is still so.".to_owned()
    } else {
        let no_guessing = if now == "1" {
            ", no guessing needed"
        } else {
            ""
        };
        format!("After what you told us, left to try: {now}{no_guessing}.")
    };
    format!(
        "For an even chance at a common house key, a stranger who never saw it would try {before} keys. It depends on how many cuts (dips along the edge) it has. {left} {RULE_NOTE}"
    )
}

/// How wide something is on the screen.
pub fn pixels(width: u16) -> String {
    format!("{width} pixels wide")
}

/// Grades of the European standard that ask for the same.
pub fn grades(numbers: &[u8]) -> String {
    match numbers {
        [one] => format!("grade {one}"),
        _ => {
            let numbers: Vec<String> = numbers.iter().map(u8::to_string).collect();
            format!("grades {}", numbers.join(" and "))
        }
    }
}

/// The numbers on the rule, one for each power of ten.
pub const RULE_NUMBERS: [&str; 7] = ["1", "10", "100", "1,000", "10,000", "100,000", "1 million"];

/// What the number on the rule is not.
pub const RULE_NOTE: &str = "These are patterns, not hours. The marks are what fits a pocket, and the least that the European standard asks of new locks: basic (grade 1) and better (grade 4). They do not grade your lock. Locks are opened in other ways too.";

/// A copy by its place in a row of copies.
pub fn copy_number(generation: u32) -> String {
    match generation {
        1 => "1st copy".to_owned(),
        2 => "2nd".to_owned(),
        3 => "3rd".to_owned(),
        later => format!("{later}th"),
    }
}
