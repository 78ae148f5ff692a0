//! A file that stands whole in a link: nothing is fetched when it is opened, so that it opens without a network.
//!
//! The code behind `#/take/` is base64url of: one byte, the version; two bytes, the length of the text, the lower first; the
//! text deflated (RFC 1951), with `BEFORE` before it; four bytes, the CRC-32 of all before, the lowest first. A CRC of 32
//! bits notices every fault that spans no more than 32 of them, so that one wrong character never passes.

mod base64url;
mod check;
mod faulty;
mod pasted;
mod square;

pub use base64url::{from_base64url, to_base64url};
pub use check::crc32;
pub use faulty::Faulty;
pub use pasted::{TAKE, code_in};
pub use square::{QUIET, SIDE_MOST, Square};

use super::Refused;
use miniz_oxide::deflate::core::{
    CompressorOxide, TDEFLFlush, TDEFLStatus, compress, create_comp_flags_from_zip_params,
};
use miniz_oxide::inflate::TINFLStatus;
use miniz_oxide::inflate::core::{DecompressorOxide, decompress, inflate_flags};

/// Characters of a code. RFC 9110, section 4.1: everybody should take addresses of 8,000 octets; some are left for the address
/// of the app.
pub const CODE_MOST: usize = 7_800;
/// Bytes of a file in a link, our own limit: a set with twenty cards of its own and a sheet has some 20,000.
pub const TEXT_MOST: usize = 48 * 1024;

/// The version that is written and read.
const VERSION: u8 = 1;
/// Bytes before what is deflated, and behind it.
const HEAD: usize = 3;
const CHECK: usize = 4;
/// The hardest that the compressor tries: files are small.
const HARDEST: i32 = 10;
/// No header of another format round what is deflated.
const RAW: i32 = 0;
/// Room for what does not get smaller: stored blocks of deflate add five bytes to each 65,535.
const ROOM: usize = 64;
/// The character by which every code begins: six bits of the version, which are none yet.
const BEGINS: char = 'A';

/// What the compressor has seen before each text, so that a short one refers to what all files of ours say. Part of version 1
/// and never changed.
const BEFORE: &[u8] = include_bytes!("before.txt");

/// The code of a file's text; the same text gets the same code on every device.
///
/// # Errors
/// [`Refused::TooLarge`]: the text or its code is longer than a link takes; it goes as a file then.
pub fn pack(text: &str) -> Result<String, Refused> {
    let too_large = || Refused::TooLarge { bytes: text.len(), most: TEXT_MOST };
    let length = u16::try_from(text.len()).ok().filter(|_| text.len() <= TEXT_MOST).ok_or_else(too_large)?;
    let mut packed = vec![VERSION];
    packed.extend(length.to_le_bytes());
    packed.extend(deflated(text.as_bytes()).ok_or_else(too_large)?);
    packed.extend(crc32(&packed).to_le_bytes());
    let code = to_base64url(&packed);
    if code.len() > CODE_MOST {
        return Err(Refused::TooLarge { bytes: code.len(), most: CODE_MOST });
    }
    Ok(code)
}

/// The text of a file from its code. Never more is unpacked than it says or than may stand in a link, and nothing is taken of
/// what has a wrong checksum.
///
/// # Errors
/// [`Refused`]: too long, of another version, or what [`Faulty`] tells.
pub fn unpack(code: &str) -> Result<String, Refused> {
    if code.len() > CODE_MOST {
        return Err(Refused::TooLarge { bytes: code.len(), most: CODE_MOST });
    }
    let packed = from_base64url(code).map_err(|(at, found)| {
        if found.is_ascii_alphanumeric() || ['-', '_'].contains(&found) {
            return ends_early(code);
        }
        Faulty::Letter { at, found: Refused::short(&found.to_string()) }
    })?;
    let (body, check) = packed.split_last_chunk::<CHECK>().ok_or_else(|| ends_early(code))?;
    let (&[version, low, high], deflated) =
        body.split_first_chunk::<HEAD>().ok_or_else(|| ends_early(code))?;
    let length = usize::from(u16::from_le_bytes([low, high]));
    let (said, found) = (u32::from_le_bytes(*check), crc32(body));
    if said != found {
        let behind = packed.get(HEAD..).unwrap_or_default();
        let early = !code.starts_with(BEGINS) || is_cut(behind, length.min(TEXT_MOST));
        return Err(if early { ends_early(code) } else { Faulty::Changed { said, found } }.into());
    }
    if version != VERSION {
        return Err(Refused::OtherVersion { found: version.into(), most: VERSION.into() });
    }
    if length > TEXT_MOST {
        return Err(Refused::TooLarge { bytes: length, most: TEXT_MOST });
    }
    let text = inflated(deflated, length).ok_or(Faulty::Packed { said: length })?;
    String::from_utf8(text).map_err(|error| Faulty::NoText { at: error.utf8_error().valid_up_to() }.into())
}

/// What is wrong with a code that ends too soon: it was cut off, where it begins as ours do.
fn ends_early(code: &str) -> Faulty {
    if code.is_empty() || code.starts_with(BEGINS) {
        return Faulty::Cut { characters: code.len() };
    }
    Faulty::NoLink { found: Refused::short(code) }
}

/// Whether what was deflated goes on behind its end, or its checksum does. What it holds so far is looked at no further.
fn is_cut(behind: &[u8], length: usize) -> bool {
    let (status, read, _) = inflating(behind, length);
    match status {
        TINFLStatus::FailedCannotMakeProgress | TINFLStatus::NeedsMoreInput => true,
        TINFLStatus::Done => behind.len() - read < CHECK,
        _ => false,
    }
}

/// The text deflated, without [`BEFORE`], which whoever reads it has too.
fn deflated(text: &[u8]) -> Option<Vec<u8>> {
    let mut compressor = CompressorOxide::new(create_comp_flags_from_zip_params(HARDEST, RAW, 0));
    let mut out = vec![0; BEFORE.len().max(text.len()) + ROOM];
    // What comes out of it is thrown away; what it has seen stays in its window.
    let (status, read, _) = compress(&mut compressor, BEFORE, &mut out, TDEFLFlush::Sync);
    if status != TDEFLStatus::Okay || read != BEFORE.len() {
        return None;
    }
    let (status, read, written) = compress(&mut compressor, text, &mut out, TDEFLFlush::Finish);
    out.truncate(written);
    (status == TDEFLStatus::Done && read == text.len()).then_some(out)
}

/// Exactly so many bytes from what was deflated; `None` where it holds more, fewer, or something behind them.
fn inflated(packed: &[u8], length: usize) -> Option<Vec<u8>> {
    let (status, read, out) = inflating(packed, length);
    (status == TINFLStatus::Done && read == packed.len() && out.len() == length).then_some(out)
}

/// What becomes of what was deflated: so many bytes of it were read, and at most so many came out.
fn inflating(packed: &[u8], length: usize) -> (TINFLStatus, usize, Vec<u8>) {
    let mut out = BEFORE.to_vec();
    out.resize(BEFORE.len() + length, 0);
    let whole = inflate_flags::TINFL_FLAG_USING_NON_WRAPPING_OUTPUT_BUF;
    let mut reader = DecompressorOxide::new();
    let (status, read, written) = decompress(&mut reader, packed, &mut out, BEFORE.len(), whole);
    out.truncate(BEFORE.len() + written);
    (status, read, out.split_off(BEFORE.len()))
}
