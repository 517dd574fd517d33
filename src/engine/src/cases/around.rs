//! What stands and runs around the socket.

use super::archetype::{Anchorage, Brief, Reach};
use super::draw::{Draws, Field, Stream, hundredths};
use super::shape::{apex, face};
use super::socket::{self, Rooted};
use super::tooth_table::{ToothRow, between, first_molar};
use crate::anatomy::{
    Density, DensityClass, Floor, FloorKind, Implanted, Jaw, Lesion, Neighbour, Neighbours, Ridge,
    Tube, Vital,
};
use crate::chart::Sex;
use crate::geometry::P3;
use crate::units::{Deg, Mm};

pub(super) fn neighbours(draws: &Draws, rooted: &Rooted, brief: &Brief) -> Neighbours {
    // An implant beside the site stands on one side, a tooth on the other.
    let implant_distal = draws.stream(Field::DistalNeighbour).chance(0.5);
    Neighbours {
        mesial: neighbour(draws, rooted, brief, false, brief.neighbour_implant && !implant_distal),
        distal: neighbour(draws, rooted, brief, true, brief.neighbour_implant && implant_distal),
    }
}

fn neighbour(
    draws: &Draws,
    rooted: &Rooted,
    brief: &Brief,
    distal: bool,
    implant: bool,
) -> Neighbour {
    let field = if distal { Field::DistalNeighbour } else { Field::MesialNeighbour };
    let mut stream = draws.stream(field);
    // Behind a premolar the next tooth has often gone before (8 %, ours).
    let gone = stream.unit() < 0.08;
    if gone && distal && rooted.tooth.position() >= 4 && !implant && !brief.neighbour_implant {
        return Neighbour::Absent;
    }
    let (mean, sd) = between(rooted.tooth, distal);
    let bone = if brief.tight {
        stream.between(0.9, 1.25)
    } else {
        stream.normal_within(mean, sd, (mean - sd).max(1.4), mean + 2.0 * sd)
    };
    let sign = if distal { 1.0 } else { -1.0 };
    let half = rooted.root.half_md.get();
    if implant {
        let diameter = 4.0;
        // Two to three millimetres from socket to implant: room for 3 mm to the next one is scarce.
        let x = half + bone.max(2.0) + diameter / 2.0;
        return Neighbour::Implant(Implanted {
            platform: P3::new(hundredths(sign * x), -0.8, 0.8),
            diameter: Mm::new(diameter),
            length: Mm::new(11.0),
            tilt: Deg::new(-4.0),
            tip: Deg::ZERO,
        });
    }
    let jaw = rooted.tooth.jaw();
    let position = rooted.tooth.position();
    let place = match (position, distal) {
        (_, true) => position + 1,
        (1, false) => 1,
        (_, false) => position - 1,
    };
    let row = ToothRow::at(jaw, place).unwrap_or_else(|| first_molar(jaw));
    // The other side's central leans the other way in this frame.
    let lean = if position == 1 && !distal { -1.0 } else { 1.0 };
    let own_tip = rooted.root.tip.get();
    let apart = stream.normal_within(0.5, 1.2, -0.5, 3.0);
    let tip = if lean < 0.0 { -own_tip.abs() - apart } else { own_tip + sign * apart };
    let tilt = rooted.root.tilt.get() + stream.normal_within(0.0, 1.5, -3.0, 3.0);
    let x_of = |neighbour_half: f64| sign * (half + bone + neighbour_half);
    Neighbour::Root(socket::neighbour(row, rooted.mouth, x_of, [tilt, tip]))
}

pub(super) fn vital(
    draws: &Draws,
    rooted: &Rooted,
    ridge: &Ridge,
    beside: &Neighbours,
    sex: Sex,
    brief: &Brief,
) -> Vital {
    match rooted.tooth.jaw() {
        Jaw::Maxilla => Vital {
            floor: Some(floor(draws, rooted, brief)),
            nasopalatine: (rooted.tooth.position() == 1)
                .then(|| nasopalatine(draws, ridge, beside, brief)),
            ..Vital::default()
        },
        Jaw::Mandible if rooted.tooth.position() >= 3 => {
            mandibular(draws, rooted, ridge, sex, brief)
        }
        Jaw::Mandible => Vital::default(),
    }
}

/// Nose over 11 to 13 (bone over the apex 9.2 +- 3.0, 10.0 +- 2.9, 8.1 +- 3.1; Tao et al. 2017,
/// confirmed), sinus over 14 and 15 (6.5 +- 4.0, 2.9 +- 3.2; ours inside confirmed bounds).
fn floor(draws: &Draws, rooted: &Rooted, brief: &Brief) -> Floor {
    let mut stream = draws.stream(Field::Floor);
    let position = rooted.tooth.position();
    let (kind, mean, sd) = match position {
        1 => (FloorKind::Nose, 9.2, 3.0),
        2 => (FloorKind::Nose, 10.0, 2.9),
        3 => (FloorKind::Nose, 8.1, 3.1),
        4 => (FloorKind::Sinus, 6.5, 4.0),
        _ => (FloorKind::Sinus, 2.9, 3.2),
    };
    let (low, high) = match (brief.anchorage, brief.floor) {
        (Anchorage::Poor, _) => (0.8, 2.0),
        (_, Reach::Free) => (-3.0, 18.0),
        (_, Reach::Clear) => (5.5, 16.0),
        (_, Reach::Near) => (-1.0, 2.2),
    };
    let above = stream.normal_within(mean, sd, low, high);
    let rise = match kind {
        FloorKind::Nose => stream.between(-0.05, 0.05),
        // The sinus comes nearer towards the molars.
        FloorKind::Sinus => stream.between(-0.25, -0.05),
    };
    let tip = apex(&rooted.root);
    Floor { kind, z: Mm::new(hundredths(tip.z + above - rise * tip.x)), rise: hundredths(rise) }
}

/// In the midline, orally: 6 to 7 mm of bone facial of it (from memory), canal 3.1 to 3.2 mm across
/// (confirmed), leaning back as it rises (118 degrees to the horizontal, confirmed).
fn nasopalatine(draws: &Draws, ridge: &Ridge, beside: &Neighbours, brief: &Brief) -> Tube {
    let mut stream = draws.stream(Field::Nasopalatine);
    let midline = match &beside.mesial {
        Neighbour::Root(root) => root.x.get() / 2.0,
        Neighbour::Implant(implant) => implant.platform.x / 2.0,
        Neighbour::Absent => -4.5,
    };
    let (facial, radius) = match brief.nasopalatine {
        Reach::Near => (stream.between(3.6, 4.6), stream.between(1.9, 2.4)),
        Reach::Clear => (stream.normal_within(7.0, 1.0, 6.2, 9.0), stream.between(1.3, 1.6)),
        Reach::Free => {
            (stream.normal_within(6.5, 1.5, 3.5, 10.0), stream.normal_within(1.6, 0.45, 0.8, 2.6))
        }
    };
    let at = face(&ridge.facial, 1.0) - facial - radius;
    let back = 0.53 * 10.0;
    Tube {
        from: P3::new(hundredths(midline), hundredths(at), 1.0),
        to: P3::new(hundredths(midline), hundredths(at - back), 11.0),
        radius: Mm::new(hundredths(radius)),
    }
}

/// Canal, foramen and loop. The foramen lies between the premolars or under the second (about half
/// each, Pele et al. 2021, confirmed), below the apex in 65, level in 29.5, above in 5.6 % (117
/// hemimandibles, confirmed). Apex to canal: 44 5.8 +- 2.4, 45 5.3 +- 2.3, men +0.5, women -0.5
/// (ours inside confirmed means).
fn mandibular(draws: &Draws, rooted: &Rooted, ridge: &Ridge, sex: Sex, brief: &Brief) -> Vital {
    let tip = apex(&rooted.root);
    let foramen = foramen(&mut draws.stream(Field::Foramen), rooted, brief, tip);
    let foramen = P3::new(
        hundredths(foramen[0]),
        hundredths(face(&ridge.facial, foramen[1])),
        hundredths(foramen[1]),
    );
    let mut stream = draws.stream(Field::Canal);
    let sexed = if sex == Sex::Male { 0.5 } else { -0.5 };
    let mean = if rooted.tooth.position() == 5 { 5.3 } else { 5.8 };
    let (low, high) = match (brief.anchorage, brief.canal) {
        (Anchorage::Poor, _) => (0.8, 2.0),
        (_, Reach::Free) => (0.0, 14.0),
        (_, Reach::Clear) => (6.8, 12.0),
        (_, Reach::Near) => (0.6, 2.8),
    };
    let below = stream.normal_within(mean + sexed, 2.35, low, high);
    let radius = hundredths(stream.between(1.25, 1.75));
    let inward = stream.between(3.2, 4.2);
    // The canal rises to the foramen from below: it never lies above it.
    let level = (tip.z + below + radius).max(foramen.z + 1.0);
    let canal = (rooted.tooth.position() >= 4).then(|| Tube {
        from: P3::new(foramen.x, hundredths(foramen.y - inward), hundredths(level)),
        to: P3::new(
            hundredths(foramen.x + 28.0),
            hundredths(foramen.y - inward - 1.0),
            hundredths(level + 1.0),
        ),
        radius: Mm::new(radius),
    });
    Vital {
        canal,
        loop_: anterior_loop(&mut draws.stream(Field::Loop), foramen, brief),
        foramen: Some(foramen),
        ..Vital::default()
    }
}

/// x and z of the foramen in this site's frame.
fn foramen(stream: &mut Stream, rooted: &Rooted, brief: &Brief, tip: P3) -> [f64; 2] {
    // Half a tooth between the premolars, one tooth to the next, taking 7 mm for a premolar.
    let under_second = match rooted.tooth.position() {
        5 => 0.0,
        4 => 7.0,
        _ => 14.0,
    };
    let between = under_second - 3.5;
    let place = if stream.chance(0.5) { under_second } else { between };
    let x = place + stream.normal_within(0.0, 0.8, -1.6, 1.6);
    let below = match stream.weighted(&[(0_u8, 0.65), (1, 0.294), (2, 0.056)], 0) {
        0 => stream.normal_within(3.2, 1.3, 0.8, 6.5),
        1 => stream.between(-0.8, 0.8),
        _ => -stream.normal_within(2.2, 0.8, 0.8, 4.0),
    };
    if brief.canal == Reach::Near {
        // The canal runs on under the apex, so it has left the foramen further forward.
        return [between + 0.4 * (x - place), tip.z + below.clamp(-1.5, 0.5)];
    }
    match brief.foramen {
        Reach::Free => [x, tip.z + below],
        Reach::Clear => [x, tip.z + 6.0 + below.abs().min(3.0)],
        // As near as the site allows: level with the apex, at the side of the second premolar.
        Reach::Near => [
            if rooted.tooth.position() == 3 { 7.5 } else { between.min(3.4) },
            tip.z + below.clamp(-1.5, 1.5),
        ],
    }
}

/// Present in 36 % of sides, 2.39 mm long (63 studies, confirmed; another series finds it in 85 %
/// with 1.46 +- 1.25 mm: this one is generated).
fn anterior_loop(stream: &mut Stream, foramen: P3, brief: &Brief) -> Option<Tube> {
    let drawn = stream.chance(0.36);
    let length = stream.normal_within(2.39, 0.8, 0.6, 4.5);
    (drawn || brief.foramen == Reach::Near).then(|| Tube {
        from: P3::new(foramen.x, hundredths(foramen.y - 1.2), foramen.z),
        to: P3::new(
            hundredths(foramen.x - length),
            hundredths(foramen.y - 2.4),
            hundredths(foramen.z + 1.0),
        ),
        radius: Mm::new(1.0),
    })
}

/// Hounsfield means by region, ours inside the spread of seven series (front lower jaw 383 to 970,
/// front upper 370 to 751, back lower 306 to 698, back upper 256 to 486; confirmed).
pub(super) fn density(draws: &Draws, rooted: &Rooted) -> Density {
    let (mean, sd) = match (rooted.tooth.jaw(), rooted.tooth.is_anterior()) {
        (Jaw::Mandible, true) => (850.0, 210.0),
        (Jaw::Maxilla, true) => (650.0, 180.0),
        (Jaw::Mandible, false) => (620.0, 200.0),
        (Jaw::Maxilla, false) => (470.0, 150.0),
    };
    let hu = libm::round(draws.stream(Field::Density).normal_within(mean, sd, 200.0, 1400.0));
    Density { hu, class: class_of(hu) }
}

/// Class by Hounsfield bounds (`ledger: bone-density-classes`); looser than D4 counts as D4.
#[must_use]
pub fn class_of(hu: f64) -> DensityClass {
    if hu > 1250.0 {
        DensityClass::D1
    } else if hu > 850.0 {
        DensityClass::D2
    } else if hu > 350.0 {
        DensityClass::D3
    } else {
        DensityClass::D4
    }
}

/// Disease at the apex; sizes ours.
pub(super) fn lesion(draws: &Draws, brief: &Brief) -> Lesion {
    use super::archetype::Apex;
    let mut stream = draws.stream(Field::Lesion);
    let diameter = Mm::new(hundredths(stream.normal_within(4.0, 1.2, 2.5, 7.0)));
    match brief.apex {
        Apex::Healthy => Lesion::None,
        Apex::Chronic => Lesion::Chronic { diameter },
        Apex::Abscess => Lesion::Abscess { diameter },
        Apex::Spreading => Lesion::Spreading { diameter },
    }
}
