//! A case written out in full.

use super::page::{Page, lengths, list, outline, point, polyline, quoted, word};
use crate::anatomy::{Lesion, Neighbour, Parted, RootBody, Site, Socket, Tube, Vital};
use crate::chart::{
    Anticoagulant, Antiresorptive, Case, Patient, Readings, RecentEvent, SectionReport,
};
use crate::scenario::patient::{ALLERGIES, COMPLAINTS, SEXES, VIEWS};
use crate::scenario::site::{DEFECTS, DENSITIES, FLOORS, LIPS, WALLS};
use crate::units::Mm;
use core::fmt::Write as _;

/// A case written out in full. Its address is kept as a comment only: a case that may be edited is
/// no longer what its address draws.
#[must_use]
pub fn write_case(case: &Case) -> String {
    let mut page = Page::new("case");
    if let Some(address) = case.address {
        let _ = writeln!(page.0, "# drawn as {address}");
    }
    page.text("title", &case.title, "what a referral would say; nothing that is to be found out");
    if let Some(chance) = case.chance {
        page.put("chance", chance, "what decides its events; leave it out for a case of its own");
    }
    site(&mut page, &case.site);
    patient(&mut page, &case.patient);
    readings(&mut page, &case.readings);
    page.0
}

fn site(page: &mut Page, site: &Site) {
    page.table("site");
    page.put("tooth", site.tooth, "two digits: quadrant 1 to 4, then 1 to 7 from the midline");
    page.number("density-hu", site.density.hu, "bone density on the Hounsfield scale");
    page.text("density-class", word(DENSITIES, &site.density.class), "d1 compact to d4 loose");
    socket(page, &site.socket);
    page.table("site.ridge");
    page.put(
        "facial-mm",
        polyline(&site.ridge.facial.knots),
        "outer face: [z, y], z apical and rising, y facial",
    );
    page.put("oral-mm", polyline(&site.ridge.oral.knots), "the same on the oral side");
    page.put(
        "crest-mm",
        polyline(&site.ridge.crest.knots),
        "where bone begins now: [x, z], x distal and rising",
    );
    page.put(
        "crest-before-loss-mm",
        polyline(&site.ridge.crest.unharmed),
        "where it began before any loss",
    );
    page.mm(
        "oral-crest-deeper-mm",
        site.ridge.crest.oral_offset,
        "how much deeper the oral crest lies; negative is higher",
    );
    defects(page, site);
    beside(page, "site.mesial", &site.neighbours.mesial);
    beside(page, "site.distal", &site.neighbours.distal);
    vital(page, &site.vital);
    lesion(page, &site.lesion);
    gum_and_crown(page, site);
}

fn defects(page: &mut Page, site: &Site) {
    for defect in &site.defects {
        let _ = write!(page.0, "\n[[site.defect]]\n");
        page.text("wall", word(WALLS, &defect.wall), "facial or oral");
        page.text(
            "kind",
            word(DEFECTS, &defect.kind),
            "dehiscence-v, dehiscence-u, fenestration or lost-wall",
        );
        page.put(
            "outline-mm",
            outline(&defect.outline),
            "on the map: [s, t] in steps of 0.1; s distal, t apical of the facial crest",
        );
    }
}

fn lesion(page: &mut Page, lesion: &Lesion) {
    page.table("site.lesion");
    let (kind, diameter) = match lesion {
        Lesion::None => ("none", None),
        Lesion::Chronic { diameter } => ("chronic", Some(*diameter)),
        Lesion::Abscess { diameter } => ("abscess", Some(*diameter)),
        Lesion::Spreading { diameter } => ("spreading", Some(*diameter)),
    };
    page.text("kind", kind, "none, chronic, abscess or spreading");
    if let Some(diameter) = diameter {
        page.mm("diameter-mm", diameter, "across");
    }
}

fn gum_and_crown(page: &mut Page, site: &Site) {
    let soft = &site.soft;
    page.table("site.soft");
    page.mm("thickness-mm", soft.thickness, "facial gum at mid-tooth");
    page.mm("keratinised-mm", soft.keratinised, "width of keratinised tissue");
    page.mm(
        "margin-z-mm",
        soft.margin_z,
        "present mid-facial margin; negative is coronal of the crest",
    );
    page.mm("margin-below-twin-mm", soft.margin_below_twin, "how far it lies apical of its twin's");
    page.put(
        "contact-to-crest-mm",
        lengths(&soft.contact_to_crest),
        "contact point to the neighbour's crest: mesial, distal",
    );
    page.text(
        "lip",
        word(LIPS, &soft.lip),
        "what shows at full smile: high (gum), middle (crown and papillae), low (no margin)",
    );
    let crown = &site.crown;
    page.table("site.crown");
    page.mm("margin-z-mm", crown.margin_z, "planned mid-facial margin");
    page.put("edge-mm", point(crown.edge), "incisal edge or middle of the biting face: [x, y, z]");
    page.number("tilt-degrees", crown.tilt.get(), "apex facially positive");
    page.number("tip-degrees", crown.tip.get(), "apex distally positive");
    page.mm("width-mm", crown.width, "between the neighbours' crowns");
}

fn socket(page: &mut Page, socket: &Socket) {
    let Parted { trunk, roots } = match socket {
        Socket::One([one]) => {
            page.table("site.root");
            root(page, one);
            return;
        }
        Socket::Parted(parted) => parted,
    };
    page.table("site.trunk");
    page.mm("neck-mm", trunk.neck, "from the crest up to the neck of the tooth");
    page.mm("furcation-mm", trunk.furcation, "from the crest down to where the roots part");
    page.mm("half-width-mesiodistal-mm", trunk.half_md, "at the neck");
    page.mm("half-width-faciooral-mm", trunk.half_fo, "at the neck");
    page.number("narrowing", trunk.narrowing, "widths at the furcation over those at the neck");
    for (name, one) in roots.names().iter().zip(roots.as_slice()) {
        let _ = write!(page.0, "\n[[site.trunk.root]]\n");
        page.text(
            "name",
            name.key(),
            "facial, palatal; mesial, distal; mesiofacial, distofacial, palatal",
        );
        page.mm(
            "x-mm",
            one.x,
            "where the axis crosses the level of the furcation: distal positive",
        );
        page.mm("y-mm", one.y, "the same, facial positive");
        page.number("tilt-degrees", one.tilt.get(), "apex facially positive");
        page.number("tip-degrees", one.tip.get(), "apex distally positive");
        page.mm("length-mm", one.length, "from the furcation to the apex, along the axis");
        page.mm("half-width-mesiodistal-mm", one.half_md, "at the furcation");
        page.mm("half-width-faciooral-mm", one.half_fo, "at the furcation");
        page.number("taper", one.taper, "0 is a cylinder; 0.22 to 0.30 are roots");
    }
}

fn root(page: &mut Page, root: &RootBody) {
    page.mm("x-mm", root.x, "where the axis crosses the level of the crest: distal positive");
    page.mm("y-mm", root.y, "the same, facial positive");
    page.number("tilt-degrees", root.tilt.get(), "apex facially positive");
    page.number("tip-degrees", root.tip.get(), "apex distally positive");
    page.mm("length-mm", root.length, "from the crest to the apex, along the axis");
    page.mm("neck-mm", root.neck, "from the crest up to the neck of the tooth");
    page.mm("half-width-mesiodistal-mm", root.half_md, "at the crest");
    page.mm("half-width-faciooral-mm", root.half_fo, "at the crest");
    page.number("taper", root.taper, "0 is a cylinder; 0.22 to 0.30 are roots");
}

fn beside(page: &mut Page, name: &str, neighbour: &Neighbour) {
    page.table(name);
    match neighbour {
        Neighbour::Root(body) => {
            page.text("stands", "root", "root, implant or absent");
            root(page, body);
        }
        Neighbour::Implant(implant) => {
            page.text("stands", "implant", "root, implant or absent");
            page.put("platform-mm", point(implant.platform), "middle of its platform: [x, y, z]");
            page.mm("diameter-mm", implant.diameter, "of the platform");
            page.mm("length-mm", implant.length, "platform to apex");
            page.number("tilt-degrees", implant.tilt.get(), "apex facially positive");
            page.number("tip-degrees", implant.tip.get(), "apex distally positive");
        }
        Neighbour::Absent => page.text("stands", "absent", "root, implant or absent"),
    }
}

fn vital(page: &mut Page, vital: &Vital) {
    if *vital == Vital::default() {
        return;
    }
    page.table("site.vital");
    if let Some(foramen) = vital.foramen {
        page.put("foramen-mm", point(foramen), "mental foramen on the facial face: [x, y, z]");
    }
    if let Some(floor) = &vital.floor {
        page.table("site.vital.floor");
        page.text("kind", word(FLOORS, &floor.kind), "sinus or nose");
        page.mm("z-mm", floor.z, "its level at x = 0");
        page.number("rise", floor.rise, "millimetres of z for a millimetre of x");
    }
    let tubes: [(&str, &Option<Tube>); 3] =
        [("canal", &vital.canal), ("loop", &vital.loop_), ("nasopalatine", &vital.nasopalatine)];
    for (name, tube) in tubes {
        if let Some(tube) = tube {
            page.table(&format!("site.vital.{name}"));
            page.put("from-mm", point(tube.from), "one end: [x, y, z]");
            page.put("to-mm", point(tube.to), "the other end: [x, y, z]");
            page.mm("radius-mm", tube.radius, "half of its width");
        }
    }
}

fn patient(page: &mut Page, patient: &Patient) {
    page.table("patient");
    page.text("name", &patient.name, "invented");
    page.put("age-years", patient.age, "12 to 105");
    page.text("sex", word(SEXES, &patient.sex), "female or male");
    page.text("complaint", word(COMPLAINTS, &patient.complaint), "root-fracture, crown-fracture, endodontic-failure, caries, periodontitis, resorption, trauma or restorable");
    page.text("wish", &patient.wish, "what the patient wants, in one sentence");
    page.put("asa", patient.asa, "1 to 4");
    page.put("growth-complete", patient.growth_complete, "on serial records");
    page.put("cigarettes-a-day", patient.cigarettes, "0 to 100");
    let [systolic, diastolic] = patient.pressure;
    page.put("pressure-mmhg", format!("[{systolic}, {diastolic}]"), "after five minutes' rest");
    page.put(
        "pressure-symptoms",
        patient.pressure_symptoms,
        "whether a high pressure comes with symptoms",
    );
    page.put("antiplatelets", patient.antiplatelets, "how many platelet inhibitors");
    page.put("bleeding-score-percent", patient.bleeding_score, "of the whole mouth");
    let allergies = list(patient.allergies.iter().map(|one| quoted(word(ALLERGIES, one))));
    page.put("allergies", allergies, "penicillin, chlorhexidine, collagen, latex");
    page.text(
        "graft-view",
        word(VIEWS, &patient.graft_view),
        "any, no-human, no-animal or own-or-synthetic",
    );
    page.put("parafunction", patient.parafunction, "grinds or clenches");
    page.mm("opening-mm", patient.opening, "of the mouth");
    if let Some(sugar) = &patient.sugar {
        page.number("hba1c-percent", sugar.hba1c, "diabetes; left out without it");
    }
    if let Some(stent) = &patient.stent {
        page.put("stent-months", stent.months, "since it was set");
    }
    if let Some(week) = patient.pregnancy_week {
        page.put("pregnancy-week", week, "left out without a pregnancy");
    }
    history(page, patient);
}

/// The tables of a history that most patients lack.
fn history(page: &mut Page, patient: &Patient) {
    match &patient.anticoagulant {
        Some(Anticoagulant::VitaminK { inr }) => {
            page.table("patient.anticoagulant");
            page.text("kind", "vitamin-k", "vitamin-k or direct");
            page.number("inr", *inr, "as it would be measured now");
        }
        Some(Anticoagulant::Direct { doses_a_day }) => {
            page.table("patient.anticoagulant");
            page.text("kind", "direct", "vitamin-k or direct");
            page.put("doses-a-day", doses_a_day, "1 or 2");
        }
        None => {}
    }
    if let Some(drug) = &patient.antiresorptive {
        page.table("patient.antiresorptive");
        let means = "oral, injected or cancer-dose";
        match drug {
            Antiresorptive::Oral { years } => {
                page.text("kind", "oral", means);
                page.number("years", *years, "taken");
            }
            Antiresorptive::Injected { months_since } => {
                page.text("kind", "injected", means);
                page.put("months-since", months_since, "the last dose");
            }
            Antiresorptive::CancerDose => page.text("kind", "cancer-dose", means),
        }
    }
    if let Some(radiotherapy) = &patient.radiotherapy {
        page.table("patient.radiotherapy");
        page.number("gray-at-site", radiotherapy.gray_at_site, "dose at this site");
        page.number("years-since", radiotherapy.years_since, "it ended");
    }
    if let Some(event) = &patient.event {
        page.table("patient.event");
        let (kind, days) = match event {
            RecentEvent::Infarction { days } => ("infarction", days),
            RecentEvent::Stroke { days } => ("stroke", days),
        };
        page.text("kind", kind, "infarction or stroke");
        page.put("days-since", days, "it happened");
    }
    if let Some(counts) = &patient.bleeding {
        page.table("patient.counts");
        page.number("neutrophils-giga-per-litre", counts.neutrophils, "10^9 a litre");
        page.number("platelets-giga-per-litre", counts.platelets, "10^9 a litre");
    }
    if let Some(steroid) = &patient.steroid {
        page.table("patient.steroid");
        page.number("mg-a-day", steroid.mg, "prednisolone-equivalent");
        page.put("weeks", steroid.weeks, "taken");
    }
}

fn readings(page: &mut Page, readings: &Readings) {
    page.table("readings");
    let sounding: Vec<Mm> = readings.sounding.iter().map(|reading| reading.depth).collect();
    page.put(
        "sounding-mm",
        lengths(&sounding),
        "margin to bone: facial mesial, middle, distal, then mid-oral",
    );
    page.put(
        "probing-mm",
        lengths(&readings.probing),
        "facial mesial, middle, distal, then oral mesial, middle, distal",
    );
    page.mm("film-root-length-mm", readings.film_root_length, "crest to apex as the film shows it");
    page.maybe_mm(
        "film-floor-mm",
        readings.film_floor,
        "apex to floor on film, where a floor is near",
    );
    page.maybe_mm("film-lesion-mm", readings.film_lesion, "across on film, where a lesion shows");
    sections(page, &readings.sections);
}

fn sections(page: &mut Page, report: &SectionReport) {
    page.table("readings.sections");
    page.mm(
        "error-mm",
        report.error,
        "what the report states as plus or minus with every distance",
    );
    page.maybe_mm(
        "facial-plate-mm",
        report.facial_plate,
        "1 mm below the crest; left out, it reads not discernible",
    );
    page.maybe_mm("oral-plate-mm", report.oral_plate, "the same on the oral side");
    page.put(
        "ridge-width-mm",
        lengths(&report.ridge_width),
        "at the crest, at mid-root, at the apex",
    );
    page.mm("concavity-mm", report.concavity, "deepest facial concavity");
    page.mm("undercut-mm", report.undercut, "deepest lingual undercut; 0 in the upper jaw");
    page.maybe_mm("canal-mm", report.canal, "apex to canal");
    page.maybe_mm("foramen-mm", report.foramen, "apex to mental foramen");
    page.maybe_mm("loop-length-mm", report.loop_length, "anterior loop; 0 reads no loop");
    page.maybe_mm(
        "floor-mm",
        report.floor,
        "apex to sinus or nose; negative when the root stands in it",
    );
    page.maybe_mm("nasopalatine-mm", report.nasopalatine, "root to nasopalatine canal");
    page.mm("beyond-apex-mm", report.beyond_apex, "bone beyond the apex along the root's axis");
    page.maybe_mm("lesion-mm", report.lesion, "lesion across, where one shows");
    page.text(
        "density-class",
        word(DENSITIES, &report.density),
        "guessed from grey values, which are not Hounsfield units",
    );
}
