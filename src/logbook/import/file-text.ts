/** The bytes of a file as text, whatever wrote them. Pure. */

export const ENCODINGS = ['utf-8', 'utf-16le', 'utf-16be', 'windows-1252'] as const;
export type Encoding = (typeof ENCODINGS)[number];

export type FileText = { text: string; encoding: Encoding } | { refused: string };

/** Bytes looked at to tell UTF-16 without its mark. */
const LOOKED_AT = 4096;
/** ZIP's signature (APPNOTE.TXT 4.3.7): workbooks are ZIP files. */
const ZIP = [0x50, 0x4b, 0x03, 0x04];

/**
 * By the byte order mark (Unicode 23.8), else by the zero bytes that every second byte of UTF-16 is in plain text, else UTF-8 where
 * it is well formed, else Windows-1252 as the Encoding Standard (WHATWG) reads it.
 * @param told the encoding chosen by whoever knows better
 */
export function textOf(bytes: Uint8Array, told?: Encoding): FileText {
  if (ZIP.every((byte, index) => bytes[index] === byte))
    return { refused: 'This is a workbook or another packed file. Save the sheet as CSV and send that.' };
  const encoding = told ?? encodingOf(bytes);
  const text = decoded(bytes, encoding);
  if (text === null) return { refused: `The file is no text in ${encoding.toUpperCase()}.` };
  // Windows-1252 leaves five bytes without a character; text has none of them, and none of the controls.
  // eslint-disable-next-line no-control-regex -- just those are looked for
  if (/[\0-\x08\x0e-\x1f\x7f-\x9f]/.test(text))
    return { refused: 'The file holds characters that no text has. Save the sheet as CSV in UTF-8.' };
  return { text, encoding };
}

function encodingOf(bytes: Uint8Array): Encoding {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  const zeros = [0, 0];
  const looked = Math.min(bytes.length, LOOKED_AT);
  for (let index = 0; index < looked; index += 1) if (bytes[index] === 0) zeros[index % 2]! += 1;
  // Half of the bytes looked at are of either kind; in text of Latin letters nearly all of one kind are zero.
  if (zeros[1]! > looked / 4 && zeros[0]! < looked / 8) return 'utf-16le';
  if (zeros[0]! > looked / 4 && zeros[1]! < looked / 8) return 'utf-16be';
  return decoded(bytes, 'utf-8') === null ? 'windows-1252' : 'utf-8';
}

function decoded(bytes: Uint8Array, encoding: Encoding): string | null {
  if (encoding === 'windows-1252') return fromWindows1252(bytes);
  try {
    // Takes the byte order mark off.
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

/**
 * 0x80 to 0x9f by the Encoding Standard's index (encoding.spec.whatwg.org/index-windows-1252.txt); the rest is as in Latin-1. The
 * decoder of some runtimes takes those 32 for Latin-1 as well.
 */
const WINDOWS_1252 =
  '\u20ac\x81\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\x8d\u017d\x8f' +
  '\x90\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\x9d\u017e\u0178';

const fromWindows1252 = (bytes: Uint8Array): string =>
  Buffer.from(bytes)
    .toString('latin1')
    .replace(/[\x80-\x9f]/g, (letter) => WINDOWS_1252[letter.charCodeAt(0) - 0x80]!);
