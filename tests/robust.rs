//! Mutated and hostile input, in process: a file is read, or what is wrong with it is told; never a panic, never
//! silence, never a character that a terminal obeys.
//!
//! The mutations are deterministic. `TAPELINE_TURNS=1000000 cargo test --release robust -- --nocapture` runs longer.

use std::path::{Path, PathBuf};

use tapeline::assessment::{Setting, assess, open_files};
use tapeline::garment::{Schemes, open_chart, open_fabric, open_outfit};
use tapeline::input::{Draft, FileKind, Problem, Source, Table};
use tapeline::rules::read_rules;

use crate::made;

/// A generator of numbers (xorshift64*, Vigna 2016, ACM Trans Math Softw 42:30).
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        self.0.wrapping_mul(0x2545_f491_4f6c_dd1d)
    }

    fn below(&mut self, most: usize) -> usize {
        if most == 0 { 0 } else { (self.next() % most as u64) as usize }
    }
}

/// Pieces that files are broken with.
const PIECES: [&str; 44] = [
    "\u{0}",
    "\u{1b}]0;x\u{7}",
    "\u{202e}",
    "\u{feff}",
    "\u{2028}",
    "\t",
    "\r",
    "\n",
    " ",
    "&a ",
    "*a",
    "!!int ",
    "!x ",
    "[",
    "]",
    "{",
    "}",
    ",",
    ":",
    ": ",
    "- ",
    "#",
    "\"",
    "'",
    "|",
    ">",
    "---\n",
    "...\n",
    "%YAML 1.1\n",
    "<<: *a",
    "? ",
    "~",
    "null",
    "yes",
    "-",
    "-0",
    "1e9",
    ".nan",
    "0,5",
    "99999999999999999999",
    "16½",
    "кг",
    "\u{fffd}",
    "tapeline: record/1\n",
];

/// The name that every broken file has: in the demo, so that the files it names are there.
const FILE: &str = "demo/x.yaml";

fn seeds() -> Vec<(PathBuf, Vec<u8>)> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut found = Vec::new();
    let mut folders = vec![root.join("demo"), root.join("garment-tables"), root.join("tests/malformed")];
    while let Some(folder) = folders.pop() {
        let mut entries: Vec<PathBuf> =
            std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
        entries.sort();
        for path in entries {
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|ext| ext == "yaml" || ext == "csv") {
                found.push((path.clone(), std::fs::read(path).unwrap()));
            }
        }
    }
    assert!(found.len() > 300, "{} seeds", found.len());
    // Whole files first.
    found.sort_by_key(|(path, _)| path.components().any(|part| part.as_os_str() == "malformed"));
    found
}

/// One to four changes: bytes, pieces, lines, values between files.
fn broken(seed: &[u8], other: &[u8], chance: &mut Chance) -> Vec<u8> {
    let mut bytes = seed.to_vec();
    for _ in 0..=chance.below(3) {
        let at = chance.below(bytes.len() + 1);
        match chance.below(8) {
            0 if at < bytes.len() => bytes[at] = (chance.next() & 0xff) as u8,
            1 if at < bytes.len() => {
                bytes.remove(at);
            }
            2 => {
                let piece = PIECES[chance.below(PIECES.len())];
                bytes.splice(at..at, piece.bytes());
            }
            3 => bytes.truncate(at),
            kind => {
                let mut lines: Vec<Vec<u8>> =
                    bytes.split(|byte| *byte == b'\n').map(<[u8]>::to_vec).collect();
                let one = chance.below(lines.len());
                match kind {
                    4 => {
                        lines.remove(one);
                    }
                    5 => lines.insert(one, lines[chance.below(lines.len())].clone()),
                    6 => {
                        let theirs: Vec<&[u8]> = other.split(|byte| *byte == b'\n').collect();
                        lines.insert(one, theirs[chance.below(theirs.len())].to_vec());
                    }
                    _ => {
                        let to = chance.below(lines.len());
                        lines.swap(one, to);
                    }
                }
                bytes = lines.join(&b'\n');
            }
        }
    }
    bytes
}

/// What is told holds to its form.
#[track_caller]
fn told(problems: &[Problem], text: &str) {
    assert!(!problems.is_empty(), "refused without a word");
    assert!(problems.len() <= 51, "{} problems", problems.len());
    let lines = text.split('\n').count();
    for problem in problems {
        let said = problem.to_string();
        let obeyed = said.chars().find(|c| {
            (c.is_control() && *c != '\n') || matches!(c, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
        });
        assert_eq!(obeyed, None, "{said:?}");
        assert!(said.len() < 6_000, "{} bytes", said.len());
        assert!(!problem.what.is_empty() || problem.count > 0);
        // A place in a file that this one names may lie beyond it.
        if let Some(place) = &problem.place
            && problem.file == FILE
        {
            assert!(place.line >= 1 && place.column >= 1 && place.line <= lines + 1, "{said}");
        }
    }
}

fn read(bytes: Vec<u8>, setting: &Setting) -> bool {
    let text = String::from_utf8_lossy(&bytes).into_owned();
    let source = match Source::from_bytes(FILE.to_owned(), bytes) {
        Ok(source) => source,
        Err(problem) => {
            told(&[problem], &text);
            return false;
        }
    };
    let kind = source.kind();
    if let Ok(draft) = Draft::read(&source, kind.unwrap_or(FileKind::Record)) {
        // A draft is a file again.
        let again = Source::from_bytes(FILE.to_owned(), draft.to_text(true).into_bytes()).unwrap();
        assert!(again.kind().is_some() || kind.is_none(), "{}", again.text);
    }
    let found = match kind {
        Some(FileKind::Record | FileKind::Visits) => open_files(vec![source], setting).map(|opened| {
            let _ = assess(&opened, setting);
        }),
        Some(FileKind::Chart) => open_chart(source, &setting.schemes).map(|_| ()),
        Some(FileKind::Garment | FileKind::Wrap) => open_outfit(source, &setting.schemes).map(|_| ()),
        Some(FileKind::Fabric) => open_fabric(source).map(|_| ()),
        Some(FileKind::Scheme) => Schemes::with_files(vec![source]).map(|_| ()),
        Some(FileKind::Rules) => read_rules(Some(source)).map(|_| ()),
        None => {
            let table = Table::read(source.clone()).map(|_| ()).map_err(|problem| vec![problem]);
            let files = open_files(vec![source], setting).map(|_| ());
            table.and(files)
        }
    };
    match found {
        Ok(()) => true,
        Err(problems) => {
            told(&problems, &text);
            false
        }
    }
}

#[test]
fn mutated_files_are_read_or_told() {
    let turns: u64 = std::env::var("TAPELINE_TURNS").ok().and_then(|text| text.parse().ok()).unwrap_or(3_000);
    let setting =
        Setting { today: made::day("2026-03-14"), rules: made::rules(), schemes: Schemes::default() };
    let seeds = seeds();
    let malformed = |path: &Path| path.components().any(|part| part.as_os_str() == "malformed");
    let whole_seeds = seeds.iter().take_while(|(path, _)| !malformed(path)).count();
    let mut chance = Chance(0x7461_7065_6c69_6e65);
    let mut whole = 0_u64;
    for turn in 0..turns {
        // Three of four are broken from a whole file.
        let among = if chance.below(4) == 0 { seeds.len() } else { whole_seeds };
        let (_, seed) = &seeds[chance.below(among)];
        let (_, other) = &seeds[chance.below(seeds.len())];
        let bytes = broken(seed, other, &mut chance);
        let kept = bytes.clone();
        let start = std::time::Instant::now();
        let done = std::panic::catch_unwind(std::panic::AssertUnwindSafe(|| read(bytes, &setting)));
        let Ok(done) = done else {
            panic!("turn {turn}:\n{}", String::from_utf8_lossy(&kept));
        };
        whole += u64::from(done);
        assert!(start.elapsed().as_secs() < 20, "turn {turn} took {:?}", start.elapsed());
    }
    println!("{turns} files, {whole} read whole");
    assert!(whole > turns / 50, "only {whole} of {turns} are read at all");
}
