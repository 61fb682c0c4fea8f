//! Regions, and what is known of their rules.

use self_check_core::regions::{Licensing, Region, Scope, TenancyRule};

use super::numbers::grouped;

/// The name of `region`.
pub fn region(region: Region) -> &'static str {
    match region {
        Region::UnitedKingdom => "United Kingdom",
        Region::Ireland => "Ireland",
        Region::Quebec => "Quebec",
        Region::Alberta => "Alberta",
        Region::BritishColumbia => "British Columbia",
        Region::Queensland => "Queensland",
        Region::NewSouthWales => "New South Wales",
        Region::WesternAustralia => "Western Australia",
        Region::NewZealand => "New Zealand",
        Region::Alabama => "Alabama",
        Region::California => "California",
        Region::Connecticut => "Connecticut",
        Region::Florida => "Florida",
        Region::Illinois => "Illinois",
        Region::Louisiana => "Louisiana",
        Region::Maryland => "Maryland",
        Region::Nebraska => "Nebraska",
        Region::Nevada => "Nevada",
        Region::NewJersey => "New Jersey",
        Region::NewYorkCity => "New York City",
        Region::NorthCarolina => "North Carolina",
        Region::Oklahoma => "Oklahoma",
        Region::Oregon => "Oregon",
        Region::Seattle => "Seattle",
        Region::Tennessee => "Tennessee",
        Region::Texas => "Texas",
        Region::Virginia => "Virginia",
        Region::Elsewhere => "Anywhere else",
    }
}

/// When the notes were last compared with their sources: year and month, from 1.
pub fn regions_compared((year, month): (u16, u8)) -> String {
    const MONTHS: [&str; 12] = [
        "January",
        "February",
        "March",
        "April",
        "May",
        "June",
        "July",
        "August",
        "September",
        "October",
        "November",
        "December",
    ];
    let name = usize::from(month)
        .checked_sub(1)
        .and_then(|place| MONTHS.get(place))
        .unwrap_or(&"");
    format!(
        "All these notes were last compared with the sources named beside them in {name} {year}. A source may be older, and the law may have changed since."
    )
}

/// Whether locksmiths need a licence there, and what to do with that.
pub fn licensing(licensing: Licensing) -> &'static str {
    match licensing {
        Licensing::Licensed => {
            "Locksmiths need a licence. Look for the name in the official register."
        }
        Licensing::LicensedLocally => {
            "The city or county gives licences. Ask there, and look in its register."
        }
        Licensing::NotLicensed => {
            "Locksmiths need no licence. Look for a trade association that checks its members."
        }
        Licensing::Unclear => "What we found does not settle it. Ask a consumer advice service.",
    }
}

/// What the law says there on the locks of rented homes.
pub fn tenancy_rule(rule: TenancyRule) -> &'static str {
    match rule {
        TenancyRule::RekeyedBetweenTenants => {
            "The landlord must have the lock set to a new key between tenants, and pay for it. There are limits: read the law or ask a housing advice service."
        }
        TenancyRule::RekeyedWheneverTenantAsks => {
            "A tenant may have the lock set to a new key at any time, and pays for it. Where the landlord wants a new master key (one that opens many doors), the landlord pays. Doors inside the home do not count."
        }
        TenancyRule::ChangedOnRequestForSafety => {
            "A tenant may ask for a new lock after violence at home. Ask a support service first."
        }
        TenancyRule::KeysAreLogged => "The landlord must keep a record of keys.",
    }
}

/// Where in the region a rule on rented homes holds; nothing to say where it holds everywhere.
pub fn tenancy_scope(scope: Scope) -> Option<String> {
    match scope {
        Scope::Everywhere => None,
        Scope::CountiesOver { people, counties } => {
            let people = grouped(people.into());
            Some(format!(
                "Only in {counties}: the law means counties of more than {people} people."
            ))
        }
    }
}
