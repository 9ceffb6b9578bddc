//! Distributions: log-normal times, and Student's t, which tells what a few plays leave open.

use rand::RngExt as _;
use serde::Serialize;

use crate::mechanics::Rng;

/// The quantile of the standard normal distribution at 0.9: one of ten is beyond it.
pub const Z90: f64 = 1.281_551_565_544_600_4;

/// A time whose logarithm is normal.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct LogNormal {
    /// Mean of the logarithm.
    pub mu: f64,
    /// Standard deviation of the logarithm; 0 is a fixed time.
    pub sigma: f64,
}

impl LogNormal {
    /// From the median and the 90 % point; a 90 % point below the median is taken as the median.
    #[must_use]
    pub fn of(median: f64, slow: f64) -> Self {
        let median = median.max(f64::MIN_POSITIVE);
        Self { mu: median.ln(), sigma: (slow / median).max(1.0).ln() / Z90 }
    }

    /// A time that is so many times as long.
    #[must_use]
    pub fn longer(self, times: f64) -> Self {
        Self { mu: self.mu + times.ln(), ..self }
    }

    /// The median.
    #[must_use]
    pub fn median(self) -> f64 {
        self.mu.exp()
    }

    /// The mean: exp(mu + sigma² / 2).
    #[must_use]
    pub fn mean(self) -> f64 {
        (self.mu + self.sigma * self.sigma / 2.0).exp()
    }

    /// The standard deviation: mean · √(exp(sigma²) − 1).
    #[must_use]
    pub fn sd(self) -> f64 {
        self.mean() * (self.sigma * self.sigma).exp_m1().sqrt()
    }

    /// The likeliest time: exp(mu − sigma²).
    #[must_use]
    pub fn mode(self) -> f64 {
        (self.mu - self.sigma * self.sigma).exp()
    }

    /// The time within which a share `p` of all are done.
    #[must_use]
    pub fn quantile(self, p: f64) -> f64 {
        self.at(normal_quantile(p))
    }

    /// The time that stands `z` standard deviations above the median.
    #[must_use]
    pub fn at(self, z: f64) -> f64 {
        (self.mu + self.sigma * z).exp()
    }
}

/// A draw from 0 up to 1.
pub(super) fn share(rng: &mut Rng) -> f64 {
    rng.random::<f64>()
}

/// A draw from the standard normal distribution.
pub(super) fn normal(rng: &mut Rng) -> f64 {
    normal_quantile(rng.random::<f64>().max(f64::EPSILON / 4.0))
}

/// The quantile of the standard normal distribution; −∞ and ∞ at and beyond 0 and 1.
///
/// Wichura 1988, "Algorithm AS 241: the percentage points of the normal distribution", PPND16: about 16 digits.
#[must_use]
#[expect(clippy::excessive_precision, clippy::unreadable_literal, reason = "the coefficients as they were published")]
pub fn normal_quantile(p: f64) -> f64 {
    const A: [f64; 8] = [
        3.3871328727963666080e0,
        1.3314166789178437745e2,
        1.9715909503065514427e3,
        1.3731693765509461125e4,
        4.5921953931549871457e4,
        6.7265770927008700853e4,
        3.3430575583588128105e4,
        2.5090809287301226727e3,
    ];
    const B: [f64; 8] = [
        1.0,
        4.2313330701600911252e1,
        6.8718700749205790830e2,
        5.3941960214247511077e3,
        2.1213794301586595867e4,
        3.9307895800092710610e4,
        2.8729085735721942674e4,
        5.2264952788528545610e3,
    ];
    const C: [f64; 8] = [
        1.42343711074968357734e0,
        4.63033784615654529590e0,
        5.76949722146069140550e0,
        3.64784832476320460504e0,
        1.27045825245236838258e0,
        2.41780725177450611770e-1,
        2.27238449892691845833e-2,
        7.74545014278341407640e-4,
    ];
    const D: [f64; 8] = [
        1.0,
        2.05319162663775882187e0,
        1.67638483018380384940e0,
        6.89767334985100004550e-1,
        1.48103976427480074590e-1,
        1.51986665636164571966e-2,
        5.47593808499534494600e-4,
        1.05075007164441684324e-9,
    ];
    const E: [f64; 8] = [
        6.65790464350110377720e0,
        5.46378491116411436990e0,
        1.78482653991729133580e0,
        2.96560571828504891230e-1,
        2.65321895265761230930e-2,
        1.24266094738807843860e-3,
        2.71155556874348757815e-5,
        2.01033439929228813265e-7,
    ];
    const F: [f64; 8] = [
        1.0,
        5.99832206555887937690e-1,
        1.36929880922735805310e-1,
        1.48753612908506148525e-2,
        7.86869131145613259100e-4,
        1.84631831751005468180e-5,
        1.42151175831644588870e-7,
        2.04426310338993978564e-15,
    ];
    let ratio = |top: &[f64; 8], bottom: &[f64; 8], x: f64| {
        let sum = |list: &[f64; 8]| list.iter().rev().fold(0.0, |sum, c| sum * x + c);
        sum(top) / sum(bottom)
    };
    if p.is_nan() || p <= 0.0 {
        return f64::NEG_INFINITY;
    }
    if p >= 1.0 {
        return f64::INFINITY;
    }
    let q = p - 0.5;
    if q.abs() <= 0.425 {
        return q * ratio(&A, &B, 0.180_625 - q * q);
    }
    let r = (-p.min(1.0 - p).ln()).sqrt();
    let far = if r <= 5.0 { ratio(&C, &D, r - 1.6) } else { ratio(&E, &F, r - 5.0) };
    far.copysign(q)
}

/// The quantile of Student's t with `df` degrees of freedom: bisection on the distribution function, to about 12
/// digits.
#[must_use]
pub fn t_quantile(p: f64, df: f64) -> f64 {
    if p <= 0.5 {
        return if p >= 0.5 { 0.0 } else { -t_quantile(1.0 - p, df) };
    }
    if p >= 1.0 {
        return f64::INFINITY;
    }
    let (mut low, mut high) = (0.0_f64, 1.0_f64);
    while t_upper(high, df) > 1.0 - p && high < 1e12 {
        high *= 2.0;
    }
    // Halving an interval of 1e12 to 1e-13 of its end takes fewer steps than this.
    for _ in 0..120 {
        let middle = f64::midpoint(low, high);
        if t_upper(middle, df) > 1.0 - p {
            low = middle;
        } else {
            high = middle;
        }
        if high - low <= 1e-13 * high {
            break;
        }
    }
    f64::midpoint(low, high)
}

/// The share of Student's t above `t`, which is not negative: half the regularised incomplete beta function at
/// df / (df + t²).
fn t_upper(t: f64, df: f64) -> f64 {
    0.5 * incomplete_beta(df / (df + t * t), df / 2.0, 0.5)
}

/// The regularised incomplete beta function, by its continued fraction (NIST Digital Library of Mathematical Functions,
/// 8.17.22), taken from its front by the modified Lentz method.
fn incomplete_beta(x: f64, a: f64, b: f64) -> f64 {
    if x <= 0.0 {
        return 0.0;
    }
    if x >= 1.0 {
        return 1.0;
    }
    // It converges quickly on this side only; the other is its mirror (8.17.4).
    if x > (a + 1.0) / (a + b + 2.0) {
        return 1.0 - incomplete_beta(1.0 - x, b, a);
    }
    const TINY: f64 = 1e-300;
    let kept = |value: f64| if value.abs() < TINY { TINY } else { value };
    let (mut c, mut d, mut fraction) = (1.0, 0.0, 1.0);
    for step in 1..600_u16 {
        let m = f64::from(step / 2);
        let term = if step % 2 == 0 {
            m * (b - m) * x / ((a + 2.0 * m - 1.0) * (a + 2.0 * m))
        } else {
            -(a + m) * (a + b + m) * x / ((a + 2.0 * m) * (a + 2.0 * m + 1.0))
        };
        d = 1.0 / kept(1.0 + term * d);
        c = kept(1.0 + term / c);
        fraction *= c * d;
        if (c * d - 1.0).abs() < 1e-15 {
            break;
        }
    }
    let front = a * x.ln() + b * (-x).ln_1p() + ln_gamma(a + b) - ln_gamma(a) - ln_gamma(b);
    front.exp() / (a * fraction)
}

/// The logarithm of the gamma function of a positive number: Stirling's series (NIST Digital Library of Mathematical
/// Functions, 5.11.1) from 12 on, and below by the recurrence.
fn ln_gamma(x: f64) -> f64 {
    const FROM: f64 = 12.0;
    const LN_TAU: f64 = 1.837_877_066_409_345_5;
    let (mut x, mut product) = (x, 1.0);
    while x < FROM {
        product *= x;
        x += 1.0;
    }
    let y = 1.0 / (x * x);
    let series = (1.0 / 12.0 - y * (1.0 / 360.0 - y * (1.0 / 1260.0 - y * (1.0 / 1680.0 - y / 1188.0)))) / x;
    (x - 0.5) * x.ln() - x + LN_TAU / 2.0 + series - product.ln()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn known_points() {
        assert!((normal_quantile(0.9) - Z90).abs() < 1e-15 && normal_quantile(0.5).abs() < 1e-16);
        // With one degree of freedom t is Cauchy's distribution: tan(π(p − ½)).
        assert!((t_quantile(0.9, 1.0) - (std::f64::consts::PI * 0.4).tan()).abs() < 1e-10);
        // With two it is (2p − 1) √(2 / (4p(1 − p))).
        assert!((t_quantile(0.95, 2.0) - 0.9 * (2.0_f64 / 0.19).sqrt()).abs() < 1e-10);
        assert!((ln_gamma(0.5) - std::f64::consts::PI.sqrt().ln()).abs() < 1e-13);
        assert!((ln_gamma(5.0) - 24.0_f64.ln()).abs() < 1e-13);
    }
}
