/** PNG (W3C Recommendation, third edition): signature and chunks. */
import type { Read } from './image.js';

const SIGNATURE = Buffer.from('\x89PNG\r\n\x1a\n', 'latin1');
/** Chunks that the still picture needs; texts, times, Exif and animation go. */
const KEPT = new Set([
  'IHDR',
  'PLTE',
  'IDAT',
  'IEND',
  'tRNS',
  'gAMA',
  'cHRM',
  'sRGB',
  'iCCP',
  'sBIT',
  'pHYs',
  'bKGD',
]);

/** Follows the chunks up to the last one. */
export function readPng(from: Buffer): Read {
  if (!from.subarray(0, 8).equals(SIGNATURE)) return null;
  const kept: Buffer[] = [SIGNATURE];
  let size: { widthPx: number; heightPx: number } | null = null;
  let drawn = false;
  for (let at = 8; at + 12 <= from.length;) {
    const length = from.readUInt32BE(at);
    const end = at + 12 + length;
    if (end > from.length) return null;
    const name = from.subarray(at + 4, at + 8).toString('latin1');
    if ((at === 8) !== (name === 'IHDR')) return null;
    if (name === 'IHDR') {
      if (length !== 13) return null;
      size = { widthPx: from.readUInt32BE(at + 8), heightPx: from.readUInt32BE(at + 12) };
    }
    drawn ||= name === 'IDAT';
    if (KEPT.has(name)) kept.push(from.subarray(at, end));
    if (name === 'IEND') return size && drawn ? { ...size, bytes: Buffer.concat(kept) } : null;
    at = end;
  }
  return null;
}
