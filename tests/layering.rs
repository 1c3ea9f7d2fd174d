//! The house: rooms import only rooms above them, and keep off what is not theirs.

use crate::support::root;

/// The rooms in the order of `src/lib.rs`.
fn rooms() -> Vec<String> {
    let lib = std::fs::read_to_string(root().join("src/lib.rs")).unwrap();
    lib.lines()
        .filter_map(|line| line.strip_prefix("pub mod ")?.strip_suffix(';'))
        .map(str::to_owned)
        .collect()
}

/// Every source file of a room with its text, comments taken out.
fn files(room: &str) -> Vec<(String, String)> {
    let mut found = Vec::new();
    let mut folders = vec![root().join("src").join(room)];
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(&folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|ext| ext == "rs") {
                let text = std::fs::read_to_string(&path).unwrap();
                let code: Vec<&str> =
                    text.lines().filter(|line| !line.trim_start().starts_with("//")).collect();
                found.push((path.display().to_string(), code.join("\n")));
            }
        }
    }
    found
}

#[test]
fn a_room_imports_only_rooms_above_it() {
    let rooms = rooms();
    assert!(rooms.len() >= 14, "rooms: {rooms:?}");
    for (place, room) in rooms.iter().enumerate() {
        for (path, code) in files(room) {
            for below in rooms.iter().skip(place + 1) {
                assert!(
                    !code.contains(&format!("crate::{below}::")),
                    "{path}: `{room}` uses `{below}`, which stands below it"
                );
            }
        }
    }
}

#[test]
fn rooms_keep_off_what_is_not_theirs() {
    let forbidden = [
        "println!",
        "eprintln!",
        "std::env",
        "clap",
        "anyhow",
        "ZonedDateTime::now",
        "SystemTime",
        "Instant::now",
    ];
    for room in rooms() {
        for (path, code) in files(&room) {
            for word in forbidden {
                assert!(!code.contains(word), "{path}: `{word}` does not belong in the library");
            }
            if room != "input" {
                for word in ["std::fs", "serde_yaml", "csv::"] {
                    assert!(!code.contains(word), "{path}: `{word}` belongs in `input` only");
                }
            }
        }
    }
}

#[test]
fn modules_stay_readable() {
    let mut lengths: Vec<(usize, String)> = Vec::new();
    let mut all = rooms();
    all.push("cli".to_owned());
    for room in all {
        for (path, _) in files(&room) {
            lengths.push((std::fs::read_to_string(&path).unwrap().lines().count(), path));
        }
    }
    lengths.sort();
    let (longest, path) = lengths.last().unwrap();
    assert!(*longest <= 600, "{path} has {longest} lines");
    let median = lengths[lengths.len() / 2].0;
    assert!(median <= 150, "the median module has {median} lines");
    let ninth = &lengths[lengths.len() * 9 / 10];
    assert!(ninth.0 < 400, "{} has {} lines; nine in ten stay under 400", ninth.1, ninth.0);
}
