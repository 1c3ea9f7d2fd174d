//! Owns what was done otherwise at a visit than at an earlier one.

use crate::input::Text;
use crate::record::{Origin, VolumeMethod};

/// One difference of protocol.
#[derive(Clone, Debug, PartialEq)]
pub enum ProtocolChange {
    /// Another way to work out the volume.
    Method(VolumeMethod, VolumeMethod),
    /// Positions counted from elsewhere.
    Origin(Origin, Origin),
    /// The first mark stands elsewhere, cm.
    Start(f64, f64),
    /// The marks stand at other positions.
    Spacing,
    /// One visit has further marks; the shared ones are compared.
    FurtherMarks {
        /// How many are shared.
        shared: usize,
    },
    /// Measured in another posture.
    Posture(Text, Text),
    /// Measured by someone else.
    Observer(Text, Text),
    /// Measured at another time of day, hours apart.
    Hour(f64),
}

impl ProtocolChange {
    /// Whether volumes before and after it are two series, never compared.
    pub fn starts_series(&self) -> bool {
        match self {
            Self::Method(..) | Self::Origin(..) | Self::Start(..) | Self::Spacing | Self::Posture(..) => true,
            Self::FurtherMarks { .. } | Self::Observer(..) | Self::Hour(_) => false,
        }
    }
}
