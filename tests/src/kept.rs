//! What a browser keeps for the site, by any of its ways.

/// A script that gives everything kept as one text: empty where nothing is.
pub const KEPT: &str = r"
    const databases = indexedDB.databases ? await indexedDB.databases() : [];
    const caches_ = 'caches' in window ? await caches.keys() : [];
    const workers = 'serviceWorker' in navigator ? await navigator.serviceWorker.getRegistrations() : [];
    return [document.cookie, Object.entries(localStorage), Object.entries(sessionStorage),
        databases.map(d => d.name), caches_, workers.map(w => w.scope), window.name].flat(2).join('');
";
