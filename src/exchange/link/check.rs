//! CRC-32 as gzip has it: RFC 1952, section 8.

/// The polynomial, its lowest power first.
const POLYNOMIAL: u32 = 0xEDB8_8320;
const BITS: u32 = 8;

/// The CRC-32 of bytes.
#[must_use]
pub fn crc32(bytes: &[u8]) -> u32 {
    let step = |crc: u32| if crc & 1 == 1 { (crc >> 1) ^ POLYNOMIAL } else { crc >> 1 };
    !bytes.iter().fold(u32::MAX, |crc, byte| (0..BITS).fold(crc ^ u32::from(*byte), |crc, _| step(crc)))
}
