//! All tests, one binary; each module is one kind.
