//! The roots of a site written out: one, or a trunk with two or three.

use super::read::Table;
use crate::anatomy::{Branch, Jaw, Parted, RootBody, RootName, Roots, Socket, Tooth, Trunk};

/// What a root of several may be called.
const NAMES: &[(&str, RootName)] = &[
    (RootName::Mesial.key(), RootName::Mesial),
    (RootName::Distal.key(), RootName::Distal),
    (RootName::Facial.key(), RootName::Facial),
    (RootName::Mesiofacial.key(), RootName::Mesiofacial),
    (RootName::Distofacial.key(), RootName::Distofacial),
    (RootName::Palatal.key(), RootName::Palatal),
];

/// The socket of a site: `root`, or `trunk` with its list of roots; never both, never neither. `tooth`
/// is missing where it could not be read.
pub(super) fn read(site: &mut Table<'_>, tooth: Option<Tooth>) -> Option<Socket> {
    let Some(place) = site.maybe("trunk").map(|node| node.place) else {
        let socket = site.table("root").and_then(root).map(Socket::one);
        if let Some(tooth) = tooth.filter(|tooth| tooth.position() > 5) {
            let place = site.maybe("tooth").map_or(site.place, |node| node.place);
            let says = format!(
                "found {tooth} with one root, expected a trunk with its roots, or position 1 to 5"
            );
            site.fault("tooth", place, says);
            return None;
        }
        return socket;
    };
    if let Some(also) = site.maybe("root") {
        site.fault("root", also.place, "found a root beside a trunk, expected one of both");
    }
    let parted = site.table("trunk").and_then(parted)?;
    if let Some(tooth) = tooth
        && !fits(tooth, &parted.roots)
    {
        let found: Vec<&str> = parted.roots.names().iter().map(|name| name.key()).collect();
        let says =
            format!("found {} roots of tooth {tooth}, which has other ones", found.join(", "));
        site.fault("trunk", place, says);
        return None;
    }
    Some(Socket::Parted(parted))
}

/// Whether a tooth may have these roots: two in upper premolars and lower molars, three in upper molars
/// and, seldom, first premolars (1.8 % of 165, Dababneh and Rodan 2013, confirmed).
const fn fits(tooth: Tooth, roots: &Roots) -> bool {
    matches!(
        (tooth.jaw(), tooth.position(), roots),
        (Jaw::Maxilla, 4 | 5, Roots::FacialPalatal(_))
            | (Jaw::Maxilla, 4 | 6 | 7, Roots::Three(_))
            | (Jaw::Mandible, 6 | 7, Roots::MesialDistal(_))
    )
}

fn parted(mut table: Table<'_>) -> Option<Parted> {
    let neck = table.mm("neck-mm", 0.0..=8.0);
    let furcation = table.mm("furcation-mm", 0.1..=14.0);
    let half_md = table.mm("half-width-mesiodistal-mm", 1.5..=7.0);
    let half_fo = table.mm("half-width-faciooral-mm", 1.5..=7.0);
    let narrowing = table.number("narrowing", 0.3..=1.0);
    let place = table.maybe("root").map_or(table.place, |node| node.place);
    let read: Vec<Option<(RootName, Branch)>> =
        table.tables("root", 3).into_iter().map(branch).collect();
    let whole: Option<Vec<(RootName, Branch)>> = read.into_iter().collect();
    let roots = whole.and_then(|mut all| {
        all.sort_by_key(|(name, _)| *name);
        let found: Vec<&str> = all.iter().map(|(name, _)| name.key()).collect();
        let roots = named(&all);
        if roots.is_none() {
            let says = format!(
                "found {}, expected facial and palatal, mesial and distal, or mesiofacial, distofacial and palatal",
                if found.is_empty() { "no roots".to_owned() } else { found.join(", ") },
            );
            table.fault("root", place, says);
        }
        roots
    });
    table.finish();
    let trunk = Trunk {
        neck: neck?,
        furcation: furcation?,
        half_md: half_md?,
        half_fo: half_fo?,
        narrowing: narrowing?,
    };
    Some(Parted { trunk, roots: roots? })
}

/// The roots in their places, from a list in the order of [`RootName`].
fn named(all: &[(RootName, Branch)]) -> Option<Roots> {
    use RootName::{Distal, Distofacial, Facial, Mesial, Mesiofacial, Palatal};
    Some(match all {
        [(Mesial, a), (Distal, b)] => Roots::MesialDistal([a.clone(), b.clone()]),
        [(Facial, a), (Palatal, b)] => Roots::FacialPalatal([a.clone(), b.clone()]),
        [(Mesiofacial, a), (Distofacial, b), (Palatal, c)] => {
            Roots::Three([a.clone(), b.clone(), c.clone()])
        }
        _ => return None,
    })
}

fn branch(mut table: Table<'_>) -> Option<(RootName, Branch)> {
    let name = table.one("name", NAMES);
    let (x, y) = (table.mm("x-mm", -6.0..=6.0), table.mm("y-mm", -6.0..=6.0));
    let (tilt, tip) = (table.degrees("tilt-degrees", 35.0), table.degrees("tip-degrees", 35.0));
    let length = table.mm("length-mm", 2.0..=24.0);
    let half_md = table.mm("half-width-mesiodistal-mm", 0.5..=4.0);
    let half_fo = table.mm("half-width-faciooral-mm", 0.5..=6.0);
    let taper = table.number("taper", 0.0..=1.0);
    table.finish();
    let branch = Branch {
        x: x?,
        y: y?,
        tilt: tilt?,
        tip: tip?,
        length: length?,
        half_md: half_md?,
        half_fo: half_fo?,
        taper: taper?,
    };
    Some((name?, branch))
}

pub(super) fn root(mut table: Table<'_>) -> Option<RootBody> {
    let (x, y) = (table.mm("x-mm", -15.0..=15.0), table.mm("y-mm", -6.0..=6.0));
    let (tilt, tip) = (table.degrees("tilt-degrees", 30.0), table.degrees("tip-degrees", 30.0));
    let length = table.mm("length-mm", 4.0..=28.0);
    let neck = table.mm("neck-mm", 0.0..=8.0);
    let half_md = table.mm("half-width-mesiodistal-mm", 0.8..=6.0);
    let half_fo = table.mm("half-width-faciooral-mm", 0.8..=6.0);
    let taper = table.number("taper", 0.0..=1.0);
    table.finish();
    Some(RootBody {
        x: x?,
        y: y?,
        tilt: tilt?,
        tip: tip?,
        length: length?,
        neck: neck?,
        half_md: half_md?,
        half_fo: half_fo?,
        taper: taper?,
    })
}
