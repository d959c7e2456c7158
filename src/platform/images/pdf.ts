/**
 * A PDF made anew from the pages of another (ISO 32000-1): what acts by itself, files within, forms, notes on the pages
 * and what is told about the document (author, place) are not taken over, and photos lose what the camera noted.
 */
import { inflateSync } from 'node:zlib';
import { PDFArray, PDFDict, PDFDocument, PDFName, PDFRawStream } from 'pdf-lib';
import { readJpeg } from './jpeg.js';

/** More is a book, not a paper. */
export const MOST_PAGES = 40;
/** Of one compressed stream, and of all, unpacked: a page scanned in colour at 300 points to the inch takes 26 MB. */
const STREAM_BYTES = 64 * 1024 * 1024;
const ALL_BYTES = 256 * 1024 * 1024;
const GONE = ['Metadata', 'PieceInfo', 'AA', 'A', 'Annots', 'OpenAction', 'Names', 'AcroForm', 'AF', 'Thumb'];

/** The same pages as a document of their own, or null for what is no whole, open PDF. Equal input, equal output. */
export async function cleanPdf(from: Buffer): Promise<Buffer | null> {
  if (from.subarray(0, 5).toString('latin1') !== '%PDF-' || !unpacksReasonably(from)) return null;
  try {
    const source = await PDFDocument.load(from, { updateMetadata: false, throwOnInvalidObject: true });
    const count = source.getPageCount();
    if (count < 1 || count > MOST_PAGES) return null;
    for (const [ref, object] of source.context.enumerateIndirectObjects()) {
      const dict = object instanceof PDFRawStream ? object.dict : object;
      if (dict instanceof PDFDict) for (const key of GONE) dict.delete(PDFName.of(key));
      if (!(object instanceof PDFRawStream) || !isPhoto(object)) continue;
      const photo = readJpeg(Buffer.from(object.contents));
      if (!photo) return null;
      source.context.assign(ref, PDFRawStream.of(object.dict, photo.bytes));
    }
    const into = await PDFDocument.create({ updateMetadata: false });
    for (const page of await into.copyPages(source, source.getPageIndices())) into.addPage(page);
    return Buffer.from(await into.save({ useObjectStreams: false, updateFieldAppearances: false }));
  } catch {
    // Whatever its reader stumbles over, an encrypted document too, cannot be shown to be harmless.
    return null;
  }
}

/** Whether the stream is one JPEG and nothing round it. */
function isPhoto({ dict }: PDFRawStream): boolean {
  const filter = dict.lookup(PDFName.of('Filter'));
  const name = filter instanceof PDFArray && filter.size() === 1 ? filter.lookup(0) : filter;
  return name === PDFName.of('DCTDecode');
}

/** Whether nothing in it is made to exhaust whoever unpacks it. */
function unpacksReasonably(from: Buffer): boolean {
  const text = from.toString('latin1');
  if (
    /\/(LZWDecode|RunLengthDecode|Crypt)\b|FlateDecode\s*\/FlateDecode|\/Filter\s*\[?[^\]>]{0,200}#/.test(
      text,
    )
  )
    return false;
  let left = ALL_BYTES;
  for (const { index, 0: mark } of text.matchAll(/stream\r?\n/g)) {
    const at = index + mark.length;
    if (from[at] === undefined || (from[at] & 0x0f) !== 8) continue;
    try {
      left -= inflateSync(from.subarray(at), { maxOutputLength: Math.min(STREAM_BYTES, left) }).length;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'ERR_BUFFER_TOO_LARGE') return false;
    }
  }
  return true;
}
