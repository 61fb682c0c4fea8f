//! The first program; see [`self_check_app::check`].

fn main() {
    self_check_app::check::start();
}
