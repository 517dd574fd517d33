//! Sites and plans that vary everything a measurement reads: they need not be good dentistry, only
//! different enough that a wrong formula cannot hide.

use engine::anatomy::{
    Crest, Defect, DefectKind, Floor, FloorKind, Implanted, Jaw, Neighbour, Profile, RootBody,
    Site, Socket, Tooth, Tube, Wall,
};
use engine::cases::{generate, proof, proof_with};
use engine::chart::Case;
use engine::geometry::{Outline, P2, P3};
use engine::plan::choices::Course;
use engine::plan::{Decision, Plan};
use engine::rules::trial::Trial;
use engine::units::{Deg, Mm};
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

const TEETH: &[u8] = &[11, 12, 13, 15, 21, 22, 23, 25, 31, 32, 33, 35, 41, 42, 43, 44, 45];

/// Uniform draws.
pub struct Draws(ChaCha8Rng);

impl Draws {
    /// The draws of a seed.
    pub fn of(seed: u64) -> Self {
        Self(ChaCha8Rng::seed_from_u64(seed))
    }

    fn part(&mut self) -> f64 {
        // 53 bits make a double in [0, 1).
        (self.0.next_u64() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// From one number to another.
    pub fn between(&mut self, from: f64, to: f64) -> f64 {
        from + (to - from) * self.part()
    }

    /// A whole number from one to another, both among them.
    pub fn whole(&mut self, from: i32, to: i32) -> i32 {
        from + (self.part() * f64::from(to - from + 1)) as i32
    }

    /// Whether an event of this chance comes about.
    pub fn chance(&mut self, of: f64) -> bool {
        self.part() < of
    }
}

/// The pair of this seed. By turns: a site varied beyond what cases hold, with a varied plan; a
/// generated case with a varied plan; a generated case with the plan that proves it solvable.
pub fn pair(seed: u64) -> (Case, Plan) {
    let mut draws = Draws::of(seed);
    let mut trial = Trial::plain();
    match seed % 3 {
        0 => vary(&mut draws, &mut trial.case),
        _ => trial.case = generate(seed).unwrap_or(trial.case),
    }
    if seed % 3 == 2 {
        let today = proof_with(&trial.case, Course::PlaceToday);
        let found = today.or_else(|| proof(&trial.case));
        if let Some(Ok(plan)) = found.map(|proof| Plan::from_draft(&proof.draft, &trial.case)) {
            return (trial.case, plan);
        }
    }
    placement(&mut draws, &mut trial);
    cover(&mut draws, &mut trial);
    others(&mut draws, &mut trial);
    let plan = trial.plan();
    (trial.case, plan)
}

fn vary(draws: &mut Draws, case: &mut Case) {
    let iso = TEETH[draws.whole(0, TEETH.len() as i32 - 1) as usize];
    case.title = "A varied site".to_owned();
    let site = &mut case.site;
    site.tooth = Tooth::new(iso).unwrap_or(site.tooth);
    let root = root(draws);
    walls(draws, site, &root);
    crest(draws, site);
    neighbours(draws, site, &root);
    structures(draws, site, &root);
    site.defects.clear();
    if draws.chance(0.75) {
        facial_defect(draws, site, &root);
    }
    if draws.chance(0.2) {
        oral_defect(draws, site, &root);
    }
    site.socket = Socket::one(root);
    site.crown.margin_z = Mm::new(draws.between(-4.0, -1.0));
    site.crown.tilt = Deg::new(draws.between(-15.0, 15.0));
    site.crown.tip = Deg::new(draws.between(-5.0, 5.0));
}

fn root(draws: &mut Draws) -> RootBody {
    RootBody {
        x: Mm::new(0.0),
        y: Mm::new(0.0),
        tilt: Deg::new(draws.between(-18.0, 8.0)),
        tip: Deg::new(draws.between(-8.0, 8.0)),
        length: Mm::new(draws.between(8.5, 16.5)),
        neck: Mm::new(draws.between(1.0, 3.0)),
        half_md: Mm::new(draws.between(1.7, 3.4)),
        half_fo: Mm::new(draws.between(2.4, 4.1)),
        taper: draws.between(0.15, 0.45),
    }
}

fn walls(draws: &mut Draws, site: &mut Site, root: &RootBody) {
    let length = root.length.get();
    let slope = root.tilt.radians().tan();
    let half = |z: f64| root.half_fo.get() * (1.0 - (z / length).clamp(0.0, 1.0)).powf(root.taper);
    let (facial, oral) = (draws.between(0.3, 2.2), draws.between(0.8, 2.0));
    let levels = [-8.0, 0.0, length * draws.between(0.3, 0.55), length, length + 3.0, 34.0];
    let mut wall = |side: f64, plate: f64, most: f64| Profile {
        knots: levels
            .iter()
            .enumerate()
            .map(|(knot, &z)| {
                let middle = slope * z.clamp(0.0, length);
                let more = if knot < 2 { 0.0 } else { draws.between(0.0, most) };
                P2::new(z, middle + side * (half(z).max(1.0) + plate + more))
            })
            .collect(),
    };
    site.ridge.facial = wall(1.0, facial, 1.5);
    site.ridge.oral = wall(-1.0, oral, 4.0);
}

/// A crest with peaks, here and there worn.
pub fn crest(draws: &mut Draws, site: &mut Site) {
    let peak = |draws: &mut Draws| -draws.between(1.0, 3.5);
    let unharmed = [
        (-12.0, draws.between(-0.5, 0.5)),
        (-draws.between(3.5, 6.0), peak(draws)),
        (0.0, 0.0),
        (draws.between(3.5, 6.0), peak(draws)),
        (12.0, draws.between(-0.5, 0.5)),
    ]
    .map(|(x, z)| P2::new(x, z))
    .to_vec();
    let mut knots = unharmed.clone();
    if draws.chance(0.4) {
        for knot in &mut knots {
            knot.y += draws.between(0.0, 2.5);
        }
    }
    let oral_offset = Mm::new(if draws.chance(0.3) { 0.0 } else { draws.between(-1.2, 1.2) });
    site.ridge.crest = Crest { knots, unharmed, oral_offset };
}

/// A root, an implant or nothing on either side of a root.
pub fn neighbours(draws: &mut Draws, site: &mut Site, root: &RootBody) {
    let mut beside = |side: f64| {
        let half = draws.between(1.7, 3.2);
        let x = side * (root.half_md.get() + half + draws.between(0.7, 2.5));
        let (tilt, tip) =
            (Deg::new(draws.between(-12.0, 8.0)), Deg::new(draws.between(-10.0, 10.0)));
        match draws.whole(0, 9) {
            0 => Neighbour::Absent,
            1 | 2 => Neighbour::Implant(Implanted {
                platform: P3::new(x, draws.between(-1.5, 0.5), draws.between(-1.0, 2.0)),
                diameter: Mm::new(draws.between(3.0, 4.5)),
                length: Mm::new(draws.between(8.0, 13.0)),
                tilt,
                tip,
            }),
            _ => Neighbour::Root(RootBody {
                x: Mm::new(x),
                y: Mm::new(draws.between(-0.8, 0.8)),
                tilt,
                tip,
                length: Mm::new(draws.between(10.0, 17.0)),
                half_md: Mm::new(half),
                half_fo: Mm::new(draws.between(2.4, 4.0)),
                ..root.clone()
            }),
        }
    };
    site.neighbours.mesial = beside(-1.0);
    site.neighbours.distal = beside(1.0);
}

/// What the jaw holds beyond the root.
pub fn structures(draws: &mut Draws, site: &mut Site, root: &RootBody) {
    let apex = root.length.get();
    let below = apex + draws.between(1.0, 7.0);
    if site.tooth.jaw() == Jaw::Maxilla {
        let kind = if site.tooth.is_anterior() { FloorKind::Nose } else { FloorKind::Sinus };
        site.vital.floor =
            Some(Floor { kind, z: Mm::new(below), rise: draws.between(-0.15, 0.15) });
        if site.tooth.position() == 1 {
            let x = -draws.between(3.5, 5.0);
            site.vital.nasopalatine = Some(Tube {
                from: P3::new(x, -draws.between(4.0, 6.0), 0.0),
                to: P3::new(x, -draws.between(2.0, 5.0), below),
                radius: Mm::new(draws.between(1.2, 2.5)),
            });
        }
    } else {
        let radius = Mm::new(draws.between(1.0, 1.8));
        let y = draws.between(-3.0, 1.0);
        site.vital.canal = Some(Tube {
            from: P3::new(-2.0, y, below + draws.between(0.0, 2.0)),
            to: P3::new(14.0, y - 1.0, below + draws.between(0.0, 3.0)),
            radius,
        });
        if site.tooth.position() >= 4 {
            let foramen = P3::new(draws.between(-6.0, 6.0), 4.0, below - 2.0);
            site.vital.foramen = Some(foramen);
            site.vital.loop_ = Some(Tube {
                from: foramen,
                to: P3::new(foramen.x - draws.between(1.0, 4.0), y, below + 1.0),
                radius,
            });
        }
    }
}

/// One facial defect over the root.
pub fn facial_defect(draws: &mut Draws, site: &mut Site, root: &RootBody) {
    let half = (root.half_md.get() * 10.0) as i32;
    let long = (root.length.get() * 10.0) as i32;
    let shift = draws.whole(-6, 6);
    let deep = draws.whole(long / 5, long * 7 / 10);
    let (kind, points) = match draws.whole(0, 3) {
        0 => (
            DefectKind::DehiscenceV,
            vec![[-half * 6 / 10, -5], [half * 6 / 10, -5], [half / 5, deep], [-half / 5, deep]],
        ),
        1 => (DefectKind::DehiscenceU, vec![[-half, -3], [half, -3], [half, deep], [-half, deep]]),
        2 => {
            let (top, wide) = (draws.whole(15, 35), draws.whole(8, half.max(9)));
            let middle = i32::midpoint(top, top + deep);
            (
                DefectKind::Fenestration,
                vec![
                    [-wide, middle - 6],
                    [0, top],
                    [wide, middle - 4],
                    [wide * 7 / 10, middle + 9],
                    [0, top + deep],
                    [-wide * 7 / 10, middle + 8],
                ],
            )
        }
        _ => (
            DefectKind::LostWall,
            vec![
                [-half - 8, 0],
                [half + 8, 0],
                [half + 6, deep],
                [0, deep + 10],
                [-half - 6, deep],
            ],
        ),
    };
    push(site, Wall::Facial, kind, &points, shift);
}

/// One oral defect behind it.
pub fn oral_defect(draws: &mut Draws, site: &mut Site, root: &RootBody) {
    let half = (root.half_md.get() * 10.0) as i32;
    let (facial, oral) = (site.ridge.facial.knots[1].y, site.ridge.oral.knots[1].y);
    let across = ((facial - oral) * 10.0) as i32;
    let deep = draws.whole(20, 60);
    let points = [
        [-half * 7 / 10, -across - deep],
        [half * 7 / 10, -across - deep],
        [half * 8 / 10, -across + 3],
        [-half * 8 / 10, -across + 3],
    ];
    push(site, Wall::Oral, DefectKind::DehiscenceU, &points, draws.whole(-6, 6));
}

fn push(site: &mut Site, wall: Wall, kind: DefectKind, points: &[[i32; 2]], shift: i32) {
    let moved = points.iter().map(|[s, t]| [s + shift, *t]).collect();
    if let Ok(outline) = Outline::new(moved) {
        site.defects.push(Defect { wall, kind, outline });
    }
}

/// Any implant anywhere near.
pub fn placement(draws: &mut Draws, trial: &mut Trial) {
    if trial.case.site.tooth.jaw() == Jaw::Mandible {
        trial.keys(&[("sensation-check", "yes")]);
    }
    let tilt = trial.case.site.socket.as_one().tilt.get() as i32 + draws.whole(-8, 10);
    for (decision, count) in [
        (Decision::Diameter, 30 + 5 * draws.whole(0, 4)),
        (Decision::Length, 80 + 10 * draws.whole(0, 8)),
        (Decision::OffsetFacial, draws.whole(-22, 12)),
        (Decision::OffsetDistal, draws.whole(-9, 9)),
        (Decision::Depth, draws.whole(-8, 25)),
        (Decision::Tilt, tilt),
        (Decision::Tip, draws.whole(-9, 9)),
        (Decision::FillLevel, draws.whole(-15, 10)),
        (Decision::OralElevation, draws.whole(0, 40)),
    ] {
        trial.number(decision, count);
    }
}

/// Flap, layer and membrane, or none.
pub fn cover(draws: &mut Draws, trial: &mut Trial) {
    if draws.chance(0.15) {
        return;
    }
    let low = draws.whole(80, 150);
    let (left, right) = (-draws.whole(60, 110), draws.whole(60, 110));
    let design = ["envelope", "triangular", "trapezoidal"][draws.whole(0, 2) as usize];
    trial.keys(&[
        ("flap-design", design),
        ("release-side", "distal"),
        ("papillae", "raised"),
        ("periosteal-release", "yes"),
        ("component", "cover-screw"),
        ("closure", "primary"),
    ]);
    trial.outline(
        Decision::FlapOutline,
        &[
            [left, 0],
            [right, 0],
            [right + draws.whole(0, 25), low],
            [left - draws.whole(0, 25), low],
        ],
    );
    trial.number(Decision::ContourLayer, if draws.chance(0.25) { 0 } else { draws.whole(5, 25) });
    if draws.chance(0.2) {
        return;
    }
    let fold = if draws.chance(0.5) { "facial-only" } else { "over-orifice" };
    trial.keys(&[
        ("membrane", "native-collagen"),
        ("trim", "rounded"),
        ("fold", fold),
        ("fixation", "tucked"),
        ("act-order", "membrane-first"),
        ("needle-path", "crest-outward"),
    ]);
    let (top, deep) =
        (if fold == "facial-only" { 0 } else { -draws.whole(60, 120) }, draws.whole(50, 120));
    let (mesial, distal) = (-draws.whole(30, 75), draws.whole(30, 75));
    trial.outline(
        Decision::MembraneOutline,
        &[
            [mesial, top],
            [distal, top],
            [distal, deep - 15],
            [distal - 12, deep],
            [mesial + 12, deep],
            [mesial, deep - 15],
        ],
    );
}

/// What the models read beside lengths, and how far it is left to them.
pub fn others(draws: &mut Draws, trial: &mut Trial) {
    trial.case.site.density.hu = draws.between(200.0, 1100.0);
    let mut one_of = |decision: &'static str, keys: &[&'static str]| {
        trial.keys(&[(decision, keys[draws.whole(0, keys.len() as i32 - 1) as usize])]);
    };
    one_of("preparation", &["full", "under-prepared", "tapped"]);
    one_of("grain-size", &["under-0.1", "0.25-1.0", "1.0-2.0"]);
    one_of("periosteal-release", &["yes", "no"]);
    one_of("component", &["cover-screw", "healing-abutment", "custom-abutment"]);
    one_of("closure", &["primary", "primary", "open"]);
}
