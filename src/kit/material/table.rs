use super::Material;

const FIRE: &str = "";

/// Every material that a mechanic or a kit may name.
pub const MATERIALS: &[Material] = &[];
const _: &str = FIRE;
