//! The content that the build script checked, inside the program.

use crate::content::Content;
#[cfg(not(target_arch = "wasm32"))]
use crate::content::load::Source;

impl Content {
    /// Reads the embedded content. It is in a compact binary form (postcard), which takes less code to read than JSON
    /// and weighs less on the way to a tablet.
    ///
    /// # Errors
    /// A message when it cannot be read: then the build is broken, since the build script wrote it.
    pub fn embedded() -> Result<Self, postcard::Error> {
        postcard::from_bytes(include_bytes!(concat!(env!("OUT_DIR"), "/content.bin")))
    }
}

#[cfg(not(target_arch = "wasm32"))]
impl Source {
    /// The files that the content was read from, to check another file in the place of one of them.
    ///
    /// # Errors
    /// A message when they cannot be read: then the build is broken, since the build script wrote them.
    pub fn embedded() -> Result<Vec<Self>, postcard::Error> {
        postcard::from_bytes(include_bytes!(concat!(env!("OUT_DIR"), "/sources.bin")))
    }
}
