//! Speed, measured: `cargo bench`.

fn main() {}
