//! Why a signed file is not accepted, as a closed list.

use super::words::shown;
use crate::rules::term::Term;
use crate::terms;
use std::fmt;

terms! {
    /// A reason. Text: `verify.<slug>`, with `{at}` for where it was found.
    Why {
        /// More bytes than a signed file may have.
        TooLarge = "too-large",
        /// Not JSON in UTF-8.
        NotJson = "not-json",
        /// Objects and lists inside each other too deeply.
        TooDeep = "too-deep",
        /// An object names a member twice, so that readers could see different things (RFC 7493 section 2.3).
        DuplicateMember = "duplicate-member",
        /// A fraction, an exponent, or a whole number beyond 2^53 - 1.
        NumberNotWhole = "number-not-whole",
        /// The bytes are not the canonical form (RFC 8785) of what they say.
        NotCanonical = "not-canonical",
        /// There is no proof, or it is no object.
        NoProof = "no-proof",
        /// A member of the proof is missing, unknown, or not what this suite has.
        ProofUnknown = "proof-unknown",
        /// The proof was made for other contexts than the document has.
        ContextDiffers = "context-differs",
        /// No Ed25519 key as a Multikey or did:key.
        KeyUnreadable = "key-unreadable",
        /// No signature of 64 bytes in base 58.
        SignatureUnreadable = "signature-unreadable",
        /// The signature is not that of this document by this key.
        SignatureWrong = "signature-wrong",
        /// Contexts other than the two of a sign-off, or in another order.
        ContextUnknown = "context-unknown",
        /// A member is missing, unknown, or has a value that no sign-off has.
        ShapeUnknown = "shape-unknown",
        /// No date and time of the form 2026-03-02T15:04:05Z.
        DateUnreadable = "date-unreadable",
        /// Dates in an order that cannot be.
        DatesDisordered = "dates-disordered",
        /// Empty, too long, or with characters that do not show as they are.
        WordsUnfit = "words-unfit",
        /// The issuer is not the key that signed.
        IssuerNotKey = "issuer-not-key",
        /// The list is not signed by the root that is expected, or by the root it names.
        RootDiffers = "root-differs",
        /// The trust list contradicts itself or the list before it.
        ListUnfit = "list-unfit",
        /// The key that signed stands on no entry of the trust list.
        SignerUnknown = "signer-unknown",
        /// The key stands on the list, but not for the day of signing.
        SignerNotThen = "signer-not-then",
        /// Shop, number or name differ from what the trust list says of this key.
        SignerDiffers = "signer-differs",
        /// Somebody signed for themselves.
        OwnWork = "own-work",
        /// Signed for a later day than the one asked about.
        NotYetValid = "not-yet-valid",
        /// Its time has run out.
        Expired = "expired",
        /// Withdrawn by the shop.
        Withdrawn = "withdrawn",
        /// A competency that the content does not know.
        CompetencyUnknown = "competency-unknown",
        /// The competency is asked more or less strictly than the file says.
        ProfileDiffers = "profile-differs",
        /// A safety competency whose knowledge evidence was not sufficient.
        SafetyNotShown = "safety-not-shown",
        /// It runs longer than the competency may go without being shown anew.
        ValidTooLong = "valid-too-long",
    }
}

/// A reason, and where it was found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Refusal {
    /// Why.
    pub why: Why,
    /// Member of the document as a path like `/issuer/id`, a date, a name: what helps to find it. May be empty.
    pub at: String,
}

impl Why {
    /// The reason, found there: what a file says is shown without characters that steer a terminal, and cut off.
    #[must_use]
    pub fn at(self, at: impl AsRef<str>) -> Refusal {
        Refusal { why: self, at: shown(at.as_ref()) }
    }
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.at.as_str() {
            "" => f.write_str(self.why.slug()),
            at => write!(f, "{} ({at})", self.why.slug()),
        }
    }
}

impl std::error::Error for Refusal {}
