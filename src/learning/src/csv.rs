//! Tables as comma-separated values: RFC 4180, and safe to open in a spreadsheet.

/// Characters at which a spreadsheet takes a cell for a formula, their full-width forms among them.
const FORMULA: [char; 10] = ['=', '+', '-', '@', '\t', '\r', '＝', '＋', '－', '＠'];

/// A table that grows row by row.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Csv(String);

impl Csv {
    /// A table with its first row: the names of its columns.
    #[must_use]
    pub fn with(columns: &[&str]) -> Self {
        let mut table = Self::default();
        table.row(columns);
        table
    }

    /// Adds a row. A cell that a spreadsheet would take for a formula gets an apostrophe before it;
    /// a negative number is none.
    pub fn row(&mut self, cells: &[&str]) {
        for (place, cell) in cells.iter().enumerate() {
            if place > 0 {
                self.0.push(',');
            }
            self.cell(cell);
        }
        self.0.push_str("\r\n");
    }

    /// The whole table as text.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.0
    }

    fn cell(&mut self, text: &str) {
        let quoted = text.contains([',', '"', '\r', '\n']);
        if quoted {
            self.0.push('"');
        }
        if text.starts_with(FORMULA) && !is_negative(text) {
            self.0.push('\'');
        }
        for letter in text.chars() {
            if letter == '"' {
                self.0.push('"');
            }
            self.0.push(letter);
        }
        if quoted {
            self.0.push('"');
        }
    }
}

/// Whether it is a minus sign and a plain number.
fn is_negative(text: &str) -> bool {
    let digits = text.strip_prefix('-').unwrap_or_default();
    !digits.is_empty()
        && digits.bytes().all(|byte| byte.is_ascii_digit() || byte == b'.')
        && digits.bytes().filter(|byte| *byte == b'.').count() < 2
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(cells: &[&str]) -> String {
        Csv::with(cells).text().to_owned()
    }

    #[test]
    fn a_cell_with_a_comma_a_quote_or_a_line_break_is_quoted_and_lines_end_as_the_standard_says() {
        assert_eq!(line(&["plain", "12", ""]), "plain,12,\r\n");
        assert_eq!(
            line(&["a,b", "say \"no\"", "two\nlines"]),
            "\"a,b\",\"say \"\"no\"\"\",\"two\nlines\"\r\n"
        );
    }

    #[test]
    fn a_cell_that_looks_like_a_formula_does_not_become_one() {
        for planted in ["=1+1", "+1", "-A1", "@SUM(A1)", "\tx", "-", "-1-1", "-1.2.3", "＝1"] {
            assert_eq!(line(&[planted]), format!("'{planted}\r\n"));
        }
        assert_eq!(line(&["=HYPERLINK(\"x\",1)"]), "\"'=HYPERLINK(\"\"x\"\",1)\"\r\n");
        assert_eq!(line(&["-0.25", "-3", "0.5"]), "-0.25,-3,0.5\r\n");
    }
}
