//! Sources about one region's law or licensing.

use super::{Source, SourceKind};

sources! {
    /// Which states license locksmiths.
    STATE_LICENSING = "state-licensing", "Associated Locksmiths of America", Some(2025), "Advocacy page on licensing states", "as of January 2025", Published;
    /// Changes of state licensing since 2021.
    STATE_LICENSING_CHANGES = "state-licensing-changes", "", Some(2025), "Overviews of changes to state licensing of locksmiths", "", Secondary;
    /// United Kingdom: no state licensing.
    UK_WRITTEN_ANSWER = "uk-written-answer", "Home Office", Some(2026), "Written answer to question 115116", "19 March 2026", Published;
    /// Quebec.
    QUEBEC_PRIVATE_SECURITY = "quebec-private-security", "Quebec", Some(2024), "Private Security Act, chapter S-3.5", "section 1(3), text of 1 May 2024", Published;
    /// Alberta.
    ALBERTA_SECURITY_SERVICES = "alberta-security-services", "Alberta", Some(2010), "Security Services and Investigators Act", "", Secondary;
    /// British Columbia.
    BC_LICENSING = "bc-licensing", "Better Business Bureau, Mainland BC", None, "Advice on choosing a locksmith", "", Secondary;
    /// Ireland.
    IRELAND_PSA_55 = "ireland-psa-55", "Private Security Authority", Some(2016), "PSA 55:2016; S.I. 343 and 344 of 2016", "as told in the answer to parliamentary question 243 of 18 June 2019", Secondary;
    /// Queensland.
    QUEENSLAND_SECURITY_PROVIDERS = "queensland-security-providers", "Queensland", Some(1993), "Security Providers Act 1993", "as told by a page of the state and a trade association", Secondary;
    /// New South Wales.
    NSW_SECURITY_INDUSTRY = "nsw-security-industry", "New South Wales", Some(1997), "Security Industry Act 1997", "section 3, text of 2010; the class from secondary pages", Secondary;
    /// Western Australia.
    WA_SECURITY_ACTIVITIES = "wa-security-activities", "Western Australia", Some(1996), "Security and Related Activities (Control) Act 1996 and Regulations 1997", "sections 14 and 18; regulations 6 and 17", Published;
    /// New Zealand.
    NZ_SECURITY_PERSONNEL = "nz-security-personnel", "New Zealand", Some(2010), "Private Security Personnel and Private Investigators Act 2010", "as told by a trade association", Secondary;
    /// Illinois, rekeying between tenants.
    ILLINOIS_REKEYING = "illinois-rekeying", "State of Illinois", Some(2012), "765 ILCS 705/15 (P.A. 97-470)", "text of House Bill 1233; its limits from secondary pages", Secondary;
    /// Illinois, lock change for safety.
    ILLINOIS_SAFE_HOMES = "illinois-safe-homes", "State of Illinois", None, "765 ILCS 750/20", "", Published;
    /// Oregon, lock change for safety.
    OREGON_LOCK_CHANGE = "oregon-lock-change", "State of Oregon", None, "ORS 90.459", "", Secondary;
    /// Texas, rekeying when a tenant asks.
    TEXAS_REKEYING_ON_REQUEST = "texas-rekeying-on-request", "State of Texas", None, "Texas Property Code", "section 92.156 (b) to (e)", Published;
    /// Florida, key log.
    FLORIDA_KEY_LOG = "florida-key-log", "State of Florida", Some(2022), "Miya's Law", "27 June 2022", Secondary;
    /// Seattle.
    SEATTLE_HOUSING = "seattle-housing", "City of Seattle", None, "Housing code, as quoted in 2011; section not confirmed", "", Secondary;
}
