//! Owns the one way of breaking text into lines.

/// Breaks a text at its spaces into lines of at most `width`, as `measure` gives each letter's width.
/// No-break spaces hold; a word wider than a line is cut. Each line but the last keeps its final space,
/// since level A of PDF/A wants word ends as characters. At least one line comes back.
pub fn wrap(text: &str, width: f32, measure: &dyn Fn(char) -> f32) -> Vec<String> {
    let wide = |text: &str| text.chars().map(measure).sum::<f32>();
    let mut lines = Vec::new();
    let mut line = String::new();
    let mut used = 0.0;
    for word in text.split_inclusive([' ', '\n']) {
        let bare = word.trim_end_matches([' ', '\n']);
        let bare_wide = wide(bare);
        if !line.is_empty() && used + bare_wide > width {
            lines.push(std::mem::take(&mut line));
            used = 0.0;
        }
        if used + bare_wide > width {
            // Wider than a line: letter by letter.
            for letter in bare.chars() {
                let here = measure(letter);
                if used + here > width && !line.is_empty() {
                    lines.push(std::mem::take(&mut line));
                    used = 0.0;
                }
                line.push(letter);
                used += here;
            }
        } else {
            line.push_str(bare);
            used += bare_wide;
        }
        if bare.len() < word.len() && !line.is_empty() {
            line.push(' ');
            used += measure(' ');
        }
    }
    if !line.is_empty() || lines.is_empty() {
        lines.push(line);
    }
    lines
}
