//! The least that a page made with yew can be: what `cargo xtask bench --page` measures the site against.

use yew::prelude::*;

#[component]
fn Hello() -> Html {
    html! { <p id="hello">{ "Hello" }</p> }
}

fn main() {
    yew::Renderer::<Hello>::new().render();
}
