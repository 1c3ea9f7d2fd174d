//! The text of a PDF as this program writes it, read by the rules of ISO 32000-1: streams inflated, codes of two bytes
//! mapped by the font's `ToUnicode`, a line for each piece of text.
#![cfg(feature = "pdf")]

use std::collections::BTreeMap;
use std::io::Read as _;

/// Objects by number: what stands before a stream, and the stream.
type Objects = BTreeMap<u32, (String, Vec<u8>)>;

/// The text of every page, in the order of the file.
pub fn text(pdf: &[u8]) -> String {
    let objects = objects(pdf);
    let mut out = String::new();
    for (dict, _) in objects.values().filter(|(dict, _)| dict.contains("/Type/Page/")) {
        let named = |key: &str| &objects[&reference(dict, key).unwrap_or_else(|| panic!("{key}: {dict}"))];
        let fonts = named("/Resources").0.clone();
        out.push_str(&of_page(&objects, &fonts, &named("/Contents").1));
    }
    out
}

fn find(all: &[u8], what: &[u8], from: usize) -> Option<usize> {
    all.get(from..)?.windows(what.len()).position(|part| part == what).map(|at| at + from)
}

fn objects(pdf: &[u8]) -> Objects {
    let (mut found, mut from) = (BTreeMap::new(), 0);
    while let Some(at) = find(pdf, b" 0 obj", from) {
        let digits = pdf[..at].iter().rev().take_while(|byte| byte.is_ascii_digit()).count();
        let number = String::from_utf8_lossy(&pdf[at - digits..at]).parse().unwrap();
        let end = find(pdf, b"endobj", at).unwrap();
        let stream = find(&pdf[..end], b"stream", at);
        let dict = String::from_utf8_lossy(&pdf[at + 6..stream.unwrap_or(end)]).into_owned();
        let mut inflated = Vec::new();
        from = end;
        if let Some(stream) = stream {
            let length: usize = word_after(&dict, "/Length ").unwrap().parse().unwrap();
            let begin = find(pdf, b"\n", stream).unwrap() + 1;
            let bytes = &pdf[begin..begin + length];
            if dict.contains("/FlateDecode") {
                flate2::read::ZlibDecoder::new(bytes).read_to_end(&mut inflated).unwrap();
            } else {
                inflated = bytes.to_vec();
            }
            from = begin + length;
        }
        found.insert(number, (dict, inflated));
    }
    found
}

/// What stands behind a key, up to the next sign that ends a word.
fn word_after<'t>(text: &'t str, key: &str) -> Option<&'t str> {
    let (_, rest) = text.split_once(key)?;
    rest.trim_start().split([' ', '/', '>', '[', ']', '\n', '\r']).next()
}

fn reference(dict: &str, key: &str) -> Option<u32> {
    word_after(dict, &format!("{key} "))?.parse().ok()
}

/// The letters of a font's codes.
fn letters(objects: &Objects, fonts: &str, name: &str) -> BTreeMap<u16, String> {
    let font =
        &objects[&reference(fonts, &format!("/{name}")).unwrap_or_else(|| panic!("{name}: {fonts}"))].0;
    let map = &objects[&reference(font, "/ToUnicode").unwrap()].1;
    let map = String::from_utf8_lossy(map).into_owned();
    let pairs = map.lines().filter_map(|line| {
        let (code, letters) = line.strip_prefix('<')?.strip_suffix('>')?.split_once("> <")?;
        let units: Vec<u16> = hex(letters);
        Some((*hex(code).first()?, String::from_utf16(&units).ok()?))
    });
    pairs.collect()
}

fn hex(text: &str) -> Vec<u16> {
    let digits: Vec<char> = text.chars().collect();
    digits
        .chunks(4)
        .filter_map(|four| u16::from_str_radix(&four.iter().collect::<String>(), 16).ok())
        .collect()
}

/// One string of a content stream that begins here, `(…)` or `<…>`, as codes of two bytes; how long it is.
fn string(content: &[u8]) -> (Vec<u16>, usize) {
    let mut bytes = Vec::new();
    let mut at = 1;
    if content[0] == b'<' {
        let end = find(content, b">", 0).unwrap();
        return (hex(&String::from_utf8_lossy(&content[1..end])), end + 1);
    }
    let mut open = 1;
    loop {
        let byte = content[at];
        at += 1;
        match byte {
            b'\\' => {
                let octal =
                    content[at..].iter().take(3).take_while(|one| (b'0'..=b'7').contains(one)).count();
                if octal > 0 {
                    let digits = String::from_utf8_lossy(&content[at..at + octal]);
                    bytes.push(u16::from_str_radix(&digits, 8).unwrap() as u8);
                    at += octal;
                    continue;
                }
                bytes.push(match content[at] {
                    b'n' => b'\n',
                    b'r' => b'\r',
                    b't' => b'\t',
                    b'b' => 8,
                    b'f' => 12,
                    other => other,
                });
                at += 1;
                continue;
            }
            b'(' => open += 1,
            b')' if open == 1 => break,
            b')' => open -= 1,
            _ => {}
        }
        bytes.push(byte);
    }
    (bytes.chunks(2).map(|two| u16::from_be_bytes([two[0], two[1]])).collect(), at)
}

fn of_page(objects: &Objects, fonts: &str, content: &[u8]) -> String {
    let (mut out, mut word, mut at) = (String::new(), String::new(), 0);
    let (mut name, mut font) = (String::new(), BTreeMap::new());
    while at < content.len() {
        let byte = content[at];
        let is_dictionary = byte == b'<' && content.get(at + 1) == Some(&b'<');
        if (byte == b'(' || byte == b'<') && !is_dictionary {
            let (codes, long) = string(&content[at..]);
            out.extend(codes.iter().map(|code| font.get(code).map_or("\u{fffd}", String::as_str)));
            at += long;
            word.clear();
            continue;
        }
        if byte.is_ascii_alphanumeric() {
            word.push(byte as char);
        } else {
            match word.as_str() {
                "Tf" => font = letters(objects, fonts, &name),
                "ET" => out.push('\n'),
                other if other.starts_with('f') => name = other.to_owned(),
                _ => {}
            }
            word.clear();
        }
        // A dictionary in the content holds no text that is drawn.
        at = if is_dictionary { find(content, b">>", at).unwrap() + 2 } else { at + 1 };
    }
    out
}
