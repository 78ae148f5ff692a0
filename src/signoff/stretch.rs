//! A key out of what somebody types, slow to try out: Argon2id (RFC 9106).

use argon2::{Algorithm, Argon2, Params, Version};
use zeroize::Zeroizing;

/// The second recommended option of RFC 9106 section 4, where memory is short: 64 MiB, three passes, four lanes, a salt
/// of 128 bits and a key of 256.
pub(super) const MEMORY_KIB: u32 = 64 * 1024;
pub(super) const PASSES: u32 = 3;
pub(super) const LANES: u32 = 4;
/// Bytes of the salt.
pub const SALT: usize = 16;
/// Bytes of the key.
pub const KEY: usize = 32;

/// The key of a typed text, taken as its UTF-8 bytes; `None` where the memory for it cannot be had.
#[must_use]
pub fn stretched(typed: &str, salt: &[u8; SALT]) -> Option<Zeroizing<[u8; KEY]>> {
    let params = Params::new(MEMORY_KIB, PASSES, LANES, Some(KEY)).ok()?;
    let mut key = Zeroizing::new([0; KEY]);
    let argon = Argon2::new(Algorithm::Argon2id, Version::V0x13, params);
    argon.hash_password_into(typed.as_bytes(), salt, key.as_mut_slice()).ok()?;
    Some(key)
}
