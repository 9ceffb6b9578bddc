/// How two codes of one length are like each other, the nearest likeness first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Likeness {
    /// They are the same.
    Equal,
    /// One is the other backwards.
    Reversed,
    /// One is the other on a card that lies upside down.
    Turned,
    /// They have the same symbols in another order.
    Permuted,
    /// They differ on one wheel only.
    OneWheel,
}

impl Likeness {
    /// What two codes with it do: "differ on one wheel only".
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Equal => "are the same",
            Self::Reversed => "are each other backwards",
            Self::Turned => "are each other upside down",
            Self::Permuted => "have the same symbols in another order",
            Self::OneWheel => "differ on one wheel only",
        }
    }
}

/// How two codes, as they are set on their locks, are like each other. Codes of unlike length are not; nor are two
/// different ones of one symbol, of which each is one wheel from every other.
#[must_use]
pub fn likeness(a: &str, b: &str) -> Option<Likeness> {
    if a == b {
        return Some(Likeness::Equal);
    }
    let (x, y): (Vec<char>, Vec<char>) = (a.chars().collect(), b.chars().collect());
    if x.len() != y.len() || x.len() < 2 {
        return None;
    }
    if x.iter().eq(y.iter().rev()) {
        Some(Likeness::Reversed)
    } else if reads_turned(a).is_some_and(|turned| turned == b) {
        Some(Likeness::Turned)
    } else if sorted(&x) == sorted(&y) {
        Some(Likeness::Permuted)
    } else if x.iter().zip(&y).filter(|(a, b)| a != b).count() == 1 {
        Some(Likeness::OneWheel)
    } else {
        None
    }
}

/// What digits read as upside down, where all of them can be turned: 0, 1 and 8 stay, 6 and 9 change places.
#[must_use]
pub fn reads_turned(code: &str) -> Option<String> {
    code.chars()
        .rev()
        .map(|digit| match digit {
            '0' | '1' | '8' => Some(digit),
            '6' => Some('9'),
            '9' => Some('6'),
            _ => None,
        })
        .collect()
}

fn sorted(code: &[char]) -> Vec<char> {
    let mut code = code.to_vec();
    code.sort_unstable();
    code
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_nearest_likeness_is_told() {
        let pairs = [
            ("582", "582", Some(Likeness::Equal)),
            ("582", "285", Some(Likeness::Reversed)),
            ("190", "061", Some(Likeness::Turned)),
            ("582", "825", Some(Likeness::Permuted)),
            ("582", "589", Some(Likeness::OneWheel)),
            ("582", "597", None),
            ("582", "5820", None),
            ("5", "6", None),
        ];
        for (a, b, how) in pairs {
            assert_eq!(likeness(a, b), how, "{a} {b}");
            assert_eq!(likeness(b, a), how, "{b} {a}");
        }
        assert_eq!(reads_turned("6180"), Some("0819".into()));
        assert_eq!(reads_turned("417"), None);
    }
}
