//! Exact tests for small counts. Sums of probabilities, no approximation.

/// Natural logarithm of `n!`.
fn ln_factorial(n: u32) -> f64 {
    (2..=n).map(|factor| libm::log(f64::from(factor))).sum()
}

/// Natural logarithm of the number of ways to choose `k` of `n`.
fn ln_choose(n: u32, k: u32) -> f64 {
    ln_factorial(n) - ln_factorial(k) - ln_factorial(n.saturating_sub(k))
}

/// How often, were both rates the same, a table at least as unlikely as `a` of `of_a` beside `b` of
/// `of_b` comes up: Fisher's exact test, both sides (every table no likelier than the one found).
#[must_use]
pub(super) fn fisher([a, of_a]: [u32; 2], [b, of_b]: [u32; 2]) -> f64 {
    let (hits, all) = (a + b, of_a + of_b);
    let whole = ln_choose(all, hits);
    let of = |x: u32| libm::exp(ln_choose(of_a, x) + ln_choose(of_b, hits - x) - whole);
    // What is as likely must not fall out for its last bits.
    let found = of(a) * (1.0 + 1e-7);
    let possible = hits.saturating_sub(of_b)..=hits.min(of_a);
    possible.map(of).filter(|chance| *chance <= found).sum::<f64>().min(1.0)
}

/// How often `hits` or more of `all` come up where each comes with probability `p`, 0 < p < 1.
#[must_use]
pub(super) fn at_least(hits: u32, all: u32, p: f64) -> f64 {
    let of = |x: u32| {
        let misses = f64::from(all - x);
        libm::exp(ln_choose(all, x) + f64::from(x) * libm::log(p) + misses * libm::log(1.0 - p))
    };
    (hits..=all).map(of).sum::<f64>().min(1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fisher_s_own_tables_come_out_as_published() {
        // The lady and the tea: 3 of 4 beside 1 of 4, 34/70. Twins of convicts: 10 of 13 beside 2 of
        // 17, p 0.0005367, an example of the R manual.
        assert!((fisher([3, 4], [1, 4]) - 34.0 / 70.0).abs() < 1e-12);
        assert!((fisher([10, 13], [2, 17]) - 0.000_536_7).abs() < 5e-8);
        assert!((fisher([2, 17], [10, 13]) - fisher([10, 13], [2, 17])).abs() < 1e-15);
        assert_eq!(fisher([0, 5], [0, 7]), 1.0);
    }

    #[test]
    fn every_table_of_small_counts_agrees_with_counting_the_ways() {
        let ways =
            |n: u32, k: u32| (0..k).fold(1.0, |ways, i| ways * f64::from(n - i) / f64::from(i + 1));
        for (of_a, of_b) in [(5, 5), (6, 9), (1, 8)] {
            for a in 0..=of_a {
                for b in 0..=of_b {
                    let of = |x: u32| ways(of_a, x) * ways(of_b, a + b - x);
                    let possible = (a + b).saturating_sub(of_b)..=(a + b).min(of_a);
                    let as_unlikely = possible.map(of).filter(|w| *w <= of(a) + 1e-6).sum::<f64>();
                    let expected = as_unlikely / ways(of_a + of_b, a + b);
                    assert!(
                        (fisher([a, of_a], [b, of_b]) - expected).abs() < 1e-9,
                        "{a}/{of_a} {b}/{of_b}"
                    );
                }
            }
        }
    }

    #[test]
    fn a_tail_of_a_binomial_is_what_is_left_of_one() {
        // 1 - 0.9^10 - 10 0.1 0.9^9
        assert!((at_least(2, 10, 0.1) - 0.263_901_07).abs() < 1e-8);
        assert!((at_least(0, 10, 0.1) - 1.0).abs() < 1e-12);
        assert!((at_least(10, 10, 0.6) - 0.006_046_617_6).abs() < 1e-12);
    }
}
