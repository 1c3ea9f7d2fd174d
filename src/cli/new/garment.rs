//! Owns the guided garment: what it says of itself, then its flat widths down the limb.

use tapeline::anatomy::{Landmark, Limb};
use tapeline::garment::{Schemes, open_outfit};
use tapeline::input::{Draft, Problem, Source};
use tapeline::render::where_is;
use tapeline::words;

use super::engine;
use super::step::Step;
use super::{answer, chart, claimed};

/// The guided garment.
pub(super) struct Script {
    /// The schemes.
    pub(super) schemes: Schemes,
}

impl engine::Script for Script {
    fn steps(&self, draft: &Draft) -> Vec<Step<'_>> {
        let mut steps = chart::about(draft, &self.schemes);
        let Some(limb) = draft.text("limb").and_then(|word| Limb::parse(&word)) else { return steps };
        for landmark in Landmark::of(limb).iter().copied() {
            let path = format!("flat_width.{}", landmark.name());
            let target = path.clone();
            steps.push(
                Step::new(draft, path, format!("{}, flat width:", words::label(landmark)), move |text, draft| {
                    let all = answer::numbers(draft, text)?;
                    match all.as_slice() {
                        [one] => draft.set(&target, one),
                        several => draft.set_list(&target, several),
                    }
                    Ok(())
                })
                .above([format!("{}: {}", words::label(landmark), where_is(landmark))])
                .help("Lay the garment flat without a pull and measure across where the mark will lie; half its girth. Several widths of one mark as 6.5 6.6. Enter passes over.")
                .or_skip(),
            );
        }
        steps
    }

    fn opened_again(&self, draft: &mut Draft, name: &str) {
        if !claimed::open_again(draft, name) {
            draft.remove(name);
        }
    }

    fn problems(&self, text: &str, file: &str) -> Vec<Problem> {
        match Source::from_bytes(file.to_owned(), text.as_bytes().to_vec()) {
            Ok(source) => open_outfit(source, &self.schemes).err().unwrap_or_default(),
            Err(problem) => vec![problem],
        }
    }

    fn afterwards(&self, file: &str) -> String {
        format!("Next: tapeline gradient RECORD.yaml {file}")
    }
}
