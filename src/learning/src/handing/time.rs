//! Times as the standards write them, from milliseconds: at most two decimals, which is all that either
//! edition of SCORM takes.

use crate::date::Clock;

const DAY: u64 = 24 * 60 * 60 * 1000;
/// No host is told of more than 9999 hours, which is what the older edition can say.
pub const LONGEST: u64 = 9999 * 60 * 60 * 1000 + 59 * 60 * 1000 + 59_990;

/// *0012:34:05.60* after so many digits of hours: SCORM 1.2's `CMITimespan`.
#[must_use]
pub fn timespan(ms: u64) -> String {
    let [hours, minutes, seconds, hundredths] = parts(ms.min(LONGEST));
    format!("{hours:04}:{minutes:02}:{seconds:02}.{hundredths:02}")
}

/// *14:03:05.60*, universal time: SCORM 1.2's `CMITime`.
#[must_use]
pub fn time_of_day(ms: u64) -> String {
    let [hours, minutes, seconds, hundredths] = parts(ms % DAY);
    format!("{hours:02}:{minutes:02}:{seconds:02}.{hundredths:02}")
}

/// *PT1H2M3.45S*: an ISO 8601 duration, as SCORM 2004 and xAPI take it.
#[must_use]
pub fn duration(ms: u64) -> String {
    let [hours, minutes, seconds, hundredths] = parts(ms.min(LONGEST));
    let mut text = "PT".to_owned();
    for (count, letter) in [(hours, 'H'), (minutes, 'M')] {
        if count > 0 {
            text.push_str(&format!("{count}{letter}"));
        }
    }
    if hundredths > 0 {
        text.push_str(&format!("{seconds}.{hundredths:02}S"));
    } else if seconds > 0 || text.len() == 2 {
        text.push_str(&format!("{seconds}S"));
    }
    text
}

/// *2026-11-24T14:03:59.00Z*: SCORM 2004 takes the letter of the zone only after a fraction.
#[must_use]
pub fn stamp(ms: u64) -> String {
    format!("{}T{}Z", Clock(0).date(ms).iso(), time_of_day(ms))
}

const fn parts(ms: u64) -> [u64; 4] {
    [ms / 3_600_000, ms / 60_000 % 60, ms / 1000 % 60, ms / 10 % 100]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_are_written_as_each_standard_wants_them() {
        let span = 754_560;
        assert_eq!(
            (timespan(span), duration(span)),
            ("0000:12:34.56".to_owned(), "PT12M34.56S".to_owned())
        );
        assert_eq!(
            ["PT0S", "PT1H", "PT2H0.01S"].map(str::to_owned),
            [0, 3_600_000, 7_200_010].map(duration)
        );
        // 2026-11-24 14:03:59 in universal time, by Python's datetime.
        assert_eq!(stamp(1_795_529_039_000), "2026-11-24T14:03:59.00Z");
        assert_eq!(time_of_day(1_795_529_039_999), "14:03:59.99");
    }

    #[test]
    fn no_time_is_too_long_for_its_form() {
        for ms in [LONGEST, LONGEST + 1, u64::MAX] {
            assert_eq!(timespan(ms), "9999:59:59.99");
            assert_eq!(duration(ms), "PT9999H59M59.99S");
        }
        assert_eq!(stamp(u64::MAX).len(), "2026-11-24T14:03:59.00Z".len());
    }
}
