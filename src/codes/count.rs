/// Whether a symbol may stand twice in a code, and whether its place counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Repeats {
    /// Every wheel shows any symbol.
    Any,
    /// All symbols differ, and their order counts.
    Never,
    /// All symbols differ, and their order does not count: buttons that stay pressed.
    Unordered,
}

/// How many distinct orders some symbols have: the multinomial coefficient n! / (k₁! k₂! …), where the kᵢ say how
/// often each symbol stands. None beyond 64 bits.
#[must_use]
pub fn orderings<T: Ord>(symbols: &[T]) -> Option<u64> {
    let mut sorted: Vec<&T> = symbols.iter().collect();
    sorted.sort_unstable();
    // Group by group: the group's places are chosen among all places so far.
    let (mut all, mut placed) = (1_u64, 0_u64);
    for group in sorted.chunk_by(|a, b| a == b) {
        placed = placed.checked_add(group.len() as u64)?;
        all = all.checked_mul(choose(placed, group.len() as u64)?)?;
    }
    Some(all)
}

/// How many codes `wheels` wheels with `symbols` symbols each have: sᵏ, s!/(s−k)! or the binomial coefficient. None
/// beyond 64 bits.
#[must_use]
pub fn codes(wheels: u32, symbols: u64, repeats: Repeats) -> Option<u64> {
    match repeats {
        Repeats::Any => symbols.checked_pow(wheels),
        Repeats::Never => {
            (0..u64::from(wheels)).try_fold(1_u64, |all, used| all.checked_mul(symbols.saturating_sub(used)))
        }
        Repeats::Unordered => choose(symbols, u64::from(wheels)),
    }
}

/// The mean number of tries until one of `codes` equally likely codes is hit, the hit included, when no code is
/// tried twice: (n + 1) / 2.
#[must_use]
pub fn mean_tries(codes: u64) -> f64 {
    (codes as f64 + 1.0) / 2.0
}

/// The chance that one of `codes` equally likely codes is hit within so many different tries.
#[must_use]
pub fn chance_within(codes: u64, tries: u64) -> f64 {
    if codes == 0 { 0.0 } else { tries.min(codes) as f64 / codes as f64 }
}

/// The binomial coefficient; each step divides without a rest.
fn choose(n: u64, k: u64) -> Option<u64> {
    if k > n {
        return Some(0);
    }
    let mut all = 1_u128;
    for step in 1..=u128::from(k.min(n - k)) {
        all = all.checked_mul(u128::from(n) - step + 1)? / step;
    }
    u64::try_from(all).ok()
}
