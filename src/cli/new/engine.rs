//! Owns the walk through the questions: forward, back, past, stop and go on. After every answer the file
//! is on disk.

use tapeline::input::{Draft, Problem};

use super::ask::{Ask, Typed};
use super::kept::Kept;
use super::step::Step;
use crate::cli::exit::Failure;

/// A doubt about the answer just given.
pub(super) struct Doubt {
    /// What is asked.
    pub(super) question: String,
    /// The words of `confirmed` that say that it holds.
    pub(super) words: Vec<String>,
    /// The prompt for the answer typed anew.
    pub(super) again: &'static str,
}

/// The questions of one kind of file.
pub(super) trait Script {
    /// Every question, in the order of the hand that works; it may depend on the answers so far.
    fn steps(&self, draft: &Draft) -> Vec<Step<'_>>;

    /// A doubt about the answer just given that is not answered yet.
    fn doubt(&self, _: &Draft, _: &str) -> Option<Doubt> {
        None
    }

    /// What is taken out when a question is asked again: the answer itself, unless it stands elsewhere.
    fn opened_again(&self, draft: &mut Draft, name: &str) {
        draft.remove(name);
    }

    /// What is still wrong with the whole.
    fn problems(&self, text: &str, file: &str) -> Vec<Problem>;

    /// What to do with the file now.
    fn afterwards(&self, file: &str) -> String;
}

/// Asks every question; whether the file is whole.
pub(super) fn run(
    script: &dyn Script,
    mut draft: Draft,
    kept: &Kept,
    ask: &mut Ask,
) -> Result<bool, Failure> {
    let file = kept.path.display().to_string();
    Ask::show(&format!(
        "Every answer is kept in {file} at once. Enter takes what stands in [ ]; `back`, `skip`,"
    ));
    Ask::show("`stop` and `?` work at any question; the same command goes on where you stopped.");
    let mut at = 0;
    loop {
        let steps = script.steps(&draft);
        // Forward to the first question that is neither answered nor passed over; `back` stays where it went.
        let Some(step) = steps.get(at) else { break };
        if step.done || draft.is_left_out(&step.name) {
            at += 1;
            continue;
        }
        match one(script, step, &mut draft, kept, ask)? {
            // An answered question is passed by the look at what is done; a list may have grown at its place.
            Moved::On => {
                let asked = step.name.clone();
                let again = script.steps(&draft).get(at).is_some_and(|next| next.name == asked && !next.done);
                if again && !draft.is_left_out(&asked) {
                    draft.leave_out(&asked);
                }
            }
            Moved::Again => {}
            Moved::Back => at = back(script, &mut draft, at),
            Moved::Stopped => {
                if !ask.has_asked() {
                    break;
                }
                Ask::show(&format!("Kept in {file}. To go on: the same command again."));
                return Ok(false);
            }
        }
    }
    let text = draft.to_text(true);
    kept.save(&text)?;
    let problems = script.problems(&text, &file);
    for problem in &problems {
        Ask::show(&problem.to_string());
    }
    if !draft.left_out().is_empty() {
        let said: Vec<String> = draft.left_out().iter().filter_map(|name| said(name)).collect();
        if !said.is_empty() {
            Ask::show(&format!("Passed over: {}.", said.join(", ")));
        }
    }
    Ask::show(&format!("Written: {file}. {}", script.afterwards(&file)));
    Ok(problems.is_empty())
}

/// What was passed over, in words; none for what was answered by no, or holds as it was shown.
fn said(name: &str) -> Option<String> {
    if matches!(name, "usual" | "widths" | "other_limb") || name.starts_with("lengths.") {
        return None;
    }
    let name = name.rsplit([':', '@']).next().unwrap_or(name);
    Some(name.replace("arterial.", "").replace(['_', '-', '.'], " "))
}

/// Where a question led.
enum Moved {
    On,
    /// The same question once more.
    Again,
    Back,
    Stopped,
}

fn one(
    script: &dyn Script,
    step: &Step<'_>,
    draft: &mut Draft,
    kept: &Kept,
    ask: &mut Ask,
) -> Result<Moved, Failure> {
    for line in &step.above {
        Ask::show(line);
    }
    let prompt = match &step.offered {
        Some(offered) => format!("{} [{offered}]", step.prompt),
        None if step.may_skip => format!("{} [pass over]", step.prompt),
        None => step.prompt.clone(),
    };
    loop {
        let text = match (ask.line(&prompt), &step.offered) {
            (Typed::Text(text), _) => text,
            (Typed::Nothing, Some(offered)) => offered.clone(),
            (Typed::Nothing | Typed::Skip, _) if step.may_skip => {
                draft.leave_out(&step.name);
                kept.save(&draft.to_text(false))?;
                return Ok(Moved::On);
            }
            (Typed::Nothing | Typed::Skip, _) => {
                Ask::show("This one is needed; `stop` keeps what there is so far.");
                continue;
            }
            (Typed::Help, _) => {
                let help = if step.help.is_empty() {
                    "Type the answer, or `back`, `skip`, `stop`."
                } else {
                    &step.help
                };
                Ask::show(help);
                continue;
            }
            (Typed::Back, _) => return Ok(Moved::Back),
            (Typed::Stop, _) => return Ok(Moved::Stopped),
        };
        let before = draft.clone();
        if let Err(what) = (step.take)(&text, draft) {
            *draft = before;
            Ask::show(&format!("  {what}"));
            continue;
        }
        kept.save(&draft.to_text(false))?;
        if let Some(elsewhere) = doubted(script, step, draft, kept, ask)? {
            return Ok(elsewhere);
        }
        return Ok(Moved::On);
    }
}

/// Asks about an answer that is in doubt until it holds; where that led, unless on.
fn doubted(
    script: &dyn Script,
    step: &Step<'_>,
    draft: &mut Draft,
    kept: &Kept,
    ask: &mut Ask,
) -> Result<Option<Moved>, Failure> {
    while let Some(doubt) = script.doubt(draft, &step.name) {
        Ask::show(&format!("  {}", doubt.question));
        match ask.line(&format!("  {}", doubt.again)) {
            Typed::Text(again) => {
                let before = draft.clone();
                if let Err(what) = (step.take)(&again, draft) {
                    *draft = before;
                    Ask::show(&format!("  {what}"));
                }
            }
            Typed::Stop => return Ok(Some(Moved::Stopped)),
            Typed::Back => {
                script.opened_again(draft, &step.name);
                kept.save(&draft.to_text(false))?;
                return Ok(Some(Moved::Again));
            }
            Typed::Help => Ask::show(
                "  Few adults have that, or tape or keyboard slipped. Enter says that it was looked at again and holds.",
            ),
            Typed::Nothing | Typed::Skip => {
                let mut words = draft.list("confirmed");
                words.extend(doubt.words.into_iter().filter(|one| !draft.list("confirmed").contains(one)));
                draft.set_list("confirmed", &words);
            }
        }
        kept.save(&draft.to_text(false))?;
    }
    Ok(None)
}

/// Opens the question before `at` again.
fn back(script: &dyn Script, draft: &mut Draft, at: usize) -> usize {
    let Some(before) = at.checked_sub(1) else { return 0 };
    let steps = script.steps(draft);
    let name = steps.get(before).map(|step| step.name.clone()).unwrap_or_default();
    draft.take_up(&name);
    script.opened_again(draft, &name);
    before
}
