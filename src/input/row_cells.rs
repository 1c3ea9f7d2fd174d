//! Owns the cells of one row of a long table, split without an allocation of its own.

/// The cells of one row; used again for each.
#[derive(Clone, Debug, Default)]
pub struct RowCells {
    text: Vec<u8>,
    ends: Vec<usize>,
}

impl RowCells {
    /// Splits a row at `sign`; quotes as in CSV (a doubled one inside stands for one).
    pub fn split(&mut self, row: &[u8], sign: u8) {
        self.text.clear();
        self.ends.clear();
        let row = row.strip_suffix(b"\n").unwrap_or(row);
        let row = row.strip_suffix(b"\r").unwrap_or(row);
        if memchr::memchr(b'"', row).is_none() {
            self.text.extend_from_slice(row);
            self.ends.extend(memchr::memchr_iter(sign, row));
            self.ends.push(row.len());
            return;
        }
        let mut quoted = false;
        let mut bytes = row.iter().peekable();
        while let Some(byte) = bytes.next() {
            match *byte {
                b'"' if quoted && bytes.peek() == Some(&&b'"') => {
                    bytes.next();
                    self.text.push(b'"');
                }
                b'"' => quoted = !quoted,
                byte if byte == sign && !quoted => {
                    self.ends.push(self.text.len());
                    // Kept, so that every cell ends before one sign.
                    self.text.push(sign);
                }
                byte => self.text.push(byte),
            }
        }
        self.ends.push(self.text.len());
    }

    /// How many cells.
    pub fn len(&self) -> usize {
        self.ends.len()
    }

    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.ends.is_empty()
    }

    /// A cell without blanks around it; none where the row has not so many.
    pub fn get(&self, at: usize) -> Option<&[u8]> {
        let end = *self.ends.get(at)?;
        let start = match at.checked_sub(1) {
            Some(before) => self.ends.get(before)? + 1,
            None => 0,
        };
        self.text.get(start..end).map(<[u8]>::trim_ascii)
    }

    /// The cells.
    pub fn iter(&self) -> impl Iterator<Item = &[u8]> {
        (0..self.len()).filter_map(|at| self.get(at))
    }

    /// The rows of a block, each with its line end; line ends inside quotes do not count.
    pub fn rows(block: &[u8]) -> impl Iterator<Item = &[u8]> {
        let mut rest = block;
        let quotes = memchr::memchr(b'"', block).is_some();
        std::iter::from_fn(move || {
            if rest.is_empty() {
                return None;
            }
            let end = if quotes {
                let mut open = false;
                rest.iter().position(|byte| {
                    open ^= *byte == b'"';
                    *byte == b'\n' && !open
                })
            } else {
                memchr::memchr(b'\n', rest)
            };
            let (row, after) = rest.split_at(end.map_or(rest.len(), |end| end + 1));
            rest = after;
            Some(row)
        })
    }

    /// How many rows a block has.
    pub(super) fn count_rows(block: &[u8]) -> u64 {
        if memchr::memchr(b'"', block).is_some() {
            return u64::try_from(Self::rows(block).count()).unwrap_or(u64::MAX);
        }
        let open_end = u64::from(block.last().is_some_and(|byte| *byte != b'\n'));
        u64::try_from(memchr::memchr_iter(b'\n', block).count()).unwrap_or(u64::MAX) + open_end
    }
}
