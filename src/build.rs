//! Tells cargo to build again when a carried file comes or goes.

fn main() {
    println!("cargo:rerun-if-changed=themes");
    println!("cargo:rerun-if-changed=assets/fonts");
    println!("cargo:rerun-if-changed=assets/kits");
    println!("cargo:rerun-if-changed=assets/print");
}
