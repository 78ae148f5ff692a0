//! Files in one: a ZIP archive that only stores (PKWARE APPNOTE 6.3, sections 4.3.7, 4.3.12 and 4.3.16).

use crate::exchange::link::crc32;

/// Version needed to extract what is only stored, 1.0.
const VERSION: u16 = 10;
/// Names are UTF-8: bit 11 of the flags.
const UTF_8: u16 = 1 << 11;
/// 1 January 1980, the first day that an archive can tell: the same files make the same archive.
const DAY: u16 = 0x0021;

/// An archive of files by their paths; `None` where they are more or larger than such an archive holds.
#[must_use]
pub fn zip(files: &[(String, Vec<u8>)]) -> Option<Vec<u8>> {
    let (mut archive, mut directory) = (Vec::new(), Vec::new());
    for (path, bytes) in files {
        let at = u32::try_from(archive.len()).ok()?;
        let said = said(path, bytes)?;
        archive.extend(0x0403_4b50_u32.to_le_bytes());
        archive.extend(&said);
        archive.extend(path.as_bytes());
        archive.extend(bytes);
        directory.extend(0x0201_4b50_u32.to_le_bytes());
        directory.extend(VERSION.to_le_bytes());
        directory.extend(&said);
        // No comment, first disk, no attributes.
        directory.extend([0; 10]);
        directory.extend(at.to_le_bytes());
        directory.extend(path.as_bytes());
    }
    let count = u16::try_from(files.len()).ok()?;
    let (size, at) = (u32::try_from(directory.len()).ok()?, u32::try_from(archive.len()).ok()?);
    archive.extend(directory);
    archive.extend(0x0605_4b50_u32.to_le_bytes());
    archive.extend([0; 4]);
    archive.extend(count.to_le_bytes());
    archive.extend(count.to_le_bytes());
    archive.extend(size.to_le_bytes());
    archive.extend(at.to_le_bytes());
    archive.extend([0; 2]);
    Some(archive)
}

/// What is said of a file at its place and in the directory alike.
fn said(path: &str, bytes: &[u8]) -> Option<Vec<u8>> {
    let size = u32::try_from(bytes.len()).ok()?;
    let mut said = Vec::new();
    // Stored, at midnight.
    for two in [VERSION, UTF_8, 0, 0, DAY] {
        said.extend(two.to_le_bytes());
    }
    for four in [crc32(bytes), size, size] {
        said.extend(four.to_le_bytes());
    }
    for two in [u16::try_from(path.len()).ok()?, 0] {
        said.extend(two.to_le_bytes());
    }
    Some(said)
}
