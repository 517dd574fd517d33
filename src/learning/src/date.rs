//! Days of the calendar out of milliseconds, at a place so many minutes east of universal time.

const MINUTE: u64 = 60 * 1000;
const DAY: u64 = 24 * 60 * MINUTE;
const MONTHS: [&str; 12] =
    ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/// A place's clock: minutes east of universal time.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Clock(pub i32);

/// A day of the Gregorian calendar.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Date {
    /// Year.
    pub year: u32,
    /// Month, 1 to 12.
    pub month: u32,
    /// Day, 1 to 31.
    pub day: u32,
}

impl Clock {
    /// Days since 1970 began at this place.
    #[must_use]
    pub const fn days(self, ms: u64) -> u64 {
        let shift = self.0.unsigned_abs() as u64 * MINUTE;
        (if self.0 < 0 { ms.saturating_sub(shift) } else { ms.saturating_add(shift) }) / DAY
    }

    /// The day at this place, `ms` milliseconds after 1970 began in universal time.
    #[must_use]
    pub fn date(self, ms: u64) -> Date {
        date_of(self.days(ms))
    }
}

/// Seconds as minutes and seconds, and hours where there are any: *1:05*, *1:02:05*.
#[must_use]
pub fn clock(seconds: f64) -> String {
    let whole = libm::round(seconds.clamp(0.0, 1e9)) as u64;
    let (hours, minutes, seconds) = (whole / 3600, whole / 60 % 60, whole % 60);
    if hours > 0 {
        format!("{hours}:{minutes:02}:{seconds:02}")
    } else {
        format!("{minutes}:{seconds:02}")
    }
}

/// The day so many days after the first of January 1970: eras of 400 years that begin in March, the
/// common arithmetic of the Gregorian calendar. Later than the year 9999 is taken for its last days.
#[must_use]
pub fn date_of(days: u64) -> Date {
    let days = u32::try_from(days.min(2_932_896)).unwrap_or(0) + 719_468;
    let (era, of_era) = (days / 146_097, days % 146_097);
    let year = (of_era - of_era / 1460 + of_era / 36_524 - of_era / 146_096) / 365;
    let of_year = of_era - (365 * year + year / 4 - year / 100);
    let month = (5 * of_year + 2) / 153;
    let day = of_year - (153 * month + 2) / 5 + 1;
    let turned = month >= 10;
    Date {
        year: era * 400 + year + u32::from(turned),
        month: if turned { month - 9 } else { month + 3 },
        day,
    }
}

impl Date {
    /// *27 Nov 2026*.
    #[must_use]
    pub fn words(self) -> String {
        format!("{} {}", self.short(), self.year)
    }

    /// *27 Nov*.
    #[must_use]
    pub fn short(self) -> String {
        let month =
            usize::try_from(self.month).ok().and_then(|month| MONTHS.get(month.wrapping_sub(1)));
        format!("{} {}", self.day, month.copied().unwrap_or_default())
    }

    /// *2026-11-27*, for files.
    #[must_use]
    pub fn iso(self) -> String {
        format!("{:04}-{:02}-{:02}", self.year, self.month, self.day)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn known_days_come_out_and_leap_years_are_kept() {
        for (days, iso) in [
            (0, "1970-01-01"),
            (58, "1970-02-28"),
            (59, "1970-03-01"),
            (11_016, "2000-02-29"),
            (19_782, "2024-02-29"),
            (20_784, "2026-11-27"),
            (47_541, "2100-03-01"),
            (2_932_896, "9999-12-31"),
        ] {
            assert_eq!(date_of(days).iso(), iso);
        }
        assert_eq!(date_of(20_784).words(), "27 Nov 2026");
    }

    #[test]
    fn days_follow_each_other_through_four_hundred_years() {
        let mut before = date_of(0);
        for day in 1..=146_097 {
            let next = date_of(day);
            let follows = next.year == before.year
                && next.month == before.month
                && next.day == before.day + 1
                || next.day == 1 && before.day >= 28 && next > before;
            assert!(follows, "{before:?} then {next:?}");
            before = next;
        }
        assert_eq!(before.iso(), "2370-01-01");
    }

    #[test]
    fn seconds_read_as_a_clock_shows_them() {
        let read = [0.0, 59.6, 65.0, 3725.0, f64::NAN].map(clock);
        assert_eq!(read[..4], ["0:00", "1:00", "1:05", "1:02:05"]);
    }

    #[test]
    fn a_place_has_its_own_midnight() {
        let late = 20_784 * DAY - 1;
        assert_eq!(Clock(0).date(late).iso(), "2026-11-26");
        assert_eq!(Clock(1).date(late).iso(), "2026-11-27");
        assert_eq!(Clock(-480).date(20_784 * DAY + 7 * 60 * MINUTE).iso(), "2026-11-26");
        assert_eq!(Clock(-60).date(0).iso(), "1970-01-01");
    }
}
