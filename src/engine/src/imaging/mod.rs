//! Films and sections: pixels computed out of the site. Nothing is painted in: that a facial defect
//! does not show on a film, and that a thin plate fades in a section, comes out of the sums.

pub mod materials;
