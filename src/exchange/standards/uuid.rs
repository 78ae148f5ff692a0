//! Names that are the same each time: UUIDs of version 5 (RFC 9562, section 5.5), SHA-1 over a namespace and a name. They
//! keep nothing secret.

use sha1::{Digest, Sha1};
use std::fmt;

/// The namespace of addresses, RFC 9562, section 6.6.
const NAMESPACE_URL: [u8; BYTES] =
    [0x6b, 0xa7, 0xb8, 0x11, 0x9d, 0xad, 0x11, 0xd1, 0x80, 0xb4, 0x00, 0xc0, 0x4f, 0xd4, 0x30, 0xc8];
const BYTES: usize = 16;

/// A UUID.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Uuid([u8; BYTES]);

/// The UUID of an address.
#[must_use]
pub fn uuid5(address: &str) -> Uuid {
    let hash = Sha1::new().chain_update(NAMESPACE_URL).chain_update(address.as_bytes()).finalize();
    let mut bytes = [0; BYTES];
    for (byte, of_hash) in bytes.iter_mut().zip(hash) {
        *byte = of_hash;
    }
    let [.., version, _, variant, _, _, _, _, _, _, _] = &mut bytes;
    *version = 0x50 | (*version & 0x0f);
    *variant = 0x80 | (*variant & 0x3f);
    Uuid(bytes)
}

impl fmt::Display for Uuid {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (place, byte) in self.0.iter().enumerate() {
            if [4, 6, 8, 10].contains(&place) {
                f.write_str("-")?;
            }
            write!(f, "{byte:02x}")?;
        }
        Ok(())
    }
}
