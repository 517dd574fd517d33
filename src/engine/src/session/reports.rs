//! What carried-out examinations and acts report, in words and with their errors. A report says what
//! its examination can show and is silent on the rest.

use super::film_report::{self, Newest};
use super::history::smile;
use super::soundings::{self, Sounded};
use super::{Exposure, Session};
use crate::anatomy::{Defect, DefectKind, DensityClass, Jaw, Lesion, Wall};
use crate::chart::Case;
use crate::geometry::P2;
use crate::plan::choices::{
    Alternative, Examination, FilmQuestion, Request, Several, SocketProbing,
};
use crate::plan::{Plan, Step};
use crate::units::Mm;

/// What one examination or act reported.
#[derive(Debug, Clone, PartialEq)]
pub struct Report {
    /// The step it was made in.
    pub step: Step,
    /// The step whose decisions it bears on: the same, or a later one.
    pub weighed_in: Step,
    /// What was done.
    pub title: String,
    /// What it showed, one sentence a line.
    pub lines: Vec<String>,
}

impl Report {
    /// One that its own step weighs.
    pub(super) fn of(step: Step, title: &str, lines: Vec<String>) -> Self {
        Self { step, weighed_in: step, title: crate::casing::capital(title), lines }
    }
}

/// What asking, examining, probing and reflecting have reported, in order: of the case as it was
/// before the tooth came out, and as it is now. What the operation measures follows them.
pub(super) fn reports(session: &Session) -> Vec<Report> {
    let (before, now, plan) = (session.opened(), session.case(), session.shown());
    let read = Read {
        sounded: session.soundings(),
        film: session.newest_before_treatment(),
        question: plan.examined.as_ref().and_then(|done| done.film),
    };
    let mut reports = Vec::new();
    if let Some(chart) = &plan.chart {
        let lines = super::history::asked_lines(before, chart.requests);
        if !lines.is_empty() {
            reports.push(Report::of(Step::Chart, "Asked for", lines));
        }
    }
    if let Some(done) = &plan.examined {
        reports.extend(done.examinations.iter().map(|examination| {
            Report::of(Step::Examination, examination.label(), examined(before, examination, &read))
        }));
    }
    if let Some(extraction) = &plan.extraction {
        let lines = socket(now, extraction.probing);
        reports.push(Report::of(Step::Extraction, "The socket", lines));
    }
    if plan.raised().is_some() {
        reports.push(Report::of(Step::Flap, "Under the flap", under_flap(now, plan)));
    }
    reports
}

/// Everything that asking, examining and probing would report: for the instructor.
#[must_use]
pub fn all_reports(case: &Case) -> Vec<Report> {
    let asked = super::history::asked_lines(case, Several::of(Request::ALL));
    let read = Read {
        sounded: soundings::first_round(case).to_vec(),
        film: Newest { exposure: Exposure::PARALLEL, number: 1 },
        question: None,
    };
    let mut reports = vec![Report::of(Step::Chart, "Asked for", asked)];
    reports.extend(Examination::ALL.iter().map(|examination| {
        Report::of(Step::Examination, examination.label(), examined(case, *examination, &read))
    }));
    let lines = socket(case, SocketProbing::AllWalls);
    reports.push(Report::of(Step::Extraction, "The socket", lines));
    reports
}

/// What examinations that the learner goes on with have read so far.
struct Read {
    sounded: Vec<Sounded>,
    film: Newest,
    question: Option<FilmQuestion>,
}

fn examined(case: &Case, examination: Examination, read: &Read) -> Vec<String> {
    let site = &case.site;
    let readings = &case.readings;
    match examination {
        Examination::Look => look(case),
        Examination::Probing => {
            let [fm, f, fd, om, o, od] =
                readings.probing.map(|depth| format!("{:.1}", depth.get()));
            let mut lines = vec![
                format!("Facial, mesial to distal: {fm}, {f}, {fd} mm."),
                format!(
                    "{}, mesial to distal: {om}, {o}, {od} mm.",
                    crate::casing::capital(site.tooth.oral_word())
                ),
            ];
            let deep = readings.probing.iter().filter(|depth| depth.get() >= 6.0).count();
            if deep == 1 {
                lines.push("One deep and narrow pocket, the rest shallow.".to_owned());
            }
            lines
        }
        Examination::Mobility => vec![match case.patient.complaint {
            crate::chart::Complaint::Periodontitis => "Mobile in every direction.".to_owned(),
            _ => "Firm.".to_owned(),
        }],
        Examination::Percussion => vec![match site.lesion {
            Lesion::None => "Not tender.".to_owned(),
            Lesion::Chronic { .. } => "Slightly tender.".to_owned(),
            Lesion::Abscess { .. } | Lesion::Spreading { .. } => "Very tender.".to_owned(),
        }],
        Examination::Sensibility => vec!["Both neighbours respond to cold.".to_owned()],
        Examination::OcclusalContacts => vec![if case.patient.parafunction {
            "Wear facets; contacts in sideways movement on this tooth.".to_owned()
        } else {
            "Contacts when closing; free in sideways movement.".to_owned()
        }],
        Examination::PhenotypeTest => vec![if site.soft.thickness.get() <= 1.0 {
            "The probe shines through the gum: thin.".to_owned()
        } else {
            "The probe does not shine through: not thin.".to_owned()
        }],
        Examination::Film => film_report::report(case, read.film, read.question),
        Examination::Sections => sections(case),
        Examination::BoneSounding => soundings::report(site, &read.sounded),
    }
}

fn look(case: &Case) -> Vec<String> {
    let soft = &case.site.soft;
    let below = soft.margin_below_twin.get();
    let margin = if below.abs() < 0.05 {
        "The margin lies level with its twin.".to_owned()
    } else if below > 0.0 {
        format!("The margin lies {below:.1} mm apical of its twin: recession.")
    } else {
        format!("The margin lies {:.1} mm coronal of its twin.", -below)
    };
    let infection = match case.site.lesion {
        Lesion::Spreading { .. } => "The cheek is swollen, the patient is feverish and unwell.",
        Lesion::Abscess { .. } => {
            "Pus can be pressed from the gum beside the tooth; no swelling beyond it."
        }
        Lesion::Chronic { .. } | Lesion::None => "No pus, no swelling, no fever.",
    };
    vec![
        infection.to_owned(),
        margin,
        format!("Keratinised tissue: {:.1} mm.", soft.keratinised.get()),
        crate::casing::capital(smile(soft.lip)) + ".",
        format!(
            "Contact point to the neighbours' crest, estimated: {:.1} mm mesially, {:.1} mm distally.",
            soft.contact_to_crest[0].get(),
            soft.contact_to_crest[1].get()
        ),
    ]
}

pub(super) fn to_floor(what: &str, distance: Mm) -> String {
    if distance.get() < 0.0 {
        format!("{what}: the root stands {:.1} mm into it.", -distance.get())
    } else {
        format!("{what}: {:.1} mm.", distance.get())
    }
}

fn sections(case: &Case) -> Vec<String> {
    let report = &case.readings.sections;
    let oral = crate::casing::capital(case.site.tooth.oral_word());
    let plate = |name: &str, plate: Option<Mm>| match plate {
        Some(thick) => format!("{name} plate 1 mm below the crest: {:.1} mm.", thick.get()),
        None => format!("{name} plate near the crest: not discernible (thin or missing)."),
    };
    let [crest, middle, apex] = report.ridge_width.map(Mm::get);
    let mut lines = vec![
        format!("Every distance is read to within {:.1} mm.", report.error.get()),
        plate("Facial", report.facial_plate),
        plate(&oral, report.oral_plate),
        format!(
            "Ridge width: {crest:.1} mm at the crest, {middle:.1} mm at mid-root, {apex:.1} mm at the apex."
        ),
        format!("Facial concavity: {:.1} mm.", report.concavity.get()),
        format!("Bone beyond the apex along the root: {:.1} mm.", report.beyond_apex.get()),
    ];
    if case.site.tooth.jaw() == Jaw::Mandible {
        lines.push(format!("Lingual undercut: {:.1} mm.", report.undercut.get()));
    }
    let mut distance = |name: &str, value: Option<Mm>| {
        if let Some(value) = value {
            lines.push(to_floor(name, value));
        }
    };
    distance("Apex to the inferior alveolar canal", report.canal);
    distance("Apex to the mental foramen", report.foramen);
    distance("Apex to the floor of sinus or nose", report.floor);
    distance("Root to the nasopalatine canal", report.nasopalatine);
    match report.loop_length {
        Some(length) if length.get() > 0.0 => {
            lines.push(format!("Anterior loop of the mental nerve: {:.1} mm.", length.get()));
        }
        Some(_) => lines.push("No anterior loop of the mental nerve.".to_owned()),
        None => {}
    }
    lines.push(match report.lesion {
        Some(across) => format!("Lesion at the apex: {:.1} mm across.", across.get()),
        None => "No lesion at the apex.".to_owned(),
    });
    lines.push(format!(
        "Bone looks like class {} (grey values are not Hounsfield units).",
        match report.density {
            DensityClass::D1 => "D1",
            DensityClass::D2 => "D2",
            DensityClass::D3 => "D3",
            DensityClass::D4 => "D4",
        }
    ));
    lines
}

fn socket(case: &Case, probing: SocketProbing) -> Vec<String> {
    let wall = |wall: Wall, name: &str| {
        let found: Vec<String> = case.site.defects_of(wall).map(defect_words).collect();
        if found.is_empty() {
            format!("The {name} wall is whole to the probe.")
        } else {
            format!("The {name} wall: {}.", found.join("; "))
        }
    };
    let root = case.site.socket.as_one();
    let long = root.length.get() + root.neck.get();
    let mut lines = vec![match case.site.socket.names().len() {
        1 => format!("The root lies on the tray: {long:.1} mm from neck to apex."),
        roots => format!(
            "The tooth lies on the tray with {roots} roots: {long:.1} mm from neck to the longest apex."
        ),
    }];
    match probing {
        SocketProbing::Nothing => lines.push("The walls were not probed.".to_owned()),
        SocketProbing::FacialOnly => lines.push(wall(Wall::Facial, "facial")),
        SocketProbing::AllWalls => {
            lines.push(wall(Wall::Facial, "facial"));
            lines.push(wall(Wall::Oral, case.site.tooth.oral_word()));
        }
    }
    lines
}

/// A defect in words, from its outline: kind, how far it reaches below the crest, how wide.
pub(super) fn defect_words(defect: &Defect) -> String {
    let points = defect.outline.points();
    let span = |part: fn(&P2) -> f64| {
        let values = points.iter().map(part);
        let least = values.clone().fold(f64::INFINITY, f64::min);
        (least, values.fold(f64::NEG_INFINITY, f64::max))
    };
    let (left, right) = span(|at| at.x);
    let (near, far) = match defect.wall {
        Wall::Facial => span(|at| at.y),
        Wall::Oral => {
            let (least, most) = span(|at| at.y);
            (-most, -least)
        }
    };
    let width = right - left;
    match defect.kind {
        DefectKind::DehiscenceV => {
            format!(
                "a V-shaped dehiscence, {width:.1} mm wide, reaching {far:.1} mm from the crest line"
            )
        }
        DefectKind::DehiscenceU => {
            format!(
                "a U-shaped dehiscence, {width:.1} mm wide, reaching {far:.1} mm from the crest line"
            )
        }
        DefectKind::Fenestration => {
            format!(
                "a fenestration, {width:.1} mm wide, from {near:.1} to {far:.1} mm below the crest line"
            )
        }
        DefectKind::LostWall => {
            format!("the wall is lost over {width:.1} mm, {far:.1} mm from the crest line")
        }
    }
}

fn under_flap(case: &Case, plan: &Plan) -> Vec<String> {
    if !crate::measure::is_laid_bare(case, plan, crate::chart::Fact::FacialWall) {
        return vec!["The bone under the flap is seen; the wall reaches beyond it.".to_owned()];
    }
    let found: Vec<String> = case.site.defects_of(Wall::Facial).map(defect_words).collect();
    if found.is_empty() {
        vec!["The facial wall is whole under the flap.".to_owned()]
    } else {
        found.iter().map(|words| crate::casing::capital(words) + ".").collect()
    }
}
