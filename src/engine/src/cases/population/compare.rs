//! Published figures against draws: the rows of `tests/data/population.csv`, and what comes of them.

use super::quantities::{QUANTITIES, Quantity};
use super::survey::Surveyed;
use crate::anatomy::Tooth;

/// The level of every interval: 99.9 %, two-sided.
pub const LEVEL: f64 = 0.999;
/// The normal deviate of [`LEVEL`].
const Z: f64 = 3.290_526_731_491_895;

/// What becomes of a row.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// Confirmed, and generated: a test holds it.
    Held,
    /// Confirmed, but another confirmed series of the same thing is generated.
    Beside,
    /// Confirmed, but without what an interval needs.
    NoInterval,
    /// Not confirmed: a placeholder.
    Placeholder,
    /// Of sites or things that are not drawn yet.
    Later,
}

/// How a row states its figure.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Statistic {
    /// A proportion, 0 to 1: Wilson's interval by its n.
    Share,
    /// A mean with its standard deviation and n: a normal interval.
    Mean,
    /// Means or proportions of several studies, from the least to the greatest.
    Between,
    /// An order of means: the first group's lies above the second's.
    Above,
}

/// Something measured at some teeth.
#[derive(Debug, Clone, Default)]
pub struct Group {
    /// What; `None` where nothing that is drawn answers to it.
    pub quantity: Option<&'static Quantity>,
    /// Where.
    pub teeth: Vec<u8>,
}

/// One published figure.
#[derive(Debug, Clone)]
pub struct Row {
    /// Its name.
    pub id: String,
    /// What becomes of it.
    pub kind: Kind,
    /// What is measured where, teeth of the right side standing for both; the second is what an
    /// order compares with, and empty elsewhere.
    pub groups: [Group; 2],
    /// What is measured, as the file has it.
    pub quantity: String,
    /// Where, as the file has it.
    pub sites: String,
    /// How the figure is stated.
    pub statistic: Statistic,
    /// The figure: a share, a mean, or the least of several studies.
    pub value: Option<f64>,
    /// Standard deviation, or the greatest of several studies.
    pub spread: Option<f64>,
    /// How many teeth, sites or people stand behind it.
    pub n: Option<u32>,
    /// On the truth, or through which modelled measurement.
    pub measured: String,
    /// How the figure was established.
    pub mark: String,
    /// Who gives it.
    pub source: String,
    /// What else is to be said; for a row that no test holds, why.
    pub note: String,
}

/// What the draws make of a row.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    /// The row's name.
    pub id: String,
    /// The draws' own figure (for an order the difference of means).
    pub ours: f64,
    /// Sites drawn for it.
    pub count: u32,
    /// Least and greatest figure of the draws that agrees with the row at [`LEVEL`].
    pub interval: Option<[f64; 2]>,
}

impl Outcome {
    /// Whether the draws agree with the row; `None` where nothing can be said.
    #[must_use]
    pub fn agrees(&self) -> Option<bool> {
        let [low, high] = self.interval?;
        Some((low..=high).contains(&self.ours))
    }
}

/// What is wrong with a line of the table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BadRow(pub String);

impl core::fmt::Display for BadRow {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(&self.0)
    }
}

impl core::error::Error for BadRow {}

/// The columns of the table.
pub const COLUMNS: [&str; 12] = [
    "id",
    "kind",
    "quantity",
    "sites",
    "statistic",
    "value",
    "spread",
    "n",
    "measured",
    "mark",
    "source",
    "note",
];

/// Reads the table: comment lines begin with #, cells in double quotes may hold commas.
///
/// # Errors
/// The first line that is wrong.
pub fn rows(text: &str) -> Result<Vec<Row>, BadRow> {
    let mut lines = text.lines().filter(|line| !line.starts_with('#') && !line.is_empty());
    let header = COLUMNS.join(",");
    if lines.next() != Some(&header) {
        return Err(BadRow(format!("expected the columns {header}")));
    }
    lines.map(|line| row(line).ok_or_else(|| BadRow(format!("cannot read {line}")))).collect()
}

fn row(line: &str) -> Option<Row> {
    let cells: [String; 12] = cells(line).try_into().ok()?;
    let [id, kind, quantity, sites, statistic, value, spread, n, measured, mark, source, note] =
        cells;
    let kind = match kind.as_str() {
        "held" => Kind::Held,
        "beside" => Kind::Beside,
        "no-interval" => Kind::NoInterval,
        "placeholder" => Kind::Placeholder,
        "later" => Kind::Later,
        _ => return None,
    };
    let statistic = match statistic.as_str() {
        "share" => Statistic::Share,
        "mean" => Statistic::Mean,
        "between" => Statistic::Between,
        "above" => Statistic::Above,
        _ => return None,
    };
    let number =
        |cell: &str| if cell.is_empty() { Some(None) } else { cell.parse().ok().map(Some) };
    Some(Row {
        id,
        kind,
        groups: groups(&quantity, &sites)?,
        quantity,
        sites,
        statistic,
        value: number(&value)?,
        spread: number(&spread)?,
        n: if n.is_empty() { None } else { Some(n.parse().ok()?) },
        measured,
        mark,
        source,
        note,
    })
}

/// Cells of a line of a table; a cell in double quotes may hold commas.
#[must_use]
pub fn cells(line: &str) -> Vec<String> {
    let mut cells = vec![String::new()];
    let mut quoted = false;
    for letter in line.chars() {
        match letter {
            '"' => quoted = !quoted,
            ',' if !quoted => cells.push(String::new()),
            _ => {
                if let Some(cell) = cells.last_mut() {
                    cell.push(letter);
                }
            }
        }
    }
    cells
}

/// What is measured and where: one quantity, or two with `>` between them; teeth such as `11-13 45`,
/// or two such groups with `>` between them.
fn groups(quantity: &str, sites: &str) -> Option<[Group; 2]> {
    let (first, second) = quantity.split_once('>').unwrap_or((quantity, ""));
    let (here, there) = sites.split_once('>').unwrap_or((sites, ""));
    let one = find(first)?;
    let two = if second.is_empty() { one } else { find(second)? };
    let mut groups = [
        Group { quantity: one, teeth: teeth(here)? },
        Group { quantity: two, teeth: teeth(there)? },
    ];
    if there.is_empty() && !second.is_empty() {
        groups[1].teeth = groups[0].teeth.clone();
    }
    Some(groups)
}

/// A quantity by its name; `Some(None)` for none.
fn find(id: &str) -> Option<Option<&'static Quantity>> {
    if id.is_empty() {
        return Some(None);
    }
    QUANTITIES.iter().find(|one| one.id == id).map(Some)
}

fn teeth(text: &str) -> Option<Vec<u8>> {
    let mut teeth = Vec::new();
    for part in text.split_whitespace() {
        let (from, to) = part.split_once('-').unwrap_or((part, part));
        teeth.extend(from.parse::<u8>().ok()?..=to.parse::<u8>().ok()?);
    }
    Some(teeth)
}

/// The tooth of the right side that a tooth mirrors.
const fn right(tooth: Tooth) -> u8 {
    match tooth.quadrant() {
        2 => tooth.iso() - 10,
        3 => tooth.iso() + 10,
        _ => tooth.iso(),
    }
}

/// A running mean and spread.
#[derive(Debug, Clone, Copy, Default)]
struct Running {
    count: f64,
    sum: f64,
    squares: f64,
}

impl Running {
    fn add(&mut self, value: f64) {
        self.count += 1.0;
        self.sum += value;
        self.squares += value * value;
    }

    /// Nothing for nothing.
    fn mean(&self) -> f64 {
        self.sum / self.count.max(1.0)
    }

    /// Square of the mean's standard error.
    fn squared_error(&self) -> f64 {
        let mean = self.mean();
        let squares = (self.squares - self.count * mean * mean).max(0.0);
        squares / (self.count - 1.0).max(1.0) / self.count.max(1.0)
    }
}

/// Draws `count` seeds from `first` on, and measures every row that names a quantity. `told` hears of
/// every thousandth seed.
#[must_use]
pub fn table(rows: &[Row], first: u64, count: u32, mut told: impl FnMut(u32)) -> Vec<Outcome> {
    let mut running = vec![[Running::default(); 2]; rows.len()];
    for number in 0..count {
        if number % 1000 == 0 {
            told(number);
        }
        let Some(site) = Surveyed::of(first + u64::from(number)) else { continue };
        let tooth = right(site.tooth);
        for (row, running) in rows.iter().zip(&mut running) {
            for (group, running) in row.groups.iter().zip(running) {
                if group.teeth.contains(&tooth)
                    && let Some(value) = group.quantity.and_then(|one| (one.read)(&site))
                {
                    running.add(value);
                }
            }
        }
    }
    let measured = rows.iter().zip(&running);
    measured.filter_map(|(row, running)| outcome(row, running)).collect()
}

fn outcome(row: &Row, [first, second]: &[Running; 2]) -> Option<Outcome> {
    if first.count < 2.0 {
        return None;
    }
    let id = row.id.clone();
    let mean = first.mean();
    // At most the count that was asked for.
    let count = (first.count + second.count) as u32;
    let n = row.n.map(f64::from);
    let own_error = Z * libm::sqrt(first.squared_error());
    let (ours, interval) = match row.statistic {
        Statistic::Share => (mean, share_interval(row.value, n, mean, first.count)),
        Statistic::Mean => {
            let interval = row.value.zip(row.spread).zip(n).map(|((value, sd), n)| {
                let error = Z * libm::sqrt(sd * sd / n + first.squared_error());
                [value - error, value + error]
            });
            (mean, interval)
        }
        Statistic::Between => {
            let interval =
                row.value.zip(row.spread).map(|(low, high)| [low - own_error, high + own_error]);
            (mean, interval)
        }
        Statistic::Above => {
            let error = Z * libm::sqrt(first.squared_error() + second.squared_error());
            (mean - second.mean(), Some([error, f64::INFINITY]))
        }
    };
    Some(Outcome { id, ours, count, interval })
}

/// Shares of the draws that agree with a published one: the difference of the two is none at
/// [`LEVEL`] by Newcombe's square-and-add of both Wilson intervals.
fn share_interval(value: Option<f64>, n: Option<f64>, ours: f64, count: f64) -> Option<[f64; 2]> {
    let (value, n) = value.zip(n)?;
    let [low, high] = wilson(value, n, Z);
    let [our_low, our_high] = wilson(ours, count, Z);
    let below = libm::hypot(value - low, our_high - ours);
    let above = libm::hypot(high - value, ours - our_low);
    Some([value - below, value + above])
}

/// Wilson's score interval of a share, `z` standard errors wide.
fn wilson(share: f64, n: f64, z: f64) -> [f64; 2] {
    let square = z * z;
    let middle = share + square / (2.0 * n);
    let half = z * libm::sqrt(share * (1.0 - share) / n + square / (4.0 * n * n));
    let whole = 1.0 + square / n;
    [(middle - half) / whole, (middle + half) / whole]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn wilson_s_interval_is_the_published_one() {
        // Newcombe 1998, Stat Med 17:857, first example: 81 of 263, 0.2553 to 0.3662 at 95 %.
        let [low, high] = wilson(81.0 / 263.0, 263.0, 1.959_964);
        assert!((low - 0.2553).abs() < 5e-5 && (high - 0.3662).abs() < 5e-5, "{low} {high}");
    }

    fn line(rest: &str) -> Row {
        rows(&format!("{}\n{rest}\n", COLUMNS.join(","))).unwrap().remove(0)
    }

    fn group(values: &[f64]) -> Running {
        let mut running = Running::default();
        values.iter().for_each(|value| running.add(*value));
        running
    }

    #[test]
    fn a_mean_agrees_as_far_as_both_errors_reach() {
        let row = line("a,held,density,11,mean,10,2,100,truth,confirmed,somebody,");
        let ours = group(&[9.0, 11.0, 9.0, 11.0]);
        let found = outcome(&row, &[ours, Running::default()]).unwrap();
        // Z sqrt(2^2 / 100 + (4 / 3) / 4): 2.0105.
        let [low, high] = found.interval.unwrap();
        assert!((high - 12.0105).abs() < 1e-3 && (low - 7.9895).abs() < 1e-3, "{low} {high}");
        assert_eq!(found.agrees(), Some(true));
    }

    #[test]
    fn an_order_needs_more_than_chance() {
        let row = line("a,held,density,11>12,above,,,9,truth,confirmed,somebody,");
        let (high, low) = (group(&[10.0, 10.1, 9.9, 10.0]), group(&[9.0, 9.1, 8.9, 9.0]));
        assert_eq!(outcome(&row, &[high, low]).unwrap().agrees(), Some(true));
        assert_eq!(outcome(&row, &[low, high]).unwrap().agrees(), Some(false));
        assert_eq!(outcome(&row, &[high, high]).unwrap().agrees(), Some(false));
    }

    #[test]
    fn a_share_of_few_forgives_more_than_a_share_of_many() {
        let width = |n: &str| {
            let row = line(&format!("a,held,loop,44,share,0.25,,{n},truth,confirmed,somebody,"));
            let ours = group(&[0.0, 1.0].repeat(500));
            let [low, high] = outcome(&row, &[ours, Running::default()]).unwrap().interval.unwrap();
            high - low
        };
        assert!(width("20") > width("200") && width("200") > width("2000"));
    }

    #[test]
    fn a_line_that_is_no_row_is_named() {
        let bad = |rest: &str| rows(&format!("{}\n{rest}\n", COLUMNS.join(","))).unwrap_err().0;
        assert!(bad("a,held,no-such,11,share,0.2,,9,t,confirmed,s,").contains("no-such"));
        assert!(bad("a,kept,density,11,share,0.2,,9,t,confirmed,s,").contains("kept"));
        assert!(bad("a,held,density").contains("density"));
        assert!(rows("id,kind\n").is_err());
    }

    #[test]
    fn teeth_of_the_left_stand_with_those_of_the_right() {
        let at = |iso| right(Tooth::new(iso).unwrap());
        assert_eq!([at(11), at(21), at(35), at(45)], [11, 11, 45, 45]);
    }
}
