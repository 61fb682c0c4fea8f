//! What the page may do: the content security policy and the headers that go with it.

/// Everything comes from the page's own origin; nothing is framed, posted or evaluated, and no script may create a
/// Trusted Types policy. `'wasm-unsafe-eval'` lets WebAssembly be compiled and nothing else.
pub const CONTENT_SECURITY: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; \
    img-src 'self' blob: data:; connect-src 'self'; base-uri 'none'; form-action 'none'; \
    require-trusted-types-for 'script'; trusted-types 'none'";

/// Headers for whoever serves the page. What a `<meta>` cannot say (who may frame the page) is said here only.
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
        ("Cross-Origin-Resource-Policy", "same-origin".into()),
        (
            "Permissions-Policy",
            "camera=(), microphone=(), geolocation=(), usb=(), payment=()".into(),
        ),
        // Names carry their content, but the page itself does not; a local server has no need of a cache.
        ("Cache-Control", "no-cache".into()),
    ]
}
