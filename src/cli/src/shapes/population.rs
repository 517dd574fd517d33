//! The shape of `wallwise population --json`.

use engine::cases::population::{Kind, LEVEL, Outcome, Row, Statistic};
use engine::debrief::CAUTION;
use schemars::JsonSchema;
use serde::Serialize;

/// What `wallwise population --json` prints.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct Population {
    /// What stands beside every verdict.
    pub caution: &'static str,
    /// The first seed.
    pub first_seed: u64,
    /// How many seeds were drawn from there on.
    pub seeds: u32,
    /// Level of every interval.
    pub level: f64,
    /// Every published figure.
    pub rows: Vec<OneFigure>,
}

/// One published figure, and what the draws make of it.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct OneFigure {
    /// Its name.
    pub id: String,
    /// What becomes of it: only `held` figures have to agree.
    #[schemars(extend("enum" = ["held", "beside", "no-interval", "placeholder", "later"]))]
    pub kind: &'static str,
    /// What is measured; empty where nothing that is drawn answers to it.
    pub quantity: String,
    /// At which teeth of the right side, those of the left standing with them.
    pub sites: String,
    /// How the figure is stated.
    #[schemars(extend("enum" = ["share", "mean", "between", "above"]))]
    pub statistic: &'static str,
    /// The share, the mean, or the least of several studies.
    pub published: Option<f64>,
    /// Standard deviation of a mean, or the greatest of several studies.
    pub spread: Option<f64>,
    /// How many stand behind it.
    pub n: Option<u32>,
    /// On the truth, or through which modelled measurement.
    pub measured: String,
    /// How it was established.
    pub mark: String,
    /// Who gives it.
    pub source: String,
    /// What else is to be said.
    pub note: String,
    /// The figure of the draws; null where nothing was measured.
    pub ours: Option<f64>,
    /// How many drawn sites stand behind it.
    pub sites_drawn: u32,
    /// The least figure of the draws that agrees.
    pub agrees_from: Option<f64>,
    /// The greatest that agrees; null where there is no end.
    pub agrees_to: Option<f64>,
    /// Whether the draws agree; null where nothing can be said.
    pub agrees: Option<bool>,
}

impl Population {
    /// Of rows and what was made of them.
    #[must_use]
    pub fn of(rows: &[Row], outcomes: &[Outcome], first_seed: u64, seeds: u32) -> Self {
        let of = |row: &Row| outcomes.iter().find(|outcome| outcome.id == row.id);
        let rows = rows.iter().map(|row| OneFigure::of(row, of(row))).collect();
        Self { caution: CAUTION, first_seed, seeds, level: LEVEL, rows }
    }

    /// Whether every figure that is held agrees.
    #[must_use]
    pub fn agrees(&self) -> bool {
        self.rows.iter().all(|row| row.kind != "held" || row.agrees == Some(true))
    }
}

impl OneFigure {
    fn of(row: &Row, outcome: Option<&Outcome>) -> Self {
        let end = |place: usize| {
            let interval = outcome.and_then(|outcome| outcome.interval);
            interval.map(|ends| ends[place]).filter(|end| end.is_finite())
        };
        Self {
            id: row.id.clone(),
            kind: kind(row.kind),
            quantity: row.quantity.clone(),
            sites: row.sites.clone(),
            statistic: statistic(row.statistic),
            published: row.value,
            spread: row.spread,
            n: row.n,
            measured: row.measured.clone(),
            mark: row.mark.clone(),
            source: row.source.clone(),
            note: row.note.clone(),
            ours: outcome.map(|outcome| outcome.ours),
            sites_drawn: outcome.map_or(0, |outcome| outcome.count),
            agrees_from: end(0),
            agrees_to: end(1),
            agrees: outcome.and_then(Outcome::agrees),
        }
    }
}

const fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::Held => "held",
        Kind::Beside => "beside",
        Kind::NoInterval => "no-interval",
        Kind::Placeholder => "placeholder",
        Kind::Later => "later",
    }
}

const fn statistic(statistic: Statistic) -> &'static str {
    match statistic {
        Statistic::Share => "share",
        Statistic::Mean => "mean",
        Statistic::Between => "between",
        Statistic::Above => "above",
    }
}
