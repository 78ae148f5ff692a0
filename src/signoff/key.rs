//! Ed25519 keys (RFC 8032) as Multikeys and as did:key, which is computed from the key and looked up nowhere.

use super::{Refusal, Why};
use ed25519_dalek::{Signature, Signer, SigningKey, VerifyingKey};
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use std::fmt;

/// Marks a public Ed25519 key among Multikeys: the number 0xed as a varint (Data Integrity EdDSA Cryptosuites 2.1.1).
const MULTIKEY_PREFIX: [u8; 2] = [0xed, 0x01];
/// Marks base 58 in the alphabet of Bitcoin among multibase texts.
pub(super) const BASE58: char = 'z';
/// Begins every did:key.
const DID: &str = "did:key:";
/// Bytes of the fingerprint: 80 bits, so that a second key with the same one is out of reach, and short enough to compare
/// by eye beside the hash of a document.
const FINGERPRINT: usize = 10;

/// A public key.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct PublicKey([u8; 32]);

impl PublicKey {
    /// A key from its 32 bytes.
    ///
    /// # Errors
    /// [`Why::KeyUnreadable`] where they are no point of the curve or one of the few weak ones, under which one signature
    /// fits many documents.
    pub fn new(bytes: [u8; 32]) -> Result<Self, Refusal> {
        match VerifyingKey::from_bytes(&bytes) {
            Ok(key) if !key.is_weak() => Ok(Self(bytes)),
            _ => Err(Why::KeyUnreadable.at("")),
        }
    }

    /// Reads a Multikey, `z6Mk…`.
    ///
    /// # Errors
    /// [`Why::KeyUnreadable`] with the text.
    pub fn from_multikey(text: &str) -> Result<Self, Refusal> {
        let key = decode(text).and_then(|bytes| {
            let key: [u8; 32] = bytes.strip_prefix(&MULTIKEY_PREFIX)?.try_into().ok()?;
            Self::new(key).ok()
        });
        key.ok_or_else(|| Why::KeyUnreadable.at(text))
    }

    /// Reads `did:key:z6Mk…`.
    ///
    /// # Errors
    /// As [`PublicKey::from_multikey`].
    pub fn from_did(text: &str) -> Result<Self, Refusal> {
        let multikey = text.strip_prefix(DID).ok_or_else(|| Why::KeyUnreadable.at(text))?;
        Self::from_multikey(multikey)
    }

    /// Reads a verification method, `did:key:z6Mk…#z6Mk…`: both halves name the same key.
    ///
    /// # Errors
    /// As [`PublicKey::from_multikey`].
    pub fn from_method(text: &str) -> Result<Self, Refusal> {
        let key = text.split_once('#').and_then(|(did, _)| Self::from_did(did).ok());
        key.filter(|key| key.method() == text).ok_or_else(|| Why::KeyUnreadable.at(text))
    }

    /// `z6Mk…`.
    #[must_use]
    pub fn multikey(&self) -> String {
        let mut bytes = MULTIKEY_PREFIX.to_vec();
        bytes.extend_from_slice(&self.0);
        encode(&bytes)
    }

    /// `did:key:z6Mk…`.
    #[must_use]
    pub fn did(&self) -> String {
        format!("{DID}{}", self.multikey())
    }

    /// `did:key:z6Mk…#z6Mk…`.
    #[must_use]
    pub fn method(&self) -> String {
        format!("{}#{}", self.did(), self.multikey())
    }

    /// The first ten bytes of SHA-256 over the key, as 20 hexadecimal digits: to be compared by eye.
    #[must_use]
    pub fn fingerprint(&self) -> String {
        Sha256::digest(self.0).iter().take(FINGERPRINT).map(|byte| format!("{byte:02x}")).collect()
    }

    /// Whether the signature is that of these bytes by this key: the strict check, which takes neither weak points nor a
    /// second form of a signature.
    pub(super) fn verifies(&self, bytes: &[u8], signature: &[u8; 64]) -> bool {
        VerifyingKey::from_bytes(&self.0)
            .is_ok_and(|key| key.verify_strict(bytes, &Signature::from_bytes(signature)).is_ok())
    }
}

impl fmt::Display for PublicKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.did())
    }
}

impl TryFrom<String> for PublicKey {
    type Error = Refusal;
    fn try_from(text: String) -> Result<Self, Refusal> {
        Self::from_did(&text)
    }
}

impl From<PublicKey> for String {
    fn from(key: PublicKey) -> Self {
        key.did()
    }
}

/// A key that signs. It is wiped from memory when it is dropped, and never shown.
pub struct SecretKey(SigningKey);

impl SecretKey {
    /// The key of a seed: 32 bytes from a secure random source.
    #[must_use]
    pub fn from_seed(seed: &[u8; 32]) -> Self {
        Self(SigningKey::from_bytes(seed))
    }

    /// The public key that belongs to it.
    #[must_use]
    pub fn public(&self) -> PublicKey {
        PublicKey(self.0.verifying_key().to_bytes())
    }

    /// The signature of these bytes (pure Ed25519, RFC 8032 section 5.1.6).
    #[must_use]
    pub fn sign(&self, bytes: &[u8]) -> [u8; 64] {
        self.0.sign(bytes).to_bytes()
    }

    /// The seed, to be wrapped.
    pub(super) fn seed(&self) -> &[u8; 32] {
        self.0.as_bytes()
    }
}

impl fmt::Debug for SecretKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "SecretKey({})", self.public())
    }
}

/// Bytes in base 58 with its mark.
pub(super) fn encode(bytes: &[u8]) -> String {
    format!("{BASE58}{}", bs58::encode(bytes).into_string())
}

/// Longest text in base 58 that is read: a signature has 88 characters, a wrapped seed 66; decoding takes the square of it.
const BASE58_MOST: usize = 128;

/// Bytes of a text in base 58 with its mark.
pub(super) fn decode(text: &str) -> Option<Vec<u8>> {
    let digits = text.strip_prefix(BASE58).filter(|digits| digits.len() <= BASE58_MOST)?;
    bs58::decode(digits).into_vec().ok()
}
