//! Owns which standard streams were closed when the program was started.
//!
//! Rust's runtime opens the null device in place of a closed stream, before `main`; afterwards it looks like
//! a null device that somebody meant. So the streams are looked at earlier, as the loader starts the program.

use std::sync::atomic::{AtomicU8, Ordering};

/// A bit for each standard stream that was closed.
static CLOSED: AtomicU8 = AtomicU8::new(0);

/// Whether a standard stream (1 or 2) was closed when the program started; not told outside Linux.
pub(crate) fn is_closed(stream: u8) -> bool {
    CLOSED.load(Ordering::Relaxed) & (1 << stream) != 0
}

#[cfg(target_os = "linux")]
mod early {
    use std::os::fd::AsFd;
    use std::sync::atomic::Ordering;

    /// Called by the loader before the runtime.
    #[expect(
        unsafe_code,
        reason = "the only way to run before the runtime; the function touches an atomic and asks for two descriptors"
    )]
    #[used]
    #[unsafe(link_section = ".init_array")]
    static LOOK: extern "C" fn() = look;

    extern "C" fn look() {
        let closed = |one: &dyn AsFd, bit: u8| match rustix::io::fcntl_getfd(one) {
            Err(rustix::io::Errno::BADF) => bit,
            _ => 0,
        };
        let found = closed(&std::io::stdout(), 1 << 1) | closed(&std::io::stderr(), 1 << 2);
        super::CLOSED.store(found, Ordering::Relaxed);
    }
}
