//! A ruler under a picture: ticks for each millimetre, so that it can be read wherever the picture goes.

/// Rows that it takes.
pub const ROWS: u32 = 16;
/// Its length, mm.
const LENGTH: u32 = 10;
/// Columns left of it, and between it and its label.
const MARGIN: usize = 6;
const WHITE: u8 = 255;
/// Rows down to which ticks hang: each millimetre, each fifth, both ends.
const TICKS: [usize; 3] = [5, 8, 11];
/// The label `10 mm`, five columns and seven rows for each letter, rows as bits.
const LABEL: [[u8; 7]; 5] = [
    [0b00100, 0b01100, 0b00100, 0b00100, 0b00100, 0b00100, 0b01110],
    [0b01110, 0b10001, 0b10001, 0b10001, 0b10001, 0b10001, 0b01110],
    [0; 7],
    [0, 0, 0b11010, 0b10101, 0b10101, 0b10101, 0b10101],
    [0, 0, 0b11010, 0b10101, 0b10101, 0b10101, 0b10101],
];

/// The ruler's rows, as wide as the picture, for so many pixels in a millimetre.
pub fn under(columns: u32, per_mm: f64) -> Vec<u8> {
    let wide = columns as usize;
    let mut grey = vec![0; wide * ROWS as usize];
    let mut set = |column: usize, row: usize| {
        if column < wide
            && let Some(pixel) = grey.get_mut(row * wide + column)
        {
            *pixel = WHITE;
        }
    };
    // The middle of a tick is half a pixel off at the most.
    let column = |mm: u32| MARGIN + (f64::from(mm) * per_mm).round() as usize;
    for mm in 0..=LENGTH {
        let tick = if mm % LENGTH == 0 { 2 } else { usize::from(mm % 5 == 0) };
        (2..2 + TICKS[tick]).for_each(|row| set(column(mm), row));
    }
    (column(0)..=column(LENGTH)).for_each(|column| set(column, 2));
    for (letter, rows) in LABEL.iter().enumerate() {
        for (row, bits) in rows.iter().enumerate() {
            for bit in (0..5).filter(|bit| bits & (0b10000 >> bit) != 0) {
                set(column(LENGTH) + MARGIN + 6 * letter + bit, 6 + row);
            }
        }
    }
    grey
}
