import { csvFault, type CsvFault } from './csv-fault';

export type DecodedText = { readonly text: string } | { readonly fault: CsvFault };

/** Most bytes that a file may have. */
export const fileBytesMax = 10 * 1024 * 1024;

const saveAsUtf8 = 'save it again as "CSV UTF-8"';

/** Reads bytes as UTF-8 with or without a byte order mark; any other encoding is refused, never guessed. */
export function decodeText(file: string, bytes: Uint8Array): DecodedText {
  const refuse = (line: number, message: string, remedy: string): DecodedText => ({
    fault: csvFault({ file, line, message, remedy }),
  });
  if (bytes.length > fileBytesMax) {
    const size = (bytes.length / 1024 / 1024).toFixed(1);
    return refuse(1, `The file has ${size} MB, more than 10 MB.`, 'split it into several files');
  }
  const utf16 = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
  if (utf16) return refuse(1, 'The file is in UTF-16, not in UTF-8.', saveAsUtf8);
  const bad = firstInvalidByte(bytes);
  if (bad !== null) {
    const line = 1 + countLineFeeds(bytes.subarray(0, bad));
    const byte = (bytes[bad] ?? 0).toString(16).padStart(2, '0');
    return refuse(line, `Byte ${bad} (hexadecimal ${byte}) is not UTF-8.`, saveAsUtf8);
  }
  const text = new TextDecoder('utf-8', { ignoreBOM: false }).decode(bytes);
  const nul = text.indexOf('\0');
  if (nul >= 0) {
    const line = 1 + [...text.slice(0, nul).matchAll(/\r\n|\r|\n/g)].length;
    return refuse(line, 'The file holds a NUL character, so it is no text.', saveAsUtf8);
  }
  return { text };
}

/** Offset of the first byte that no well-formed UTF-8 sequence explains (RFC 3629, section 4); null where all is well. */
export function firstInvalidByte(bytes: Uint8Array): number | null {
  let at = 0;
  while (at < bytes.length) {
    const length = sequenceLength(bytes, at);
    if (length === 0) return at;
    at += length;
  }
  return null;
}

function sequenceLength(bytes: Uint8Array, at: number): number {
  const lead = bytes[at] ?? 0;
  if (lead < 0x80) return 1;
  const second = bytes[at + 1] ?? 0;
  const continues = (offset: number) => ((bytes[at + offset] ?? 0) & 0xc0) === 0x80;
  if (lead >= 0xc2 && lead <= 0xdf) return continues(1) ? 2 : 0;
  if (lead >= 0xe0 && lead <= 0xef) {
    // No overlong forms and no surrogates.
    if ((lead === 0xe0 && second < 0xa0) || (lead === 0xed && second > 0x9f)) return 0;
    return continues(1) && continues(2) ? 3 : 0;
  }
  if (lead >= 0xf0 && lead <= 0xf4) {
    if ((lead === 0xf0 && second < 0x90) || (lead === 0xf4 && second > 0x8f)) return 0;
    return continues(1) && continues(2) && continues(3) ? 4 : 0;
  }
  return 0;
}

function countLineFeeds(bytes: Uint8Array): number {
  let count = 0;
  for (const byte of bytes) if (byte === 0x0a) count += 1;
  return count;
}
