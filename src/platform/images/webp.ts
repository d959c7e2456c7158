/** WebP (RFC 9649): a RIFF file of chunks. */
import type { Read } from './image.js';

/** Chunks that the still picture needs; Exif and XMP go. */
const KEPT = new Set(['VP8 ', 'VP8L', 'VP8X', 'ALPH', 'ICCP']);
/** Bits of VP8X that announce Exif and XMP. */
const ANNOUNCED = 0x08 | 0x04;

/** Follows the chunks. Animations are refused: a photo is a still picture. */
export function readWebp(from: Buffer): Read {
  if (from.length < 20 || word(from, 0) !== 'RIFF' || word(from, 8) !== 'WEBP') return null;
  const whole = 8 + from.readUInt32LE(4);
  if (whole > from.length) return null;
  const kept: Buffer[] = [];
  let size: { widthPx: number; heightPx: number } | null = null;
  let drawn = false;
  for (let at = 12; at < whole;) {
    if (at + 8 > whole) return null;
    const name = word(from, at);
    const length = from.readUInt32LE(at + 4);
    const end = at + 8 + length + (length % 2);
    if (end > whole) return null;
    const body = from.subarray(at + 8, at + 8 + length);
    if (name === 'ANIM' || name === 'ANMF') return null;
    size ??= sizeOf(name, body);
    drawn ||= name === 'VP8 ' || name === 'VP8L';
    if (KEPT.has(name))
      kept.push(name === 'VP8X' ? unannounced(from.subarray(at, end)) : from.subarray(at, end));
    at = end;
  }
  if (!size || !drawn) return null;
  const head = Buffer.from('RIFF\0\0\0\0WEBP', 'latin1');
  head.writeUInt32LE(4 + kept.reduce((sum, { length }) => sum + length, 0), 4);
  return { ...size, bytes: Buffer.concat([head, ...kept]) };
}

const word = (from: Buffer, at: number): string => from.subarray(at, at + 4).toString('latin1');

function sizeOf(name: string, body: Buffer): { widthPx: number; heightPx: number } | null {
  if (name === 'VP8X' && body.length >= 10)
    return { widthPx: body.readUIntLE(4, 3) + 1, heightPx: body.readUIntLE(7, 3) + 1 };
  if (name === 'VP8L' && body.length >= 5 && body[0] === 0x2f) {
    const bits = body.readUInt32LE(1);
    return { widthPx: (bits & 0x3fff) + 1, heightPx: ((bits >>> 14) & 0x3fff) + 1 };
  }
  if (name === 'VP8 ' && body.length >= 10 && body.readUIntBE(3, 3) === 0x9d012a)
    return { widthPx: body.readUInt16LE(6) & 0x3fff, heightPx: body.readUInt16LE(8) & 0x3fff };
  return null;
}

function unannounced(chunk: Buffer): Buffer {
  const copy = Buffer.from(chunk);
  copy[8] = copy[8]! & ~ANNOUNCED;
  return copy;
}
