//! Pairs of teeth with several roots: drawn sockets in varied ridges, with varied plans.

use crate::varied::{self, Draws};
use engine::anatomy::{Bodies, Jaw, Profile, Site, Socket, Tooth};
use engine::cases::parted_socket;
use engine::chart::{Address, Case, Sex};
use engine::geometry::{P2, P3, Ray, V3};
use engine::plan::{Decision, Plan};
use engine::rules::trial::Trial;

/// How many pairs are written of them.
pub const COUNT: u64 = 60;

const TEETH: &[u8] = &[14, 24, 16, 26, 17, 27, 46, 36, 47, 37];

/// The pair of this seed.
pub fn pair(seed: u64) -> (Case, Plan) {
    let mut draws = Draws::of(seed ^ 0x5a5a);
    let mut trial = Trial::plain();
    let iso = TEETH[(seed % 10) as usize];
    trial.case.title = "A varied site with several roots".to_owned();
    let site = &mut trial.case.site;
    site.tooth = Tooth::new(iso).unwrap_or(site.tooth);
    let address = Address { format: 1, generator: 1, seed, attempt: 0, changed: None };
    let sex = if seed.is_multiple_of(2) { Sex::Female } else { Sex::Male };
    site.socket = parted_socket(address, site.tooth, sex, 45).unwrap_or(site.socket.clone());
    let one = site.socket.as_one();
    walls(&mut draws, site);
    varied::crest(&mut draws, site);
    varied::neighbours(&mut draws, site, &one);
    varied::structures(&mut draws, site, &one);
    site.defects.clear();
    if draws.chance(0.6) {
        varied::facial_defect(&mut draws, site, &one);
    }
    if draws.chance(0.2) {
        varied::oral_defect(&mut draws, site, &one);
    }
    varied::placement(&mut draws, &mut trial);
    varied::cover(&mut draws, &mut trial);
    varied::others(&mut draws, &mut trial);
    // Molars take wider implants, mostly into the septum.
    for (decision, count) in [
        (Decision::Diameter, 35 + 5 * draws.whole(0, 5)),
        (Decision::OffsetFacial, draws.whole(-15, 15)),
        (Decision::Depth, draws.whole(-5, 30)),
        (Decision::Tilt, draws.whole(-10, 10)),
    ] {
        trial.number(decision, count);
    }
    let plan = trial.plan();
    (trial.case, plan)
}

/// Least and greatest y of the socket at a level.
fn extent(bodies: &Bodies, z: f64) -> [f64; 2] {
    let mut ends = [0.0_f64; 2];
    for step in -60..=60 {
        let origin = P3::new(f64::from(step) * 0.1, -40.0, z);
        let ray = Ray { origin, direction: V3::FACIAL };
        for part in bodies.as_slice().iter().flat_map(|body| body.ray(&ray).as_slice().to_vec()) {
            ends = [ends[0].min(part.from - 40.0), ends[1].max(part.to - 40.0)];
        }
    }
    ends
}

fn walls(draws: &mut Draws, site: &mut Site) {
    let bodies = Bodies::of(&site.socket);
    let apex = bodies.deepest().unwrap_or(10.0);
    let furcation = bodies.furcation().unwrap_or(2.0);
    let levels = [0.0, 1.0, f64::midpoint(furcation, apex) / apex, 1.0].map(|part| part * apex);
    let levels = [-8.0, 0.0, furcation, levels[2], levels[3], apex + 3.0, 34.0];
    // The socket's widest between a level and its neighbours, so that no straight piece cuts in.
    let widest = |place: usize| {
        let around = levels[place.saturating_sub(1)..(place + 2).min(levels.len())].iter();
        let around = around.map(|z| extent(&bodies, *z));
        around.fold([0.0_f64; 2], |[a, b], [c, d]| [a.min(c), b.max(d)])
    };
    let (facial, oral) = (draws.between(0.4, 2.2), draws.between(0.8, 2.4));
    let mut wall = |side: usize, sign: f64, plate: f64, most: f64| Profile {
        knots: levels
            .iter()
            .enumerate()
            .map(|(place, &z)| {
                let more = if place < 2 { 0.0 } else { draws.between(0.0, most) };
                let reach = if place < 2 { widest(1)[side] } else { widest(place)[side] };
                P2::new(z, reach + sign * (plate + more))
            })
            .collect(),
    };
    site.ridge.facial = wall(1, 1.0, facial, 1.5);
    site.ridge.oral = wall(0, -1.0, oral, if site.tooth.jaw() == Jaw::Maxilla { 2.0 } else { 3.0 });
    debug_assert!(matches!(site.socket, Socket::Parted(_)));
}
