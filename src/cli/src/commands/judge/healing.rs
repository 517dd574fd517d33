//! The healing illustration as a table.

use engine::chart::Case;
use engine::events;
use engine::healing::{self, Fan, Illustration, LABEL, LIMITS, Quantity, SOURCES};
use engine::plan::Plan;
use engine::search::Nearest;
use engine::units::Mm;

/// Months that the table shows.
const MONTHS: [i32; 6] = [0, 1, 2, 3, 6, 12];

/// Of this plan against the sound plan that is nearest to it, and against none.
pub fn shown(case: &Case, plan: &Plan, nearest: Option<&Nearest>) -> Illustration {
    let sound = nearest.and_then(|nearest| Plan::from_draft(&nearest.draft, case).ok());
    healing::illustration(&events::after(case, plan), plan, sound.as_ref())
}

/// Every treatment with its bands, millimetres lost.
pub fn table(shown: &Illustration) -> String {
    let mut text = format!("\nHealing\n  {LABEL}\n");
    for arm in &shown.arms {
        text.push_str(&format!("\n  {}\n", shown.words(arm)));
        let Ok(fan) = &arm.fan else { continue };
        text.push_str(&format!("  {:>34}", "month"));
        let months: Vec<i32> = fan.months().filter(|month| MONTHS.contains(month)).collect();
        text.extend(months.iter().map(|month| format!("{month:>6}")));
        text.push('\n');
        for quantity in Quantity::ALL {
            for (place, percent) in ["10 %", "50 %", "90 %"].into_iter().enumerate() {
                text.push_str(&row(fan, quantity, (place, percent), &months));
            }
        }
    }
    for (title, lines) in [("What it does not know", LIMITS), ("Where it comes from", SOURCES)] {
        text.push_str(&format!("\n  {title}\n"));
        text.extend(lines.iter().map(|line| format!("  - {line}\n")));
    }
    text
}

fn row(fan: &Fan, quantity: Quantity, (place, percent): (usize, &str), months: &[i32]) -> String {
    let name = match quantity {
        Quantity::Width => "width lost, mm",
        Quantity::Facial => "facial height lost, mm",
    };
    let lost = months.iter().map(|month| {
        let lost = fan.lost(quantity, f64::from(*month)).map(Mm::get);
        format!("{:>6.1}", lost.get(place).copied().unwrap_or_default())
    });
    format!("  {name:<28}{percent:>6}{}\n", lost.collect::<String>())
}
