//! Owns contraindications and cautions from the record: which questions apply and are open, what is
//! present and what it weighs, who has cleared what, the arterial decision of a leg, allergies against
//! materials, and what does not agree with itself.
//!
//! Gives typed results, no sentences. Never overrides a stop; an unknown answer is never a pass.
//!
//! Source: the items, limits and roles of the rules, each with its own basis; in the default set
//! mainly Rabe 2020, Phlebology 35:447.

mod case;
mod answer;
mod blocks;
mod re_order;
mod clearing;
mod present;
mod cap;
mod judged;
mod arterial;
mod settle;
mod materials;
mod consistency;
mod check;

pub use answer::{Answer, WhyOpen};
pub use arterial::ArterialDecision;
pub use cap::{CapHeld, cap_mmhg};
pub use case::Case;
pub use check::check_answers;
pub use clearing::{Clearing, WhyVain};
pub use consistency::{DateOf, Inconsistent, inconsistencies};
pub use judged::{Age, ArterialFigure, JudgedValue};
pub use materials::{AllergyWords, MaterialVerdict, against_materials, allergy_words};
pub use present::Present;
pub use re_order::{ReOrder, WhyNoReOrder, carried_over};
pub use settle::{Screened, Stale, Unanswered, finding_clearing, settle};
