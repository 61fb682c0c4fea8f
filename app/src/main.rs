//! The page. It shows what `self_check_core` computes and keeps nothing.

mod app;
mod browser;
mod copy;
mod drawing;
mod example;
mod pages;
mod route;
mod session;
mod ui;

fn main() {
    browser::report_panics();
    let Some(root) = browser::app_root() else {
        return;
    };
    browser::keep_to_addresses();
    let handle = yew::Renderer::<app::App>::with_root(root).render();
    browser::forget_when_hidden(|| handle.destroy());
    browser::mark_ready();
}
