/** JPEG (ITU-T T.81, annex B): markers, segments, entropy-coded data. Exif: CIPA DC-008. */
import type { Read } from './image.js';

const SOI = 0xd8;
const EOI = 0xd9;
const SOS = 0xda;
const COMMENT = 0xfe;
/** Application segments that the picture needs: size and density, colours, and Adobe's note on the colour transform. */
const KEPT = new Map([
  [0xe0, 'JFIF\0'],
  [0xe2, 'ICC_PROFILE\0'],
  [0xee, 'Adobe'],
]);

const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
const isRestart = (marker: number): boolean => marker >= 0xd0 && marker <= 0xd7;

/** Follows the markers up to the end of the image; of Exif only the way up is kept, or phones' photos would lie on their side. */
export function readJpeg(from: Buffer): Read {
  if (from.length < 4 || from[0] !== 0xff || from[1] !== SOI) return null;
  const kept: Buffer[] = [];
  let size: { widthPx: number; heightPx: number } | null = null;
  let orientation = 1;
  let scanned = false;
  let at = 2;
  for (;;) {
    if (from[at] !== 0xff) return null;
    while (from[at + 1] === 0xff) at += 1;
    const marker = from[at + 1];
    if (marker === undefined || marker === 0 || marker === SOI || isRestart(marker)) return null;
    if (marker === EOI) break;
    if (at + 4 > from.length) return null;
    const end = at + 2 + from.readUInt16BE(at + 2);
    if (end < at + 4 || end > from.length) return null;
    const body = from.subarray(at + 4, end);
    if (isFrame(marker)) {
      if (body.length < 6) return null;
      size = { heightPx: body.readUInt16BE(1), widthPx: body.readUInt16BE(3) };
    }
    if (marker === 0xe1) orientation = orientationOf(body) ?? orientation;
    const next = marker === SOS ? endOfScan(from, end) : end;
    if (next === null) return null;
    scanned ||= marker === SOS;
    if (isNeeded(marker, body)) kept.push(from.subarray(at, next));
    at = next;
  }
  if (!size || !scanned) return null;
  const up = orientation === 1 ? [] : [exifOf(orientation)];
  return {
    ...size,
    bytes: Buffer.concat([Buffer.from([0xff, SOI]), ...up, ...kept, Buffer.from([0xff, EOI])]),
  };
}

function isNeeded(marker: number, body: Buffer): boolean {
  if (marker === COMMENT) return false;
  if (marker < 0xe0 || marker > 0xef) return true;
  const name = KEPT.get(marker);
  return name !== undefined && body.subarray(0, name.length).toString('latin1') === name;
}

/** The next marker after entropy-coded data, in which FF stands only before 00 or a restart. */
function endOfScan(from: Buffer, start: number): number | null {
  for (let at = from.indexOf(0xff, start); at >= 0 && at + 1 < from.length; at = from.indexOf(0xff, at + 1)) {
    const next = from[at + 1]!;
    if (next !== 0 && next !== 0xff && !isRestart(next)) return at;
  }
  return null;
}

/** Tag 0x0112 of the first directory of an Exif segment, 1 to 8; null where it cannot be read. */
function orientationOf(body: Buffer): number | null {
  if (body.subarray(0, 6).toString('latin1') !== 'Exif\0\0') return null;
  const tiff = body.subarray(6);
  const order = tiff.subarray(0, 2).toString('latin1');
  if (tiff.length < 8 || (order !== 'II' && order !== 'MM')) return null;
  const word = (at: number) => (order === 'II' ? tiff.readUInt16LE(at) : tiff.readUInt16BE(at));
  const start = order === 'II' ? tiff.readUInt32LE(4) : tiff.readUInt32BE(4);
  if (start + 2 > tiff.length) return null;
  for (let entry = 0; entry < word(start); entry += 1) {
    const at = start + 2 + entry * 12;
    if (at + 12 > tiff.length) return null;
    if (word(at) !== 0x0112) continue;
    const value = word(at + 8);
    return value >= 1 && value <= 8 ? value : null;
  }
  return null;
}

/** An Exif segment that says which way is up, and nothing else. */
function exifOf(orientation: number): Buffer {
  const tiff = Buffer.from('MM\0*\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0\0\0\0\0\0\0\0', 'latin1');
  tiff.writeUInt16BE(orientation, 18);
  const body = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff]);
  const head = Buffer.from([0xff, 0xe1, 0, 0]);
  head.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([head, body]);
}
