//! A signing key wrapped by a passphrase, as it is kept on the device and exported.
//!
//! The passphrase becomes a key by Argon2id (RFC 9106) and that key seals the seed by ChaCha20-Poly1305 (RFC 8439), with
//! all that stands beside it in the file as associated data. A new salt each time makes a new key, so that no nonce is used twice.

use super::key::{decode, encode};
use super::stretch::{KEY, LANES, MEMORY_KIB, PASSES, SALT, stretched};
use super::{PublicKey, Refusal, SecretKey, canonical, read_canonical};
use crate::terms;
use chacha20poly1305::aead::{Aead, KeyInit, Payload};
use chacha20poly1305::{ChaCha20Poly1305, Key, Nonce};
use serde_json::{Value, json};
use zeroize::Zeroizing;

/// Characters that a passphrase has at least: NIST SP 800-63B-4 (2025) section 3.1.1.2, for a password that stands alone.
pub const PASSPHRASE_LEAST: usize = 15;
/// RFC 8439 section 2.8.
const NONCE: usize = 12;
const TAG: usize = 16;
/// Argon2 version 1.3, the one of RFC 9106.
const ARGON2_VERSION: u32 = 0x13;

const FORMAT: &str = "stepboard-key";
/// This version has exactly the parameters above; others get another number.
const FORMAT_VERSION: u32 = 1;

terms! {
    /// Why a key is not wrapped or opened. Text: `locked.<slug>`.
    Locked {
        /// The passphrase has too few characters.
        PassphraseShort = "passphrase-short",
        /// This is not the passphrase, or the sealed part was changed: the two cannot be told apart.
        WrongPassphrase = "wrong-passphrase",
        /// Not a file of a wrapped key in its canonical form.
        FileUnreadable = "file-unreadable",
        /// A version of the file that is not known here.
        VersionUnknown = "version-unknown",
    }
}

/// A key that only the passphrase opens.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WrappedKey {
    /// The public key that belongs to it.
    pub public: PublicKey,
    salt: [u8; SALT],
    nonce: [u8; NONCE],
    sealed: [u8; KEY + TAG],
}

impl WrappedKey {
    /// Wraps a key; `random` is 32 bytes from a secure source, used once. The passphrase is taken as its UTF-8 bytes, as typed.
    ///
    /// # Errors
    /// [`Locked::PassphraseShort`].
    pub fn wrap(key: &SecretKey, passphrase: &str, random: &[u8; 32]) -> Result<Self, Locked> {
        if passphrase.chars().count() < PASSPHRASE_LEAST {
            return Err(Locked::PassphraseShort);
        }
        let (salt, rest) = random.split_first_chunk().ok_or(Locked::FileUnreadable)?;
        let nonce = rest.first_chunk().ok_or(Locked::FileUnreadable)?;
        let mut wrapped = Self { public: key.public(), salt: *salt, nonce: *nonce, sealed: [0; KEY + TAG] };
        let beside = wrapped.beside().map_err(|_| Locked::FileUnreadable)?;
        let payload = Payload { msg: key.seed(), aad: beside.as_bytes() };
        let sealed = wrapped.cipher(passphrase)?.encrypt(&Nonce::from(*nonce), payload);
        wrapped.sealed = sealed.ok().and_then(|bytes| bytes.try_into().ok()).ok_or(Locked::FileUnreadable)?;
        Ok(wrapped)
    }

    /// Opens it.
    ///
    /// # Errors
    /// [`Locked::WrongPassphrase`].
    pub fn open(&self, passphrase: &str) -> Result<SecretKey, Locked> {
        let beside = self.beside().map_err(|_| Locked::FileUnreadable)?;
        let payload = Payload { msg: &self.sealed, aad: beside.as_bytes() };
        let seed = self.cipher(passphrase)?.decrypt(&Nonce::from(self.nonce), payload);
        let seed = Zeroizing::new(seed.map_err(|_| Locked::WrongPassphrase)?);
        let seed: &[u8; KEY] = seed.as_slice().try_into().map_err(|_| Locked::FileUnreadable)?;
        let key = SecretKey::from_seed(seed);
        if key.public() == self.public { Ok(key) } else { Err(Locked::FileUnreadable) }
    }

    fn cipher(&self, passphrase: &str) -> Result<ChaCha20Poly1305, Locked> {
        let key = stretched(passphrase, &self.salt).ok_or(Locked::FileUnreadable)?;
        let mut copy = Key::from(*key);
        let cipher = ChaCha20Poly1305::new(&copy);
        zeroize::Zeroize::zeroize(copy.as_mut_slice());
        Ok(cipher)
    }

    /// What stands beside the sealed seed.
    fn members(&self) -> Value {
        json!({
            "format": FORMAT,
            "version": FORMAT_VERSION,
            "key": self.public,
            "derivation": {
                "algorithm": "argon2id", "version": ARGON2_VERSION, "memory_kib": MEMORY_KIB, "passes": PASSES,
                "lanes": LANES, "salt": encode(&self.salt),
            },
            "cipher": { "algorithm": "chacha20-poly1305", "nonce": encode(&self.nonce) },
        })
    }

    fn beside(&self) -> Result<String, Refusal> {
        canonical(&self.members())
    }

    fn whole(&self) -> Value {
        let mut members = self.members();
        if let Value::Object(members) = &mut members {
            members.insert("sealed".to_owned(), json!(encode(&self.sealed)));
        }
        members
    }

    /// The file, in its canonical form.
    ///
    /// # Errors
    /// As [`canonical`].
    pub fn text(&self) -> Result<String, Refusal> {
        canonical(&self.whole())
    }

    /// Reads a file.
    ///
    /// # Errors
    /// [`Locked::FileUnreadable`], [`Locked::VersionUnknown`].
    pub fn read(bytes: &[u8]) -> Result<Self, Locked> {
        let members = Value::Object(read_canonical(bytes).map_err(|_| Locked::FileUnreadable)?);
        if members["format"] != FORMAT {
            return Err(Locked::FileUnreadable);
        }
        if members["version"] != FORMAT_VERSION {
            return Err(Locked::VersionUnknown);
        }
        let text = |path: &str| members.pointer(path).and_then(Value::as_str);
        let public = text("/key").and_then(|did| PublicKey::from_did(did).ok());
        let (salt, nonce) = (text("/derivation/salt").and_then(fixed), text("/cipher/nonce").and_then(fixed));
        let sealed = text("/sealed").and_then(fixed);
        let (Some(public), Some(salt), Some(nonce), Some(sealed)) = (public, salt, nonce, sealed) else {
            return Err(Locked::FileUnreadable);
        };
        let wrapped = Self { public, salt, nonce, sealed };
        // Members and parameters are exactly those of this version.
        if wrapped.whole() == members { Ok(wrapped) } else { Err(Locked::FileUnreadable) }
    }
}

fn fixed<const N: usize>(text: &str) -> Option<[u8; N]> {
    decode(text)?.try_into().ok()
}
