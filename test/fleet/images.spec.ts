import { cleanImage } from '../../src/platform/images/image.js';
import { exif, JPEG, jpegWith, PNG, pngWithText, SECRET, segment, WEBP, webpWithExif } from './pictures.js';

const ALL = [
  ['image/jpeg', JPEG],
  ['image/png', PNG],
  ['image/webp', WEBP],
] as const;

it.each(ALL)('%s is known by its content, and its picture stays byte for byte', (mediaType, bytes) => {
  const found = cleanImage(bytes)!;
  expect(found).toMatchObject({ mediaType, widthPx: 3, heightPx: 2 });
  expect(found.bytes.equals(bytes)).toBe(true);
});

it.each(ALL)('%s cut short anywhere is refused', (_mediaType, bytes) => {
  const taken = Array.from({ length: bytes.length }, (_one, length) => length).filter(
    (length) => cleanImage(bytes.subarray(0, length)) !== null,
  );
  expect(taken).toEqual([]);
});

it.each([
  ['JPEG', jpegWith(exif(1), segment(0xed, Buffer.from(SECRET)), segment(0xfe, Buffer.from(SECRET))), JPEG],
  ['PNG', pngWithText(), PNG],
  ['WebP', webpWithExif(), WEBP],
])('what the camera noted in a %s goes, and the picture is as without', (_name, bytes, plain) => {
  expect(bytes.includes(SECRET)).toBe(true);
  expect(cleanImage(bytes)!.bytes.equals(plain)).toBe(true);
});

it.each(ALL)('what hangs behind the end of a %s goes', (_mediaType, bytes) => {
  const found = cleanImage(Buffer.concat([bytes, Buffer.from(`<script>${SECRET}</script>`)]))!;
  expect(found.bytes.equals(bytes)).toBe(true);
});

it('a phone held upright stays upright: of Exif the orientation is kept and nothing else', () => {
  const { bytes } = cleanImage(jpegWith(exif(6)))!;
  expect(bytes.includes(SECRET)).toBe(false);
  // CIPA DC-008: the segment, byte order MM, one entry 0112, short, count 1, value 6.
  const tag = Buffer.from([0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6]);
  expect(bytes.indexOf(tag)).toBeGreaterThan(0);
  expect(cleanImage(bytes)!.bytes.equals(bytes)).toBe(true);
});

it.each([
  ['nothing', Buffer.alloc(0)],
  ['a page', Buffer.from('<!doctype html><script>alert(1)</script>')],
  ['a drawing', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>')],
  ['a GIF', Buffer.from('GIF89a\x01\0\x01\0\0\0\0;', 'latin1')],
  ['a PDF', Buffer.from('%PDF-1.7\n')],
  [
    'the first bytes of a JPEG and then a page',
    Buffer.from('\xff\xd8\xff\xe0<script>alert(1)</script>', 'latin1'),
  ],
  ['a JPEG without a picture', Buffer.from([0xff, 0xd8, 0xff, 0xd9])],
  ['a segment of length 0', jpegWith(Buffer.from([0xff, 0xe1, 0, 0]))],
  ['a sea of FF', Buffer.concat([Buffer.from([0xff, 0xd8]), Buffer.alloc(5000, 0xff)])],
])('%s is refused', (_what, bytes) => {
  expect(cleanImage(bytes)).toBeNull();
});

it('a picture that claims to be enormous is refused', () => {
  const huge = Buffer.from(PNG);
  huge.writeUInt32BE(100_000, 16);
  huge.writeUInt32BE(100_000, 20);
  expect(cleanImage(huge)).toBeNull();
});
