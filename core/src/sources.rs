//! Where a figure or a rule comes from. Sources are values, so that a page can list them and a
//! test can fail for a rule without one or a source without a use.
//!
//! A published source is cited by author, title and place in it. The texts here are citations, the
//! only words of a natural language that this crate holds.

/// One source.
#[derive(Debug, PartialEq, Eq)]
pub struct Source {
    /// Unique and stable; used in examples and tests.
    pub id: &'static str,
    /// People or body that published it; empty for practice and assumptions.
    pub authors: &'static str,
    /// Year of publication, where known.
    pub year: Option<u16>,
    /// Title of the work, or a short name of the practice or assumption.
    pub title: &'static str,
    /// Clause, table or page in it; empty where the whole is meant.
    pub place: &'static str,
    /// How far it can be trusted.
    pub kind: SourceKind,
}

/// How far a source can be trusted, best first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum SourceKind {
    /// Read in the published source itself.
    Published,
    /// As quoted by secondary pages; the source's own text was not seen.
    Secondary,
    /// What the trade commonly does or measures.
    CommonPractice,
    /// Remembered, not seen; never used to check anything.
    FromMemory,
    /// Chosen by this project, with the reason beside it.
    OurAssumption,
}

impl SourceKind {
    /// The kinds, most to be trusted first.
    pub const ALL: [Self; 5] = [
        Self::Published,
        Self::Secondary,
        Self::CommonPractice,
        Self::FromMemory,
        Self::OurAssumption,
    ];
}

macro_rules! sources {
    ($($(#[$doc:meta])* $name:ident = $id:literal, $authors:literal, $year:expr, $title:literal, $place:literal, $kind:ident;)*) => {
        $($(#[$doc])* pub static $name: Source = Source {
            id: $id, authors: $authors, year: $year, title: $title, place: $place, kind: SourceKind::$kind,
        };)*
        /// Every source, in the order in which a page lists them.
        pub static ALL: &[&Source] = &[$(&$name),*];
    };
}

pub mod regional;

sources! {
    /// Minimum numbers of effective differs by grade.
    EN_1303 = "en-1303", "CEN", None, "EN 1303, Building hardware: Cylinders for locks", "key-related security, grades 1 to 6; edition not named", Secondary;
    /// How one key of a master-keyed system, with one of its locks, leads to the master key.
    RIGHTS_AMPLIFICATION = "rights-amplification", "M. Blaze", Some(2003), "Rights Amplification in Master-Keyed Mechanical Locks, IEEE Security & Privacy 1(2):24-32", "abstract and first page", Published;
    /// Keys read from pictures near and far.
    OPTICAL_DECODING = "optical-decoding", "B. Laxton, K. Wang, S. Savage", Some(2008), "Reconsidering Physical Key Secrecy: Teleduplication via Optical Decoding, ACM CCS 2008", "first page", Published;
    /// Restricted blanks no longer stop a determined copier.
    PRINTED_KEYS = "printed-keys", "B. Burgess, E. Wustrow, J. A. Halderman", Some(2015), "Replication Prohibited: Attacking Restricted Keyways with 3D-Printing, USENIX WOOT 2015", "abstract", Published;
    /// How to choose a locksmith.
    CHOOSING_A_LOCKSMITH = "choosing-a-locksmith", "US Federal Trade Commission", Some(2008), "The Keys to Hiring a Reputable Locksmith", "alert alt032", Published;
    /// Two thirds of those asked had not changed the locks on moving in.
    MOVING_IN_SURVEY = "moving-in-survey", "Neighbourhood and Home Watch Network", Some(2015), "Survey of about 6,000 respondents on changing locks when moving in", "", Secondary;
    /// Keys out of sight, no spare inside the letterbox.
    KEYS_OUT_OF_SIGHT = "keys-out-of-sight", "City of London Police", None, "Burglary prevention advice", "keys and letterboxes", Published;
    /// How burglars came in, England and Wales.
    NATURE_OF_BURGLARY = "nature-of-burglary", "Office for National Statistics", Some(2020), "Nature of crime: burglary, year ending March 2020", "method of entry", Secondary;
    /// Entry with and without force, United States.
    CRIME_IN_THE_UNITED_STATES = "crime-in-the-united-states", "Federal Bureau of Investigation", Some(2014), "Crime in the United States 2014, burglary", "tables 19 and 23", Published;
    /// Words asking not to copy are not effective security.
    DO_NOT_DUPLICATE = "do-not-duplicate", "Associated Locksmiths of America", None, "Technical standard on keys marked against duplication", "", Secondary;
    /// A landlord's duty to rekey between tenants, one region's.
    TEXAS_REKEYING = "texas-rekeying", "State of Texas", None, "Texas Property Code", "section 92.156 (a)", Published;
    /// Pixel densities of planned video surveillance.
    EN_62676_4 = "en-62676-4", "CENELEC", Some(2015), "EN 62676-4, Video surveillance systems: Application guidelines", "pixel densities at the target", Secondary;
    /// What the trade does when someone may hold a copy.
    TRADE_REKEYING = "trade-rekeying", "", None, "Rekeying or changing a cylinder when a key is unaccounted for", "", CommonPractice;
    /// What a code on a key is for.
    TRADE_CODES = "trade-codes", "", None, "Cutting keys from the code or the best original, never from a copy of a copy", "", CommonPractice;
    /// Which lock is served in which way.
    TRADE_LOCK_KINDS = "trade-lock-kinds", "", None, "Which locks are rekeyed, which get a new cylinder, which are replaced", "", CommonPractice;
    /// Everyday care of keys.
    TRADE_KEY_CARE = "trade-key-care", "", None, "Carrying keys covered and handing over no more keys than needed", "", CommonPractice;
    /// Calling police, landlord and insurer after a loss.
    LOSS_PRACTICE = "loss-practice", "", None, "First steps after a lost or stolen key", "", CommonPractice;
    /// What those who live in a let home are told.
    TENANCY_PRACTICE = "tenancy-practice", "", None, "Telling those who live in a let home before its lock is changed, and handing them keys the same day", "", CommonPractice;
    /// Planning with a local service before changing a lock.
    SAFETY_PLANNING = "safety-planning", "", None, "Planning with a local domestic-abuse service before changing anything a person may notice", "", CommonPractice;
    /// What each exposure makes of the secret.
    LEVEL_JUDGEMENT = "level-judgement", "", None, "Which exposure puts a secret in doubt and which gives it away", "", OurAssumption;
    /// Who can tell which door a key opens.
    DOOR_JUDGEMENT = "door-judgement", "", None, "Who of those that had or saw a key can tell its door", "", OurAssumption;
    /// How urgent an action is for a given exposure.
    URGENCY_JUDGEMENT = "urgency-judgement", "", None, "How soon each exposure calls for an action", "", OurAssumption;
    /// Spacing, steps and adjacent cut rule of the ten-depth and six-depth families.
    TRADE_KEY_DIMENSIONS = "trade-key-dimensions", "", None, "Depth steps, spacing and maximum adjacent cut of common pin tumbler keys", "", CommonPractice;
    /// Spacing, steps and adjacent cut rule of the European profile families.
    EUROPEAN_KEY_DIMENSIONS = "european-key-dimensions", "", None, "Typical dimensions of European profile keys, chosen between those of several systems", "", OurAssumption;
    /// From shoulder to tip.
    BLADE_LENGTHS = "blade-lengths", "", None, "Usual blade lengths of each family of keys", "", OurAssumption;
    /// How sharp everyday pictures are.
    PICTURE_SHARPNESS = "picture-sharpness", "", None, "Blur and contrast of everyday pictures", "", OurAssumption;
    /// Light, and the spot that a perfect lens makes of a point.
    DIFFRACTION = "diffraction", "", None, "Green light, and the Gaussian nearest to the spot of a round aperture", "", OurAssumption;
    /// Why the estimate is raised for steep flanks.
    FLANK_SIMULATION = "flank-simulation", "", None, "Simulated pictures of keys with straight and with steep flanks, weighed against every key of a family", "", OurAssumption;
    /// How well an edge can be marked.
    MARKING_SKILL = "marking-skill", "", None, "How well a person, with or without software, marks an edge in a picture", "", OurAssumption;
    /// How well a key's size and pose can be told from a picture.
    POSE_AND_SCALE = "pose-and-scale", "", None, "Error of scale and tilt when a key is measured in a picture", "", OurAssumption;
    /// Size of the characters on a key.
    STAMPED_CHARACTERS = "stamped-characters", "", None, "Height of the characters stamped on a key", "", CommonPractice;
    /// How many pixels a character needs.
    DIGIT_LEGIBILITY = "digit-legibility", "", None, "How many dots up a digit it takes to read it", "", OurAssumption;
    /// Line pairs across a target for each task.
    JOHNSON = "johnson", "J. Johnson", Some(1958), "Analysis of Image Forming Systems, Image Intensifier Symposium (AD220160)", "6.4 line pairs to identify", Secondary;
    /// How well calipers measure a cut.
    CALIPER_READING = "caliper-reading", "", None, "Error of a cut measured with calipers", "", OurAssumption;
    /// What a key machine adds.
    KEY_MACHINE_ERROR = "key-machine-error", "", None, "One to two thousandths of an inch from a key machine", "", FromMemory;
    /// Traced copies come out deeper.
    COPY_DRIFT = "copy-drift", "", None, "Traced copies tend to come out slightly deeper; the amount is ours", "", OurAssumption;
    /// How much a cut may be off.
    LOCK_SLACK = "lock-slack", "", None, "Slack of key and pin together, about 0.005 in, as locksmiths give it", "", Secondary;
    /// A guess at what someone would carry and try.
    POCKETFUL = "pocketful", "", None, "A pocketful of trial keys", "", OurAssumption;
    /// How a locksmith reads a key in the hand.
    GAUGE_READING = "gauge-reading", "", None, "Reading a key with a stepped gauge, in seconds", "", CommonPractice;
    /// Cameras and distances of the everyday scenes.
    EVERYDAY_SCENES = "everyday-scenes", "", None, "Cameras, light and distances of everyday scenes", "", OurAssumption;
    /// How edges and their blur are measured in a picture.
    PICTURE_MEASUREMENT = "picture-measurement", "", None, "Blurred steps fitted across the edges of a marked strip, tried on simulated and on real pictures", "", OurAssumption;
    /// The operator by which noise is told from structure.
    NOISE_ESTIMATION = "noise-estimation", "J. Immerkær", Some(1996), "Fast Noise Variance Estimation, Computer Vision and Image Understanding 64(2):300-302", "the operator; its use on block means is ours", FromMemory;
    /// From which number of keys on a picture counts as readable.
    PICTURE_BANDS = "picture-bands", "", None, "When a picture of a key counts as readable, partly readable or not", "", OurAssumption;
    /// Where a picture's file keeps place, time and device.
    EXIF_TAGS = "exif-tags", "CIPA", None, "DC-008, Exchangeable image file format for digital still cameras: Exif 2.32", "tags, from public tables", Secondary;
    /// The notes of the press and of picture programs.
    PICTURE_NOTES = "picture-notes", "", None, "Notes of the press (IPTC) and of picture programs (XMP) in picture files", "", FromMemory;
    /// What can share a key.
    TRADE_KEYED_ALIKE = "trade-keyed-alike", "", None, "Only locks of one kind and one keyway can be keyed alike; others need a new cylinder", "", CommonPractice;
    /// What belongs to a locksmith's visit.
    TRADE_VISIT = "trade-visit", "", None, "What a locksmith asks before, and what is tried after the work", "", CommonPractice;
    /// What a new lock should resist.
    TRADE_GRADES = "trade-grades", "", None, "A new cylinder should resist being snapped, drilled and picked, to the grade an insurer names", "", CommonPractice;
    /// Keys in the box of a new lock.
    KEYS_WITH_A_LOCK = "keys-with-a-lock", "", None, "Three to five keys come with a new cylinder, two with a padlock", "", FromMemory;
    /// Who should share a key.
    GROUPING_JUDGEMENT = "grouping-judgement", "", None, "Doors that exactly the same people need may share a key, others should not", "", OurAssumption;
}
