//! Gum as surveyed: thickness and keratinised width follow the mouth's phenotype, the margin its own
//! spread.

use super::plates::{IN_PHENOTYPE, phenotype};
use crate::anatomy::{Jaw, Ridge, SoftTissue};
use crate::cases::archetype::Brief;
use crate::cases::draw::{Draws, Field, hundredths};
use crate::cases::socket::Rooted;
use crate::cases::soft;
use crate::units::Mm;

/// Share of the keratinised width in the phenotype: 0.2 with thickness (positive, 60 subjects,
/// confirmed; size ours).
const WIDTH_IN_PHENOTYPE: [f64; 2] = [0.3, 0.954];

pub(super) fn draw(draws: &Draws, rooted: &Rooted, ridge: &Ridge, brief: &Brief) -> SoftTissue {
    let mut drawn = soft::draw(draws, rooted, ridge, brief);
    let (jaw, position) = (rooted.tooth.jaw(), rooted.tooth.position());
    let [(thick, mut thick_sd), (wide, wide_sd)] = soft::gum(jaw, position);
    if jaw == Jaw::Mandible && position == 3 {
        // Ultrasonic series of 200 men, spread 0.36 to 0.39 (confirmed).
        thick_sd = 0.36;
    }
    let phenotype = phenotype(draws);
    let own = draws.stream(Field::GumThickness).standard();
    let thickness = thick + thick_sd * (IN_PHENOTYPE[0] * phenotype + IN_PHENOTYPE[1] * own);
    let own = draws.stream(Field::Keratinised).standard();
    let width = wide + wide_sd * (WIDTH_IN_PHENOTYPE[0] * phenotype + WIDTH_IN_PHENOTYPE[1] * own);
    // Facial margin to crest: 3.47 +- 1.29 measured directly (190 teeth, Kan 2003), median 3.50, 1.80
    // to 6.20 (366 teeth), both confirmed.
    let above = draws.stream(Field::Margin).normal_within(3.45, 0.85, 1.8, 6.2);
    drawn.thickness = Mm::new(hundredths(thickness.clamp(0.3, 2.8)));
    drawn.keratinised = Mm::new(hundredths(width.clamp(0.5, 10.0)));
    drawn.margin_z = Mm::new(hundredths(drawn.margin_below_twin.get() - above));
    drawn
}
