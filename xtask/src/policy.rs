//! What the page may do: the content security policy and the headers that go with it.

/// Everything comes from the page's own origin; nothing is framed, posted or evaluated. `'wasm-unsafe-eval'` lets
/// WebAssembly be compiled and nothing else. The one Trusted Types policy is made by `boot.js` and gives the address of
/// the worker, whatever it is asked for.
pub const CONTENT_SECURITY: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; \
    img-src 'self' blob: data:; connect-src 'self'; manifest-src 'self'; worker-src 'self'; base-uri 'none'; \
    form-action 'none'; require-trusted-types-for 'script'; trusted-types self-check";

/// The same for the page that has everything inside: one script and one style, known by their sums, and no request.
pub fn for_one_file(script: &str, style: &str) -> String {
    format!(
        "default-src 'none'; script-src '{script}' 'wasm-unsafe-eval'; style-src '{style}'; img-src data:; \
         connect-src 'none'; base-uri 'none'; form-action 'none'; require-trusted-types-for 'script'; \
         trusted-types 'none'"
    )
}

/// The element that gives a page its policy, for whoever serves it without headers.
pub fn meta(policy: &str) -> String {
    format!("<meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">")
}

/// Headers for all files. What a `<meta>` cannot say (who may frame the page) is said here only.
pub fn headers() -> [(&'static str, String); 8] {
    [
        (
            "Content-Security-Policy",
            format!("{CONTENT_SECURITY}; frame-ancestors 'none'"),
        ),
        ("Referrer-Policy", "no-referrer".into()),
        ("X-Content-Type-Options", "nosniff".into()),
        ("X-Frame-Options", "DENY".into()),
        ("Cross-Origin-Opener-Policy", "same-origin".into()),
        ("Cross-Origin-Embedder-Policy", "require-corp".into()),
        ("Cross-Origin-Resource-Policy", "same-origin".into()),
        (
            "Permissions-Policy",
            "camera=(), microphone=(), geolocation=(), usb=(), payment=()".into(),
        ),
    ]
}

/// How long a browser may keep a file whose name carries the sum of what is in it.
pub const KEEP: &str = "public, max-age=31536000, immutable";

/// For all others: kept, and asked for anew at each visit.
pub const ASK_ANEW: &str = "no-cache";
