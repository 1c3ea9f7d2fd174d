//! Owns a drawing together with how it reads where nothing can be drawn.

use super::{Letters, Scene};

/// A drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// The shapes, for paper and screen.
    pub scene: Scene,
    /// The same in letters; without it the scene's description stands for it.
    pub letters: Option<Letters>,
}

impl From<Scene> for Figure {
    fn from(scene: Scene) -> Self {
        Self { scene, letters: None }
    }
}
