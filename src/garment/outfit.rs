//! Owns what is worn: one garment, or several together, each from one landmark to another.

use super::{Claim, Fabric, Garment, Wrap};
use crate::anatomy::{Landmark, Limb};
use crate::input::Text;

/// Most pieces worn together (house rule: a glove, a sleeve, an outer layer and a wrap).
pub const MOST_PIECES: usize = 4;

/// Most fabrics and wraps together (house rule: far above any use).
pub const MOST_FABRICS: usize = 8;

/// A garment or a wrap.
#[derive(Clone, Debug)]
pub enum Piece {
    /// A garment.
    Garment(Box<Garment>),
    /// A wrap.
    Wrap(Wrap),
}

impl Piece {
    /// Its label.
    pub fn label(&self) -> &Text {
        match self {
            Self::Garment(one) => &one.label,
            Self::Wrap(one) => &one.label,
        }
    }

    /// Its materials; none = unknown.
    pub fn materials(&self) -> Option<&[Text]> {
        match self {
            Self::Garment(one) => one.materials.as_deref(),
            Self::Wrap(one) => one.materials.as_deref(),
        }
    }
}

/// A piece with the part of the limb that it covers.
#[derive(Clone, Debug)]
pub struct Worn {
    /// What.
    pub piece: Piece,
    /// Distal end.
    pub from: Landmark,
    /// Proximal end.
    pub to: Landmark,
}

impl Worn {
    /// Whether it covers a landmark.
    pub fn covers(&self, landmark: Landmark) -> bool {
        (self.from..=self.to).contains(&landmark)
    }
}

/// Everything worn on one limb at once.
#[derive(Clone, Debug)]
pub struct Outfit {
    /// Its label.
    pub label: Text,
    /// Arm or leg.
    pub limb: Limb,
    /// Its style.
    pub style: Option<Text>,
    /// The class claimed for the whole.
    pub claim: Option<Claim>,
    /// The pieces, inner first; at least one, at most [`MOST_PIECES`].
    pub pieces: Vec<Worn>,
}

impl Outfit {
    /// One piece alone.
    pub fn of(piece: Piece) -> Self {
        let (limb, style, claim, from, to) = match &piece {
            Piece::Garment(one) => (one.limb, one.style.clone(), one.claim.clone(), one.from, one.to),
            Piece::Wrap(one) => (one.limb, None, None, one.from, one.to),
        };
        let label = piece.label().clone();
        Self { label, limb, style, claim, pieces: vec![Worn { piece, from, to }] }
    }

    /// The garments among the pieces.
    pub fn garments(&self) -> impl Iterator<Item = &Garment> {
        self.pieces.iter().filter_map(|worn| match &worn.piece {
            Piece::Garment(one) => Some(one.as_ref()),
            Piece::Wrap(_) => None,
        })
    }

    /// Whether nothing but bandages is worn.
    pub fn is_pulled(&self) -> bool {
        self.garments().next().is_none()
    }

    /// The most proximal end.
    pub fn to(&self) -> Landmark {
        self.pieces.iter().map(|worn| worn.to).max().unwrap_or(self.limb.reference())
    }

    /// The most distal end.
    pub fn from(&self) -> Landmark {
        self.pieces.iter().map(|worn| worn.from).min().unwrap_or(self.limb.reference())
    }

    /// All materials; none where one piece does not state its own.
    pub fn materials(&self) -> Option<Vec<Text>> {
        let lists: Option<Vec<&[Text]>> = self.pieces.iter().map(|worn| worn.piece.materials()).collect();
        lists.map(|lists| lists.concat())
    }

    /// Whether any piece has a hand part; none where none has and one does not say.
    pub fn hand_part(&self) -> Option<bool> {
        let said = self.garments().map(|one| one.hand_part).collect::<Vec<_>>();
        if said.contains(&Some(true)) || self.from().on_extremity() {
            Some(true)
        } else if said.is_empty() || said.contains(&None) {
            None
        } else {
            Some(false)
        }
    }

    /// Every fabric in it, each once; its place here is its number.
    pub fn fabrics(&self) -> Vec<&Fabric> {
        let mut found: Vec<&Fabric> = Vec::new();
        for fabric in self.garments().flat_map(Garment::fabrics) {
            if !found.iter().any(|other| other.is_same(fabric)) {
                found.push(fabric);
            }
        }
        found
    }
}
