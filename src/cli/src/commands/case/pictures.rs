//! Films and sections as PNG files.

use super::ruler;
use crate::{Fault, Streams, Why};
use engine::chart::Case;
use engine::imaging::{self, Aim, Noise, Setting, Slice, Time, View};
use engine::plan::{Draft, Plan};
use engine::solids::NOTICE;
use engine::units::Mm;
use std::fs::File;
use std::io::BufWriter;
use std::path::Path;

/// The window under which sections are written: from air to enamel.
const WINDOW: (f64, f64) = (1000.0, 4000.0);

/// Exposures of the same case have noise of their own.
const FILM: u32 = 0;
const SECTION: u32 = 1;
const SCANNER: u32 = 1000;

/// Writes a film of the case as it comes, after the extraction, after its whole sound plan, or
/// when that has healed.
pub fn film(
    case: &Case,
    sound: Option<&Draft>,
    [when, file]: &[String; 2],
    streams: &mut Streams<'_>,
) -> Result<(), Fault> {
    let whole = || {
        let plan = sound.and_then(|draft| Plan::from_draft(draft, case).ok());
        plan.ok_or_else(|| Fault::new(format!("{}: no sound plan is known", case.title)))
    };
    let (plan, time) = match when.as_str() {
        "before" => (Plan::default(), Time::Operation),
        "extracted" => {
            (Plan { extraction: whole()?.extraction, ..Plan::default() }, Time::Operation)
        }
        "after" => (whole()?, Time::Operation),
        "follow-up" => (whole()?, Time::FollowUp),
        _ => {
            return Err(Fault::new(format!("found the time \"{when}\", which does not exist"))
                .hint("films are before, extracted, after and follow-up"));
        }
    };
    let key = imaging::key(case);
    let scene = imaging::scene_at(case, &plan, time, key);
    let aim = Aim::usual(&case.site);
    let film = imaging::film(&scene, &case.site, &aim, &mut Noise::of(key, FILM));
    // Everything before the receptor looks larger than it is, by a twentieth or so.
    let View { pixels, pitch, .. } = film.view;
    let measured = "on the receptor";
    png(Path::new(file), &Picture { pixels, grey: &film.grey, pitch, measured }, streams)
}

/// Writes a section through the middle of the tooth, of the case as it comes.
pub fn section(
    case: &Case,
    [slice, file]: &[String; 2],
    streams: &mut Streams<'_>,
) -> Result<(), Fault> {
    let (slice, at) = match slice.as_str() {
        "along-arch" => (Slice::AlongArch, 0.0),
        "across-arch" => (Slice::AcrossArch, 0.0),
        // Just below the crest, where the plates are.
        "across-axis" => (Slice::AcrossAxis, 2.0),
        _ => {
            return Err(Fault::new(format!("found the section \"{slice}\", which does not exist"))
                .hint("the sections are along-arch, across-arch and across-axis"));
        }
    };
    let key = imaging::key(case);
    let scene = imaging::scene(case, &Plan::default(), key);
    let setting = Setting { at: Mm::new(at), ..Setting::usual(slice) };
    let noise = |exposure| Noise::of(key, exposure);
    let (mut scanner, mut exposure) = (noise(SCANNER), noise(SECTION));
    let taken = imaging::section(&scene, &case.site, &setting, &mut scanner, &mut exposure);
    let grey = taken.windowed(WINDOW.0, WINDOW.1);
    let picture =
        Picture { pixels: taken.pixels, grey: &grey, pitch: taken.voxel, measured: "in the site" };
    png(Path::new(file), &picture, streams)
}

/// A picture with its scale: how large a pixel is and of what that is the size.
struct Picture<'a> {
    pixels: [u32; 2],
    grey: &'a [u8],
    pitch: f64,
    measured: &'a str,
}

fn png(file: &Path, picture: &Picture<'_>, streams: &mut Streams<'_>) -> Result<(), Fault> {
    let what = || format!("cannot write {}", file.display());
    let [columns, rows] = picture.pixels;
    let out = BufWriter::new(File::create(file).why(what)?);
    let mut encoder = png::Encoder::new(out, columns, rows + ruler::ROWS);
    encoder.set_color(png::ColorType::Grayscale);
    encoder.set_depth(png::BitDepth::Eight);
    let per_metre = (1000.0 / picture.pitch).round() as u32;
    let unit = png::Unit::Meter;
    encoder.set_pixel_dims(Some(png::PixelDimensions { xppu: per_metre, yppu: per_metre, unit }));
    let scale = format!("{:.4} mm from pixel to pixel, {}", picture.pitch, picture.measured);
    for (key, text) in [("Comment", NOTICE), ("Scale", &scale)] {
        encoder.add_text_chunk(key.to_owned(), text.to_owned()).why(what)?;
    }
    let mut writer = encoder.write_header().why(what)?;
    let mut grey = picture.grey.to_vec();
    grey.extend(ruler::under(columns, 1.0 / picture.pitch));
    writer.write_image_data(&grey).why(what)?;
    writer.finish().why(what)?;
    streams.say(&format!("wrote {}", file.display()));
    Ok(())
}
