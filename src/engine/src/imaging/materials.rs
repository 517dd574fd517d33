//! What the beam passes, and how strongly each weakens it.
//!
//! Linear attenuation coefficients at one energy stand for the whole spectrum: 40 keV for an
//! intraoral film (60 to 70 kV with 2 to 2.5 mm of aluminium has a mean of 35 to 41 keV before and
//! behind a jaw), 60 keV for a cone-beam scanner (110 to 120 kV with 6 mm: 57 to 61 keV). Compositions
//! are those of ICRU reports 44 and 46. `tests/data/attenuation.csv` holds both columns with the
//! compositions and how each was established.

use crate::anatomy::Density;
use crate::plan::choices::GraftMaterial;

/// What a piece of a ray lies in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
#[repr(u8)]
pub enum Material {
    /// Air: outside, and in sinus and nose.
    Air,
    /// Gum, pulp, ligament, nerve, blood clot, and the tissue of a lesion.
    Soft,
    /// Marrow bone of the site's density.
    Spongiosa,
    /// Compact bone.
    Cortical,
    /// Dentine and cementum.
    Dentine,
    /// Enamel.
    Enamel,
    /// Grains of hydroxyapatite, two fifths of the volume.
    MineralGraft,
    /// Grains of compact bone, two fifths of the volume.
    BoneGraft,
    /// Grains without mineral.
    BareGraft,
    /// Acrylic resin of a provisional crown.
    Acrylic,
    /// Zirconia of a definitive crown.
    Ceramic,
    /// Titanium.
    Titanium,
}

/// Every material, in order.
pub const ALL: [Material; ROWS.len()] = {
    use Material as M;
    [
        M::Air,
        M::Soft,
        M::Spongiosa,
        M::Cortical,
        M::Dentine,
        M::Enamel,
        M::MineralGraft,
        M::BoneGraft,
        M::BareGraft,
        M::Acrylic,
        M::Ceramic,
        M::Titanium,
    ]
};

/// At which energy the coefficients are taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Beam {
    /// 40 keV.
    Intraoral,
    /// 60 keV.
    ConeBeam,
}

/// Name in the data, and coefficients at 40 and 60 keV, per centimetre.
pub type Row = (&'static str, [f64; 2]);

/// One row for each material, in the order of [`Material`]. Computed from compositions by `xraydb`
/// (Elam tables); cortical bone at 60 keV over its density is 0.3148 cm2/g (handbook 0.315, from
/// memory). Spongiosa is that of ICRU 46; a site's own follows from its density.
pub const ROWS: [Row; 12] = [
    ("air", [0.000_299_4, 0.000_225_9]),
    ("soft-tissue", [0.2849, 0.2171]),
    ("spongiosa", [0.4576, 0.2810]),
    ("cortical-bone", [1.278, 0.6045]),
    ("dentine", [1.637, 0.7349]),
    ("enamel", [2.799, 1.164]),
    ("hydroxyapatite-grains", [1.415, 0.6427]),
    // Two fifths of cortical bone and three fifths of soft tissue by volume.
    ("bone-grains", [0.6821, 0.3721]),
    // The same with soft tissue in place of the mineral: collagen's own density is left out (ours).
    ("demineralised-grains", [0.2849, 0.2171]),
    ("acrylic", [0.2773, 0.2270]),
    ("zirconia", [51.41, 17.07]),
    ("titanium", [9.970, 3.452]),
];

/// Water, per centimetre at 40 and 60 keV: the nought of the Hounsfield scale.
pub const WATER: [f64; 2] = [0.2683, 0.2059];

/// Coefficients of every material at one site and one energy, per millimetre.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Coefficients {
    of: [f64; ROWS.len()],
    water: f64,
}

impl Coefficients {
    /// At a site of this density.
    #[must_use]
    pub fn at(beam: Beam, density: &Density) -> Self {
        let column = usize::from(beam == Beam::ConeBeam);
        let mut of = [0.0; ROWS.len()];
        for (own, (_, row)) in of.iter_mut().zip(ROWS) {
            *own = row[column] / 10.0;
        }
        of[Material::Spongiosa as usize] = spongiosa(density.hu, column) / 10.0;
        Self { of, water: WATER[column] / 10.0 }
    }

    /// Of one material, per millimetre.
    #[must_use]
    pub const fn of(&self, material: Material) -> f64 {
        self.of[material as usize]
    }

    /// The Hounsfield number of a coefficient: 0 for water, -1000 for nothing.
    #[must_use]
    pub fn hounsfield(&self, coefficient: f64) -> f64 {
        1000.0 * (coefficient - self.water) / self.water
    }
}

/// Marrow bone of a density on the Hounsfield scale of a medical scanner, per centimetre in one
/// column: a mixture of its two neighbours among soft tissue (55), the spongiosa of the tables (365)
/// and cortical bone (1936), in proportion of Hounsfield numbers; beyond the ends it is the end
/// itself. The share of the mixture is one of volume, so it is the same at each energy.
fn spongiosa(hu: f64, column: usize) -> f64 {
    let [_, soft, loose, compact, ..] = ROWS;
    let scale = |row: &Row| 1000.0 * (row.1[1] - WATER[1]) / WATER[1];
    let (low, high) = if hu < scale(&loose) { (soft, loose) } else { (loose, compact) };
    let share = ((hu - scale(&low)) / (scale(&high) - scale(&low))).clamp(0.0, 1.0);
    low.1[column] + share * (high.1[column] - low.1[column])
}

/// What a graft is to the beam. Deproteinised bovine bone and calcium phosphate are mineral; freeze-
/// dried and own bone keep their collagen; demineralised bone shows as what surrounds it.
#[must_use]
pub const fn graft(material: GraftMaterial) -> Option<Material> {
    match material {
        GraftMaterial::NoGraft => None,
        GraftMaterial::Xenograft | GraftMaterial::Synthetic => Some(Material::MineralGraft),
        GraftMaterial::Autograft
        | GraftMaterial::MineralisedAllograft
        | GraftMaterial::AllograftBlend => Some(Material::BoneGraft),
        GraftMaterial::DemineralisedAllograft => Some(Material::BareGraft),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::DensityClass;

    fn at(beam: Beam, hu: f64) -> Coefficients {
        Coefficients::at(beam, &Density { hu, class: DensityClass::D3 })
    }

    #[test]
    fn marrow_bone_has_the_hounsfield_number_that_the_site_says() {
        for hu in [100.0, 200.0, 365.0, 700.0, 1400.0] {
            let own = at(Beam::ConeBeam, hu);
            assert!((own.hounsfield(own.of(Material::Spongiosa)) - hu).abs() < 1e-9, "{hu}");
        }
    }

    #[test]
    fn density_beyond_the_ends_of_the_mixture_is_the_end() {
        let own = at(Beam::Intraoral, -300.0);
        assert_eq!(own.of(Material::Spongiosa), own.of(Material::Soft));
        let own = at(Beam::Intraoral, 5000.0);
        assert_eq!(own.of(Material::Spongiosa), own.of(Material::Cortical));
    }

    #[test]
    fn hounsfield_numbers_of_tissues_are_the_published_ones() {
        // evidence: anatomy B1, computed: soft +55, cortical 1940, dentine 2570, enamel 4650; to 10.
        let own = at(Beam::ConeBeam, 500.0);
        for (material, hu) in [
            (Material::Air, -999.0),
            (Material::Soft, 55.0),
            (Material::Cortical, 1936.0),
            (Material::Dentine, 2570.0),
            (Material::Enamel, 4650.0),
        ] {
            let found = own.hounsfield(own.of(material));
            assert!((found - hu).abs() < 10.0, "{material:?}: {found}");
        }
    }

    #[test]
    fn grains_of_bone_are_two_fifths_bone_at_both_energies() {
        let [_, soft, _, bone, .., grains, _, _, _, _] = ROWS;
        for column in [0, 1] {
            let mixed = 0.4 * bone.1[column] + 0.6 * soft.1[column];
            assert!((grains.1[column] - mixed).abs() < 1e-4, "{mixed}");
        }
    }

    #[test]
    fn only_grains_without_mineral_look_like_soft_tissue() {
        let own = at(Beam::Intraoral, 700.0);
        let soft = own.of(Material::Soft);
        let of = |material| graft(material).map(|seen| own.of(seen) > 1.5 * soft);
        assert_eq!(of(GraftMaterial::NoGraft), None);
        assert_eq!(of(GraftMaterial::DemineralisedAllograft), Some(false));
        for material in [GraftMaterial::Xenograft, GraftMaterial::Autograft] {
            assert_eq!(of(material), Some(true), "{material:?}");
        }
    }
}
