//! What lies along one ray, piece by piece, painted from the ground up.

use super::bounds::{greater, lesser};
use super::materials::Material;

/// Some of the materials, as a set.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Materials(u16);

impl Materials {
    /// All of them.
    pub const ALL: Self = Self(u16::MAX);
    /// Bone of either sort.
    pub const BONE: Self = Self::of(&[Material::Spongiosa, Material::Cortical]);

    /// These.
    #[must_use]
    pub const fn of(list: &[Material]) -> Self {
        let (mut bits, mut place) = (0, 0);
        while place < list.len() {
            bits |= 1 << list[place] as u16;
            place += 1;
        }
        Self(bits)
    }

    /// Whether this one is among them.
    #[must_use]
    pub const fn has(self, one: Material) -> bool {
        self.0 & (1 << one as u16) != 0
    }
}

/// Up to where a material lies; it begins where the piece before it ends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Piece {
    /// Parameter at which it ends.
    pub to: f64,
    /// What it is.
    pub material: Material,
}

/// The pieces of one ray between two parameters, without holes. Kept from ray to ray, so that no
/// memory is asked for.
#[derive(Debug, Clone, Default)]
pub struct Path {
    start: f64,
    pieces: Vec<Piece>,
    next: Vec<Piece>,
}

impl Path {
    /// Air between two parameters.
    pub fn clear(&mut self, from: f64, to: f64) {
        self.start = from;
        self.pieces.clear();
        if from < to {
            self.pieces.push(Piece { to, material: Material::Air });
        }
    }

    /// Makes `to` of whatever among `only` lies between two parameters.
    pub fn paint(&mut self, from: f64, to: f64, only: Materials, with: Material) {
        let Some(last) = self.pieces.last() else { return };
        // What is not a number is no stretch either.
        let proper = from < to && from < last.to && self.start < to;
        if !proper {
            return;
        }
        let (from, to) = (greater(from, self.start), lesser(to, last.to));
        self.next.clear();
        let mut at = self.start;
        for &Piece { to: end, material } in &self.pieces {
            if end <= from || at >= to || !only.has(material) {
                push(&mut self.next, end, material);
            } else {
                if at < from {
                    push(&mut self.next, from, material);
                }
                push(&mut self.next, lesser(end, to), with);
                if end > to {
                    push(&mut self.next, end, material);
                }
            }
            at = end;
        }
        core::mem::swap(&mut self.pieces, &mut self.next);
    }

    /// Every piece as (from, to, material), in rising order.
    pub fn iter(&self) -> impl Iterator<Item = (f64, f64, Material)> + '_ {
        let mut from = self.start;
        self.pieces.iter().map(move |piece| {
            let start = core::mem::replace(&mut from, piece.to);
            (start, piece.to, piece.material)
        })
    }
}

#[inline]
fn push(pieces: &mut Vec<Piece>, to: f64, material: Material) {
    match pieces.last_mut() {
        Some(last) if last.material == material => last.to = to,
        _ => pieces.push(Piece { to, material }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use Material::{Air, Cortical, Dentine, Soft, Spongiosa};

    fn list(path: &Path) -> Vec<(f64, f64, Material)> {
        path.iter().collect()
    }

    #[test]
    fn what_is_painted_last_lies_on_top_and_leaves_the_rest() {
        let mut path = Path::default();
        path.clear(0.0, 10.0);
        path.paint(2.0, 8.0, Materials::ALL, Soft);
        path.paint(4.0, 6.0, Materials::ALL, Dentine);
        let expected = [
            (0.0, 2.0, Air),
            (2.0, 4.0, Soft),
            (4.0, 6.0, Dentine),
            (6.0, 8.0, Soft),
            (8.0, 10.0, Air),
        ];
        assert_eq!(list(&path), expected);
    }

    #[test]
    fn only_what_is_named_is_painted_over_and_equal_pieces_join() {
        let mut path = Path::default();
        path.clear(0.0, 10.0);
        path.paint(0.0, 10.0, Materials::ALL, Cortical);
        path.paint(1.0, 4.0, Materials::BONE, Spongiosa);
        path.paint(6.0, 9.0, Materials::BONE, Spongiosa);
        path.paint(3.0, 7.0, Materials::of(&[Spongiosa]), Cortical);
        let expected = [
            (0.0, 1.0, Cortical),
            (1.0, 3.0, Spongiosa),
            (3.0, 7.0, Cortical),
            (7.0, 9.0, Spongiosa),
            (9.0, 10.0, Cortical),
        ];
        assert_eq!(list(&path), expected);
        path.paint(-5.0, 50.0, Materials::of(&[Soft]), Air);
        assert_eq!(list(&path), expected);
    }

    #[test]
    fn what_is_no_stretch_paints_nothing() {
        let mut path = Path::default();
        path.clear(0.0, 1.0);
        path.paint(0.8, 0.2, Materials::ALL, Soft);
        path.paint(f64::NAN, 0.5, Materials::ALL, Soft);
        path.paint(2.0, 3.0, Materials::ALL, Soft);
        assert_eq!(list(&path), [(0.0, 1.0, Air)]);
        path.clear(1.0, 1.0);
        path.paint(0.0, 2.0, Materials::ALL, Soft);
        assert!(list(&path).is_empty());
    }
}
