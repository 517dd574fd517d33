//! Sections against closed forms, and what they show of a site.

use super::materials::Beam;
use super::*;
use crate::anatomy::{Defect, DefectKind, Wall};
use crate::chart::Case;
use crate::geometry::{Outline, P2, P3};
use crate::plan::Plan;
use crate::rules::trial::Trial;
use crate::units::Mm;
use materials::Material;

fn slab(width: f64) -> Scene {
    phantom::plate(Mm::new(width))
}

fn take(scene: &Scene, setting: &Setting) -> Section {
    let site = Trial::plain().case.site;
    section(scene, &site, setting, &mut Noise::of([1; 32], 0), &mut Noise::of([1; 32], 1))
}

/// The same without noise and shading.
fn quiet(scene: &Scene, setting: &Setting) -> Section {
    let taken = take(scene, setting);
    Section { grey: taken.hounsfield.clone(), ..taken }
}

fn across(voxel: f64, blur: f64) -> Setting {
    Setting { voxel: Mm::new(voxel), blur: Mm::new(blur), ..Setting::usual(Slice::AcrossArch) }
}

#[test]
fn the_peak_of_a_thin_plate_is_that_of_the_closed_form() {
    // evidence: anatomy B4: erf(w / (2 sqrt2 sigma)).
    for blur in [0.148, 0.18, 0.213] {
        for width in [0.2, 0.3, 0.5, 0.8, 1.0, 1.5] {
            let scene = slab(width);
            let taken = quiet(&scene, &across(0.1, blur));
            let own = scene.coefficients(Beam::ConeBeam);
            let [soft, bone] =
                [Material::Soft, Material::Cortical].map(|m| own.hounsfield(own.of(m)));
            let [column, row] = taken.place(P3::new(0.0, -2.0, 6.0)).map(libm::round);
            let peak = (taken.grey_at([column, row]) - soft) / (bone - soft);
            // The middle of the nearest voxel lies up to half of one beside the plate's middle.
            let off = taken.point(column, row).y + 2.0;
            let edge = |at: f64| libm::erf(at / (core::f64::consts::SQRT_2 * blur));
            let closed = 0.5 * (edge(off + 0.5 * width) - edge(off - 0.5 * width));
            let at_peak = libm::erf(width / (2.0 * core::f64::consts::SQRT_2 * blur));
            assert!((closed - at_peak).abs() < 0.05, "{off}");
            assert!((peak - closed).abs() < 0.02, "{width} {blur}: {peak} {closed}");
        }
    }
}

#[test]
fn a_thick_plate_measures_true_and_a_thin_one_too_thick() {
    let apparent = |width: f64| {
        let taken = quiet(&slab(width), &across(0.2, 0.18));
        let [from, to] = [-5.0, 1.0].map(|y| {
            let [column, row] = taken.place(P3::new(0.0, y, 6.0));
            P2::new((column + 0.5) * 0.2, (row + 0.5) * 0.2)
        });
        let read = taken.caliper(from, to);
        assert!((read.straight.get() - 6.0).abs() < 1e-9);
        read.apparent.unwrap().get()
    };
    for width in [1.0, 1.5, 2.5] {
        assert!((apparent(width) - width).abs() < 0.06, "{width}: {}", apparent(width));
    }
    // Below twice the blur's own width at half height (0.42 mm) a plate never looks thinner than that.
    for width in [0.1, 0.2, 0.3] {
        assert!((0.4..0.55).contains(&apparent(width)), "{width}: {}", apparent(width));
    }
}

#[test]
fn blur_reaches_through_the_plane_as_far_as_along_it() {
    // The plate parallel to the plane of the section, seen while the plane moves away from it.
    let (scene, blur, width) = (slab(0.5), 0.18, 0.5);
    let own = scene.coefficients(Beam::ConeBeam);
    let [soft, bone] = [Material::Soft, Material::Cortical].map(|m| own.hounsfield(own.of(m)));
    for off in [0.0, 0.15, 0.3, 0.45, 0.6, 1.0] {
        let setting = Setting { at: Mm::new(off - 2.0), ..Setting::usual(Slice::AlongArch) };
        let taken = quiet(&scene, &setting);
        let found = (taken.grey_at([50.0, 50.0]) - soft) / (bone - soft);
        let edge = |at: f64| libm::erf(at / (core::f64::consts::SQRT_2 * blur));
        let closed = 0.5 * (edge(off + 0.5 * width) - edge(off - 0.5 * width));
        // Seven planes stand for the depth of the blur.
        assert!((found - closed).abs() < 0.2, "{off}: {found} {closed}");
    }
}

fn gone(case: &mut Case) {
    let outline = Outline::new(vec![[-25, 0], [25, 0], [20, 80], [-20, 80]]).unwrap();
    let kind = DefectKind::DehiscenceU;
    case.site.defects.push(Defect { wall: Wall::Facial, kind, outline });
}

#[test]
fn a_lost_facial_wall_shows_across_the_arch() {
    let whole = Trial::plain().case;
    let mut lost = whole.clone();
    gone(&mut lost);
    let at = |case: &Case| {
        let scene = scene(case, &Plan::default(), [4; 32]);
        let taken = quiet(&scene, &Setting::usual(Slice::AcrossArch));
        taken.grey_at(taken.place(P3::new(0.0, 3.75, 2.0)))
    };
    assert!(at(&whole) > at(&lost) + 600.0, "{} {}", at(&whole), at(&lost));
}

#[test]
fn every_plane_shows_the_point_that_it_is_asked_for() {
    let case = Trial::plain().case;
    let scene = scene(&case, &Plan::default(), [4; 32]);
    let root = P3::new(1.5, 0.5, 4.0);
    for (slice, at) in
        [(Slice::AlongArch, root.y), (Slice::AcrossArch, root.x), (Slice::AcrossAxis, root.z)]
    {
        let taken = quiet(&scene, &Setting { at: Mm::new(at), ..Setting::usual(slice) });
        let place = taken.place(root);
        let back = taken.point(place[0], place[1]);
        assert!((back - root).length() < 1e-9, "{slice:?}");
        // Dentine, 2570 Hounsfield units.
        assert!((taken.grey_at(place) - 2570.0).abs() < 60.0, "{slice:?} {}", taken.grey_at(place));
        assert_eq!(taken.grey.len(), (taken.pixels[0] * taken.pixels[1]) as usize);
    }
}

#[test]
fn noise_in_soft_tissue_falls_as_voxels_grow_and_belongs_to_the_exposure() {
    let scene = slab(0.01);
    let spread = |voxel: f64| {
        let taken = take(&scene, &across(voxel, 0.18));
        let wide = taken.pixels[0] as usize;
        // Within one row, away from the slab, shading is next to nothing.
        let row = &taken.grey[40 * wide..40 * wide + wide / 3];
        let mean = row.iter().sum::<f64>() / row.len() as f64;
        let squares = row.iter().map(|v| (v - mean) * (v - mean)).sum::<f64>();
        libm::sqrt(squares / row.len() as f64)
    };
    assert!((40.0..85.0).contains(&spread(0.2)), "{}", spread(0.2));
    assert!(spread(0.1) > 1.5 * spread(0.2) && spread(0.4) < 0.7 * spread(0.2));
    let taken = take(&scene, &across(0.2, 0.18));
    assert_eq!(taken, take(&scene, &across(0.2, 0.18)));
}
