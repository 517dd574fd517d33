//! Integrals: fixed Gauss rules where the integrand is known to be smooth, an adaptive rule with a
//! tolerance where it is not.

/// Nodes and weights of the Gauss-Legendre rule with eight points on [-1, 1] (exact to degree 15;
/// Abramowitz and Stegun, table 25.4).
pub const GAUSS_8: [(f64, f64); 8] = [
    (-0.960_289_856_497_536_3, 0.101_228_536_290_376_26),
    (-0.796_666_477_413_626_7, 0.222_381_034_453_374_48),
    (-0.525_532_409_916_329, 0.313_706_645_877_887_3),
    (-0.183_434_642_495_649_8, 0.362_683_783_378_362),
    (0.183_434_642_495_649_8, 0.362_683_783_378_362),
    (0.525_532_409_916_329, 0.313_706_645_877_887_3),
    (0.796_666_477_413_626_7, 0.222_381_034_453_374_48),
    (0.960_289_856_497_536_3, 0.101_228_536_290_376_26),
];

/// The same with four points (exact to degree 7).
pub const GAUSS_4: [(f64, f64); 4] = [
    (-0.861_136_311_594_052_6, 0.347_854_845_137_453_85),
    (-0.339_981_043_584_856_26, 0.652_145_154_862_546_1),
    (0.339_981_043_584_856_26, 0.652_145_154_862_546_1),
    (0.861_136_311_594_052_6, 0.347_854_845_137_453_85),
];

/// The integral of `f` from `from` to `to` by one application of a rule.
pub fn gauss(rule: &[(f64, f64)], from: f64, to: f64, mut f: impl FnMut(f64) -> f64) -> f64 {
    let (middle, half) = (f64::midpoint(from, to), 0.5 * (to - from));
    rule.iter().map(|&(node, weight)| weight * f(middle + half * node)).sum::<f64>() * half
}

/// The integral of `f` from `from` to `to`, halving until the four- and eight-point rules agree to
/// `tolerance` (absolute, shared out over the halves). At most `2^12` pieces, so that it always ends.
pub fn adaptive(from: f64, to: f64, tolerance: f64, f: &mut dyn FnMut(f64) -> f64) -> f64 {
    halve(from, to, tolerance, 12, f)
}

fn halve(from: f64, to: f64, tolerance: f64, left: u32, f: &mut dyn FnMut(f64) -> f64) -> f64 {
    let coarse = gauss(&GAUSS_4, from, to, &mut *f);
    let fine = gauss(&GAUSS_8, from, to, &mut *f);
    if left == 0 || (fine - coarse).abs() <= tolerance {
        return fine;
    }
    let middle = f64::midpoint(from, to);
    halve(from, middle, 0.5 * tolerance, left - 1, f)
        + halve(middle, to, 0.5 * tolerance, left - 1, f)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_rules_are_exact_to_their_degree() {
        let integral = gauss(&GAUSS_4, 0.0, 2.0, |x| x * x * x * x * x * x * x);
        assert!((integral - 32.0).abs() < 1e-12, "{integral}");
        let integral = gauss(&GAUSS_8, 0.0, 1.0, |x| libm::pow(x, 15.0));
        assert!((integral - 1.0 / 16.0).abs() < 1e-14, "{integral}");
    }

    #[test]
    fn the_adaptive_rule_keeps_its_tolerance_over_a_kink_and_a_vertical_tangent() {
        let kink = adaptive(0.0, 1.0, 1e-8, &mut |x| (x - 0.3).abs());
        assert!((kink - 0.29).abs() < 1e-8, "{kink}");
        let tangent = adaptive(0.0, 1.0, 1e-7, &mut libm::sqrt);
        assert!((tangent - 2.0 / 3.0).abs() < 1e-6, "{tangent}");
    }
}
