//! Owns the decision as the report holds it.

use serde::Serialize;

use crate::assessment::Outcome;
use crate::finding::{Who, spoken_list};
use crate::rules::Urgency;

/// The decision.
#[derive(Clone, Debug, Serialize)]
pub struct DecisionBlock {
    /// The outcome; null when no chart was given and nothing stands against a fitting.
    pub outcome: Option<Outcome>,
    /// Other outcomes that hold.
    pub also: Vec<Outcome>,
    /// How soon somebody has to act.
    pub urgency: Urgency,
    /// What it is about.
    pub subject: SubjectBlock,
    /// Why, in one sentence.
    pub reason: String,
    /// What to do next.
    pub next: String,
    /// Who acts.
    pub who: Vec<Who>,
    /// Who acts on which matter, most urgent first; `who` names each once.
    pub acts: Vec<ActBlock>,
    /// The day by which somebody acts on what is due soon; null where nothing is.
    pub by: Option<String>,
    /// The findings that decided it, by their places.
    pub findings: Vec<usize>,
}

/// Who acts on a matter, and how soon.
#[derive(Clone, Debug, Serialize)]
pub struct ActBlock {
    /// Any one of these.
    pub who: Vec<Who>,
    /// How soon.
    pub urgency: Urgency,
}

impl DecisionBlock {
    /// Who acts and how soon, most urgent first; empty where nobody is named and nothing presses.
    pub fn who_acts(&self) -> String {
        const MOST: usize = 4;
        if self.acts.len() < 2 {
            return timed(spoken_list(&self.who), self.when(self.urgency));
        }
        let mut said: Vec<String> = Vec::new();
        for (at, act) in self.acts.iter().enumerate().take(MOST) {
            // Said once, behind the last of those that are due alike.
            let last = self.acts.get(at + 1).is_none_or(|next| next.urgency != act.urgency) || at + 1 == MOST;
            let when = if last { self.when(act.urgency) } else { String::new() };
            said.push(timed(spoken_list(&act.who), when));
        }
        if self.acts.len() > MOST {
            said.push("others as named below".to_owned());
        }
        said.join("; ")
    }

    fn when(&self, urgency: Urgency) -> String {
        match (urgency, &self.by) {
            (Urgency::Emergency, _) => "at once".to_owned(),
            (Urgency::SameDay, _) => "today".to_owned(),
            (Urgency::Soon, Some(day)) => format!("by {day}"),
            (Urgency::Soon, None) => "soon".to_owned(),
            (Urgency::Routine, _) => String::new(),
        }
    }
}

fn timed(who: String, when: String) -> String {
    let both: Vec<String> = [who, when].into_iter().filter(|one| !one.is_empty()).collect();
    both.join(", ")
}

/// What the decision is about.
#[derive(Clone, Debug, Serialize)]
pub struct SubjectBlock {
    /// `client`, `chart` or `garment`.
    pub kind: &'static str,
    /// The limb, by its place.
    pub limb: Option<usize>,
    /// The chart, by its place within the limb.
    pub chart: Option<usize>,
    /// In words.
    pub name: String,
}
