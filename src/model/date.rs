//! Dates as the facts state them, and as a page prints them.

/// A day of the calendar.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Date {
    /// The year, 1 to 9999.
    pub year: u16,
    /// The month, 1 to 12.
    pub month: u8,
    /// The day, 1 to 31.
    pub day: u8,
}

const MONTHS: [&str; 12] = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
];

impl Date {
    /// Reads `YYYY-MM-DD` (ISO 8601); `None` when it is no day of the Gregorian calendar.
    pub fn parse(written: &str) -> Option<Date> {
        let mut parts = written.split('-');
        let mut number = |length: usize| {
            let part = parts.next()?;
            let right = part.len() == length && part.chars().all(|digit| digit.is_ascii_digit());
            right.then(|| part.parse::<u16>().ok()).flatten()
        };
        let (year, month, day) = (number(4)?, number(2)?, number(2)?);
        let leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
        let days = match month {
            2 if leap => 29,
            2 => 28,
            4 | 6 | 9 | 11 => 30,
            1..=12 => 31,
            _ => return None,
        };
        let right = parts.next().is_none() && year > 0 && (1..=days).contains(&day);
        right.then_some(Date { year, month: u8::try_from(month).ok()?, day: u8::try_from(day).ok()? })
    }

    /// "1 March 2026".
    pub fn spoken(self) -> String {
        let month = MONTHS.get(usize::from(self.month) - 1).copied().unwrap_or("");
        format!("{} {month} {}", self.day, self.year)
    }
}
