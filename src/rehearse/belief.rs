use serde::Serialize;

use super::chance::t_quantile;

/// How many plays an estimate weighs as much as.
///
/// Three groups are the usual advice before anything goes public (Sear, a do-it-yourself guide to escape games), and
/// what they mostly find is that the author's guess was too low. After those three, plays and guess count alike; after
/// ten the guess hardly counts.
pub const PRIOR_PLAYS: f64 = 3.0;

/// What is known of the logarithm of a puzzle's minutes: it is normal, with a Normal-Inverse-Gamma distribution over its
/// mean and variance (K. P. Murphy, "Conjugate Bayesian analysis of the Gaussian distribution", 2007).
///
/// The variance is inverse gamma with shape `a` and scale `b`; given the variance, the mean is normal around `m` with
/// the variance divided by `k`.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Belief {
    /// Where the mean of the logarithm is expected.
    pub m: f64,
    /// How many plays that is worth.
    pub k: f64,
    /// Shape: half the number of plays that the variance is worth.
    pub a: f64,
    /// Scale.
    pub b: f64,
}

/// The next play, as far as it can be told: Student's t for the logarithm of its minutes.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Predictive {
    /// Degrees of freedom.
    pub df: f64,
    /// Location, in logarithms of minutes.
    pub loc: f64,
    /// Scale, likewise.
    pub scale: f64,
}

impl Belief {
    /// An estimate of median and 90 % point, worth [`PRIOR_PLAYS`] plays: with no play, those are just the points that
    /// are predicted.
    #[must_use]
    pub fn of(median: f64, slow: f64) -> Self {
        let (k, a) = (PRIOR_PLAYS, PRIOR_PLAYS / 2.0);
        let scale = (slow / median).max(1.0).ln() / t_quantile(0.9, 2.0 * a);
        Self { m: median.max(f64::MIN_POSITIVE).ln(), k, a, b: scale * scale * a / (1.0 + 1.0 / k) }
    }

    /// What is known after these plays, in minutes; those that are no time are passed over.
    #[must_use]
    pub fn after(self, minutes: &[f64]) -> Self {
        let logs: Vec<f64> = minutes.iter().filter(|m| m.is_finite() && **m > 0.0).map(|m| m.ln()).collect();
        if logs.is_empty() {
            return self;
        }
        let n = logs.len() as f64;
        let mean = logs.iter().sum::<f64>() / n;
        let spread: f64 = logs.iter().map(|y| (y - mean) * (y - mean)).sum();
        let k = self.k + n;
        Self {
            m: (self.k * self.m + n * mean) / k,
            k,
            a: self.a + n / 2.0,
            b: self.b + spread / 2.0 + self.k * n * (mean - self.m) * (mean - self.m) / (2.0 * k),
        }
    }

    /// What is known after a play of which only a sum of many parts was seen: it was off by `off` where the variance
    /// `variance` was expected, and the logarithm of this part's minutes has the covariance `shared` with it.
    ///
    /// What this part took is then known by its mean and its variance, as joint normal quantities are conditioned on one
    /// of them (C. M. Bishop, "Pattern Recognition and Machine Learning", 2006, 2.81 and 2.82, the variances taken as
    /// known); the play counts by the share of the variance that the sum explains. For parts that have nothing in common
    /// the mean and its weight are those of the joint posterior, and a sum of nothing else is a play ([`Self::after`]).
    #[must_use]
    pub fn after_sum(self, shared: f64, off: f64, variance: f64) -> Self {
        let own = self.predictive().scale.powi(2);
        let weight = (shared * shared / (own * variance)).clamp(0.0, 1.0);
        if !(weight > 0.0 && off.is_finite()) {
            return self;
        }
        let moved = shared * off / variance;
        Self {
            m: self.m + moved / (self.k + 1.0),
            k: self.k * (self.k + 1.0) / (self.k + 1.0 - weight),
            a: self.a + weight / 2.0,
            b: self.b + self.k * moved * moved / (2.0 * (self.k + 1.0)),
        }
    }

    /// What the next play will be.
    #[must_use]
    pub fn predictive(self) -> Predictive {
        Predictive { df: 2.0 * self.a, loc: self.m, scale: (self.b * (1.0 + 1.0 / self.k) / self.a).sqrt() }
    }
}

impl Predictive {
    /// The minutes within which a share `p` of plays are done.
    #[must_use]
    pub fn minutes(self, p: f64) -> f64 {
        (self.loc + self.scale * t_quantile(p, self.df)).exp()
    }
}
