//! What the browser loads, on the page and in the worker alike.

fn main() {
    app::start();
}
