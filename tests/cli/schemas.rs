//! `tests/schemas` documents what `--json` prints: it must be what the shapes say today.
//!
//! `WALLWISE_UPDATE_SCHEMAS=1 cargo test -p wallwise --test cli schemas` writes them anew. That real
//! outputs keep to them is checked from outside, by `tests/outside/check_schemas.py`.

use std::env;
use std::fs;
use std::path::Path;

use schemars::generate::SchemaSettings;
use schemars::{JsonSchema, Schema};
use wallwise::shapes::{
    Blueprint, CheckedSet, ClassReport, Judgement, OneCase, OneRule, Population, Replayed, RuleBook,
};

/// What a program may rely on when it reads: every key that is always printed is required.
fn printed<T: JsonSchema>() -> Schema {
    SchemaSettings::draft2020_12().for_serialize().into_generator().into_root_schema_for::<T>()
}

#[test]
fn the_schemas_are_those_of_today_s_shapes() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/schemas");
    for (name, schema) in [
        ("judge", printed::<Judgement>()),
        ("rules", printed::<RuleBook>()),
        ("explain", printed::<OneRule>()),
        ("case", printed::<OneCase>()),
        ("population", printed::<Population>()),
        ("set", printed::<CheckedSet>()),
        ("replay", printed::<Replayed>()),
        ("class", printed::<ClassReport>()),
        ("blueprint", printed::<Blueprint>()),
    ] {
        let file = folder.join(name).with_extension("json");
        let today = serde_json::to_string_pretty(&schema).expect("a schema is JSON") + "\n";
        if env::var_os("WALLWISE_UPDATE_SCHEMAS").is_some() {
            fs::create_dir_all(&folder).expect("the folder can be made");
            fs::write(&file, &today).expect("the schema can be written");
        }
        let kept = fs::read_to_string(&file).unwrap_or_default();
        assert!(
            kept == today,
            "tests/schemas/{name}.json is not what the shapes say: look at the change, then run \
             with WALLWISE_UPDATE_SCHEMAS=1"
        );
    }
}
