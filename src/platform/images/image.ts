/**
 * What a photo is, told by its content alone, and the same photo without what the camera noted beside the picture: place,
 * owner, serial number, thumbnails. Bytes behind the picture's end are cut off. Pixels are not touched.
 */
import { readJpeg } from './jpeg.js';
import { readPng } from './png.js';
import { readWebp } from './webp.js';

export type MediaType = 'image/jpeg' | 'image/png' | 'image/webp';

/** A picture as it is kept. */
export interface CleanImage {
  mediaType: MediaType;
  widthPx: number;
  heightPx: number;
  bytes: Buffer;
}

/** A picture as a reader of one format gives it; null from a reader whose format it is not, or that cannot follow it. */
export type Read = Omit<CleanImage, 'mediaType'> | null;

/** More pixels than phones take; what claims more is made to exhaust whoever looks at it. */
export const MOST_PIXELS = 120_000_000;

/** Null for anything but a whole JPEG, PNG or WebP still picture. */
export function cleanImage(bytes: Buffer): CleanImage | null {
  for (const [mediaType, read] of [
    ['image/jpeg', readJpeg],
    ['image/png', readPng],
    ['image/webp', readWebp],
  ] as const) {
    const found = read(bytes);
    if (!found) continue;
    const { widthPx, heightPx } = found;
    if (widthPx < 1 || heightPx < 1 || widthPx * heightPx > MOST_PIXELS) return null;
    return { mediaType, ...found };
  }
  return null;
}
