//! Owns which characters can be set one after the other.

/// Whether a character needs neither shaping, mark positioning, bidirectional order nor invisible
/// formatting. Source: the Unicode block ranges.
pub(super) fn is_simple(c: char) -> bool {
    !c.is_control()
        && !matches!(u32::from(c),
            0x00AD                      // soft hyphen
            | 0x0300..=0x036F           // combining marks
            | 0x0483..=0x0489
            | 0x0590..=0x109F           // Hebrew, Arabic, Indic, Thai, Lao, Tibetan, Burmese
            | 0x1100..=0x1CFF           // Hangul Jamo to Vedic
            | 0x1DC0..=0x1DFF
            | 0x200B..=0x200F | 0x2028..=0x202E | 0x2060..=0x206F
            | 0x20D0..=0x20FF
            | 0xD7B0..=0xF8FF           // surrogates, private use
            | 0xFB1D..=0xFDFF | 0xFE00..=0xFE0F | 0xFE20..=0xFE2F | 0xFE70..=0xFEFF
            | 0xFFF0..=0xFFFF
            | 0xE0000..)
}

/// Whether it is a mark that belongs on the letter before it.
pub(super) fn is_combining(c: char) -> bool {
    matches!(u32::from(c), 0x0300..=0x036F | 0x1DC0..=0x1DFF | 0x20D0..=0x20FF)
}
