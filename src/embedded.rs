//! The content that the build script checked, inside the program.

use crate::content::Content;

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
