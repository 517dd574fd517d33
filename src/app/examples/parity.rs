//! Prints the native parity digest of a range: `parity FIRST COUNT`. The browser tests ask it.

use std::io::Write;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut numbers = std::env::args().skip(1).map(|text| text.parse::<u32>());
    let (Some(first), Some(count)) = (numbers.next(), numbers.next()) else {
        return Err("found too few arguments, expected FIRST and COUNT".into());
    };
    writeln!(std::io::stdout(), "{}", app::parity::digest(first?, count?))?;
    Ok(())
}
