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
        // Most stretches lie within one piece: that is split where it stands.
        let Some(place) = self.pieces.iter().position(|piece| piece.to > from) else { return };
        let one = self.pieces[place];
        if to <= one.to && (from > self.begin(place) || to < one.to) {
            if only.has(one.material) && one.material != with {
                self.split(place, (from, to), with);
            }
            return;
        }
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

    /// Where a piece begins.
    #[inline]
    fn begin(&self, place: usize) -> f64 {
        if place == 0 { self.start } else { self.pieces[place - 1].to }
    }

    /// Paints a stretch that lies within one piece and leaves something of it; joins what it touches.
    fn split(&mut self, place: usize, (from, to): (f64, f64), with: Material) {
        let (begin, one) = (self.begin(place), self.pieces[place]);
        let painted = Piece { to, material: with };
        if to < one.to {
            if begin < from {
                self.pieces[place].to = from;
                self.pieces.insert(place + 1, painted);
                self.pieces.insert(place + 2, one);
            } else if place > 0 && self.pieces[place - 1].material == with {
                self.pieces[place - 1].to = to;
            } else {
                self.pieces.insert(place, painted);
            }
            return;
        }
        self.pieces[place].to = from;
        // A piece begins where the one before it ends, so one of the same material grows by itself.
        if self.pieces.get(place + 1).is_none_or(|next| next.material != with) {
            self.pieces.insert(place + 1, painted);
        }
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
    fn painting_agrees_with_asking_point_by_point() {
        // Stretches of every kind by turns; `asked` holds what lies at each tenth of a millimetre.
        let all = [Air, Soft, Cortical, Spongiosa, Dentine];
        let mut path = Path::default();
        for round in 0..200_u32 {
            path.clear(0.0, 10.0);
            let mut asked = [Air; 100];
            for turn in 0..14_u32 {
                let draw = |part: u32, of: u32| ((round * 31 + turn) * 7919 + part * 104_729) % of;
                let (from, to) = (draw(1, 100), draw(2, 101));
                let with = all[usize::try_from(draw(3, 5)).unwrap()];
                let only = if draw(4, 3) == 0 { Materials::BONE } else { Materials::ALL };
                path.paint(f64::from(from) / 10.0, f64::from(to) / 10.0, only, with);
                for place in from..to {
                    let cell = &mut asked[usize::try_from(place).unwrap()];
                    *cell = if only.has(*cell) { with } else { *cell };
                }
            }
            let (mut reached, mut before) = (0.0, None);
            for (from, to, material) in path.iter() {
                assert!(from == reached && from < to && before != Some(material), "{path:?}");
                (reached, before) = (to, Some(material));
                for (place, cell) in asked.iter().enumerate() {
                    let middle = (place as f64 + 0.5) / 10.0;
                    assert!(middle < from || middle > to || *cell == material, "{path:?}");
                }
            }
            assert_eq!(reached, 10.0);
        }
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
