//! The content that the build script checked, inside the program.

use crate::content::Content;

impl Content {
    /// Reads the embedded content.
    ///
    /// # Errors
    /// A message when it cannot be read: then the build is broken, since the build script wrote it.
    pub fn embedded() -> Result<Self, serde_json::Error> {
        serde_json::from_str(include_str!(concat!(env!("OUT_DIR"), "/content.json")))
    }
}
