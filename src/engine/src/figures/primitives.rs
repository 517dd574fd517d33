//! What figures are made of.

use crate::geometry::P2;
use crate::plan::Decision;

/// A picture computed from a case and a plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Figure {
    /// Short name, kebab-case: `section`.
    pub name: &'static str,
    /// What stands over it.
    pub title: String,
    /// What it shows, in sentences, for those who cannot see it.
    pub says: String,
    /// The part of the plane that is drawn, millimetres.
    pub window: Window,
    /// Millimetres of the figure in one CSS pixel at the width for which it was laid out: line
    /// widths and hatchings come out of it, so that they look alike at every size.
    pub pixel: f64,
    /// From back to front.
    pub items: Vec<Item>,
    /// What can be taken hold of.
    pub handles: Vec<Handle>,
    /// Length of the scale bar in millimetres; `None` only where the axes carry units of their own.
    pub scale_bar: Option<f64>,
}

/// A rectangle of the figure's plane, millimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Window {
    /// Upper left corner.
    pub least: P2,
    /// Lower right corner.
    pub most: P2,
}

impl Window {
    /// Width in millimetres.
    #[must_use]
    pub const fn width(&self) -> f64 {
        self.most.x - self.least.x
    }

    /// Height in millimetres.
    #[must_use]
    pub const fn height(&self) -> f64 {
        self.most.y - self.least.y
    }
}

/// One thing drawn.
#[derive(Debug, Clone, PartialEq)]
pub enum Item {
    /// Straight lines through points; closed ones are filled as their ink says, open ones never.
    /// Several rings form one area with holes (even-odd). A ring of one point is a dot.
    Path {
        /// Rings of points, millimetres.
        rings: Vec<Vec<P2>>,
        /// Whether each ring closes.
        closed: bool,
        /// What it is.
        ink: Ink,
    },
    /// A disc or circle.
    Circle {
        /// Its middle.
        middle: P2,
        /// Its radius, millimetres.
        radius: f64,
        /// What it is.
        ink: Ink,
    },
    /// Words.
    Words {
        /// Where.
        at: P2,
        /// Which point of the words lies there.
        anchor: Anchor,
        /// Height of a capital, millimetres.
        height: f64,
        /// The words.
        text: String,
        /// What they belong to.
        ink: Ink,
    },
}

/// Which point of some words lies at their place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// Their beginning.
    Start,
    /// Their middle.
    Middle,
    /// Their end.
    End,
}

/// What something is; how it looks is decided where it is drawn. Hatching before hue.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Ink {
    /// Main outline.
    Outline,
    /// Thin line: axes, ticks, guides.
    Fine,
    /// What is reconstructed or not seen: dashed.
    Dashed,
    /// What a learner's own plan has where another one is drawn.
    Former,
    /// What each of many has, all over each other.
    OfMany,
    /// Bone, compact: filled.
    Cortex,
    /// Bone, marrow: filled lightly.
    Marrow,
    /// A dot of the stipple that stands for bone.
    Stipple,
    /// Tooth or root.
    Tooth,
    /// Empty socket.
    Socket,
    /// Gum.
    Gum,
    /// Missing bone: a defect.
    Defect,
    /// Bone that is missing, in a cut: hatched without a line of its own.
    Lost,
    /// Canal, foramen, floor: what must not be hurt.
    Vital,
    /// Planned crown, and the levels that come with it.
    Crown,
    /// Implant.
    Implant,
    /// A thread of the implant that stands in bone.
    Thread,
    /// A thread that faces bone across a gap.
    ThreadFacing,
    /// A thread that faces no bone.
    ThreadExposed,
    /// Drill beyond the implant.
    Drill,
    /// A grain of graft, at true size.
    Grain,
    /// Membrane.
    Membrane,
    /// Reflected area of a flap.
    Flap,
    /// Incision.
    Incision,
    /// The learner's value.
    Mark,
    /// A band that is ideal.
    BandIdeal,
    /// A band that is acceptable.
    BandAcceptable,
    /// A band in which sources disagree.
    BandDebated,
    /// A band outside that costs little.
    BandSuboptimal,
    /// A band outside that is likely to compromise.
    BandOutside,
    /// A band that is unsafe.
    BandUnsafe,
    /// Spread of what may come, slanted; shows what it lies on.
    SpreadSlanted,
    /// The same, broken.
    SpreadBroken,
    /// Where it fails.
    Fault,
    /// A measured distance.
    Dimension,
    /// Words.
    Words,
    /// Quiet words: tick labels, notes.
    Quiet,
    /// Ground behind the drawing.
    Ground,
}

impl Ink {
    /// Every ink, in the order of the list above.
    pub const ALL: &'static [Self] = &[
        Self::Outline,
        Self::Fine,
        Self::Dashed,
        Self::Former,
        Self::OfMany,
        Self::Cortex,
        Self::Marrow,
        Self::Stipple,
        Self::Tooth,
        Self::Socket,
        Self::Gum,
        Self::Defect,
        Self::Lost,
        Self::Vital,
        Self::Crown,
        Self::Implant,
        Self::Thread,
        Self::ThreadFacing,
        Self::ThreadExposed,
        Self::Drill,
        Self::Grain,
        Self::Membrane,
        Self::Flap,
        Self::Incision,
        Self::Mark,
        Self::BandIdeal,
        Self::BandAcceptable,
        Self::BandDebated,
        Self::BandSuboptimal,
        Self::BandOutside,
        Self::BandUnsafe,
        Self::SpreadSlanted,
        Self::SpreadBroken,
        Self::Fault,
        Self::Dimension,
        Self::Words,
        Self::Quiet,
        Self::Ground,
    ];

    /// Class name for stylesheets.
    #[must_use]
    pub const fn class(self) -> &'static str {
        match self {
            Self::Outline => "ink-outline",
            Self::Fine => "ink-fine",
            Self::Dashed => "ink-dashed",
            Self::Former => "ink-former",
            Self::OfMany => "ink-of-many",
            Self::Cortex => "ink-cortex",
            Self::Marrow => "ink-marrow",
            Self::Stipple => "ink-stipple",
            Self::Tooth => "ink-tooth",
            Self::Socket => "ink-socket",
            Self::Gum => "ink-gum",
            Self::Defect => "ink-defect",
            Self::Lost => "ink-lost",
            Self::Vital => "ink-vital",
            Self::Crown => "ink-crown",
            Self::Implant => "ink-implant",
            Self::Thread => "ink-thread",
            Self::ThreadFacing => "ink-thread-facing",
            Self::ThreadExposed => "ink-thread-exposed",
            Self::Drill => "ink-drill",
            Self::Grain => "ink-grain",
            Self::Membrane => "ink-membrane",
            Self::Flap => "ink-flap",
            Self::Incision => "ink-incision",
            Self::Mark => "ink-mark",
            Self::BandIdeal => "ink-band-ideal",
            Self::BandAcceptable => "ink-band-acceptable",
            Self::BandDebated => "ink-band-debated",
            Self::BandSuboptimal => "ink-band-suboptimal",
            Self::BandOutside => "ink-band-outside",
            Self::BandUnsafe => "ink-band-unsafe",
            Self::SpreadSlanted => "ink-spread-slanted",
            Self::SpreadBroken => "ink-spread-broken",
            Self::Fault => "ink-fault",
            Self::Dimension => "ink-dimension",
            Self::Words => "ink-words",
            Self::Quiet => "ink-quiet",
            Self::Ground => "ink-ground",
        }
    }
}

/// Something that can be dragged, by pointer or by keys.
#[derive(Debug, Clone, PartialEq)]
pub struct Handle {
    /// Where it stands, in the figure's millimetres.
    pub at: P2,
    /// Its name, for those who cannot see it.
    pub label: String,
    /// What moves with it along the figure's x axis: the decision, and counts of it per millimetre
    /// to the right (negative where the decision grows to the left).
    pub across: Option<(Decision, f64)>,
    /// The same along the figure's y axis, downwards.
    pub down: Option<(Decision, f64)>,
    /// For an outline: which vertex of the decision's outline this is.
    pub vertex: Option<(Decision, usize)>,
    /// Whether it stands on the edge that begins at that vertex: taking hold of it makes a new one
    /// there. What cannot point has another way to do so, from the vertex.
    pub makes: bool,
}
