/**
 * Reads a track in GPX 1.1 (the open format of topografix.com/GPX/1/1). What cannot be read is refused with the line and
 * the field; nothing is guessed. Entities are never expanded and a document type is refused, so a small file stays small.
 */
import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { Temporal } from 'temporal-polyfill';
import type { TrackPoint } from './point.js';

export type GpxProblemCode =
  | 'too-large'
  | 'document-type'
  | 'not-xml'
  | 'not-gpx-1.1'
  | 'latitude'
  | 'longitude'
  | 'elevation'
  | 'time-missing'
  | 'time'
  | 'time-backwards'
  | 'too-many-points'
  | 'too-few-points';

/** One thing wrong with the file. `line` is where the element begins, counted from 1. */
export interface GpxProblem {
  code: GpxProblemCode;
  line: number | null;
  /** Path of the field, counted from 0: `trk[0].trkseg[1].trkpt[3].time`. */
  field: string;
  /** What stands there, cut short; null where nothing does. */
  found: string | null;
}

/** What was read and left out of it. */
export interface GpxNotes {
  /** Points that repeat the instant of the point before. */
  repeatedInstants: number;
  /** Points without an elevation. */
  withoutElevation: number;
}

export type GpxReading =
  { ok: true; points: TrackPoint[]; notes: GpxNotes } | { ok: false; problems: GpxProblem[] };

/** How much is read. Ten hours at a point a second are 36,000 points and some 6 million characters. */
export interface GpxBounds {
  mostCharacters: number;
  mostPoints: number;
  /** The reading stops when so many things are wrong. */
  mostProblems: number;
}

export const GPX_BOUNDS: GpxBounds = { mostCharacters: 16_000_000, mostPoints: 60_000, mostProblems: 20 };

const NAMESPACE = 'http://www.topografix.com/GPX/1/1';
/** Deeper than any GPX goes, extensions included. */
const DEEPEST = 24;
/** Fewer points than this are no flight. */
const LEAST_POINTS = 2;
const LONGEST_FOUND = 60;
/** xsd:decimal with an exponent allowed, since recorders write one. */
const NUMBER = /^[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?$/;
/** An instant with its zone; a time without one could be anybody's local time. */
const INSTANT = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,9})?(Z|[+-]\d\d:\d\d)$/;

interface RawPoint {
  '@lat'?: string;
  '@lon'?: string;
  ele?: unknown;
  time?: unknown;
}

const parser = new XMLParser({
  ignoreAttributes: false,
  attributeNamePrefix: '@',
  // Numbers are read below, so that a bad one can be named.
  parseTagValue: false,
  parseAttributeValue: false,
  processEntities: false,
  captureMetaData: true,
  maxNestedTags: DEEPEST,
  isArray: (name) => name === 'trk' || name === 'trkseg' || name === 'trkpt',
});
const META = XMLParser.getMetaDataSymbol() as unknown as symbol;

/** Reads the text of a file. */
export function readGpx(text: string, bounds: GpxBounds = GPX_BOUNDS): GpxReading {
  const refuse = (
    code: GpxProblemCode,
    line: number | null,
    found: string | null,
    field = 'gpx',
  ): GpxReading => ({
    ok: false,
    problems: [{ code, line, field, found }],
  });
  if (text.length > bounds.mostCharacters) return refuse('too-large', null, `${text.length}`);
  const lineOf = linesOf(text);
  const documentType = text.search(/<!DOCTYPE/i);
  if (documentType >= 0) return refuse('document-type', lineOf(documentType), null);
  const valid = XMLValidator.validate(text);
  if (valid !== true) return refuse('not-xml', valid.err.line, cut(valid.err.msg));
  let root: unknown;
  try {
    root = (parser.parse(text) as { gpx?: unknown }).gpx;
  } catch (error) {
    return refuse('not-xml', null, cut(String((error as Error).message)));
  }
  if (!isElement(root)) return refuse('not-gpx-1.1', 1, null);
  if (root['@version'] !== '1.1') return refuse('not-gpx-1.1', 1, cut(root['@version']), 'gpx.version');
  if (root['@xmlns'] !== NAMESPACE) return refuse('not-gpx-1.1', 1, cut(root['@xmlns']), 'gpx.xmlns');
  return readPoints(root, bounds, lineOf);
}

function readPoints(
  root: Record<string, unknown>,
  bounds: GpxBounds,
  lineOf: (at: number) => number,
): GpxReading {
  const points: TrackPoint[] = [];
  const problems: GpxProblem[] = [];
  const notes: GpxNotes = { repeatedInstants: 0, withoutElevation: 0 };
  let [segment, seen] = [0, 0];
  for (const [trk, track] of elements(root.trk).entries())
    for (const [seg, stretch] of elements(track.trkseg).entries()) {
      for (const [index, raw] of elements(stretch.trkpt).entries()) {
        const field = `trk[${trk}].trkseg[${seg}].trkpt[${index}]`;
        const line = lineOf((raw as Record<symbol, { startIndex: number }>)[META]?.startIndex ?? 0);
        seen += 1;
        if (seen > bounds.mostPoints) {
          problems.push({ code: 'too-many-points', line, field, found: null });
          return { ok: false, problems };
        }
        const read = readPoint(raw, field, line, segment);
        if (!('atSeconds' in read)) problems.push(...read);
        else keep(read, points, notes, problems, `${field}.time`, line, raw.time);
        if (problems.length >= bounds.mostProblems)
          return { ok: false, problems: problems.slice(0, bounds.mostProblems) };
      }
      segment += 1;
    }
  if (problems.length > 0) return { ok: false, problems };
  if (points.length < LEAST_POINTS)
    return {
      ok: false,
      problems: [{ code: 'too-few-points', line: null, field: 'trk', found: `${points.length}` }],
    };
  return { ok: true, points, notes };
}

/** Adds a point, unless it does not come after the one before. */
function keep(
  point: TrackPoint,
  points: TrackPoint[],
  notes: GpxNotes,
  problems: GpxProblem[],
  field: string,
  line: number,
  time: unknown,
): void {
  const before = points[points.length - 1];
  if (before && point.atSeconds < before.atSeconds) {
    problems.push({ code: 'time-backwards', line, field, found: cut(time) });
    return;
  }
  if (before && point.atSeconds === before.atSeconds) {
    notes.repeatedInstants += 1;
    return;
  }
  if (point.elevationM === null) notes.withoutElevation += 1;
  points.push(point);
}

function readPoint(raw: RawPoint, field: string, line: number, segment: number): TrackPoint | GpxProblem[] {
  const problems: GpxProblem[] = [];
  const number = (code: GpxProblemCode, name: string, value: unknown, most: number): number => {
    const read = typeof value === 'string' && NUMBER.test(value.trim()) ? Number(value) : Number.NaN;
    if (!(Math.abs(read) <= most))
      problems.push({ code, line, field: `${field}.${name}`, found: cut(value) });
    return read;
  };
  const latitudeDeg = number('latitude', 'lat', raw['@lat'], 90);
  const longitudeDeg = number('longitude', 'lon', raw['@lon'], 180);
  // Above the highest balloon something else than an elevation stands there.
  const elevationM = raw.ele === undefined ? null : number('elevation', 'ele', raw.ele, 60_000);
  const atSeconds = secondsOf(raw.time);
  if (atSeconds === null)
    problems.push({
      code: raw.time === undefined ? 'time-missing' : 'time',
      line,
      field: `${field}.time`,
      found: cut(raw.time),
    });
  if (problems.length > 0 || atSeconds === null) return problems;
  return { atSeconds, latitudeDeg, longitudeDeg, elevationM, segment };
}

function secondsOf(value: unknown): number | null {
  if (typeof value !== 'string' || !INSTANT.test(value.trim())) return null;
  try {
    return Temporal.Instant.from(value.trim()).epochMilliseconds / 1000;
  } catch {
    // A shape of an instant that is none: the 31st of April.
    return null;
  }
}

const isElement = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The elements of a list; one that holds text only has nothing to read. */
function elements(value: unknown): Record<string, unknown>[] {
  return Array.isArray(value) ? value.map((one) => (isElement(one) ? one : {})) : [];
}

function cut(value: unknown): string | null {
  if (value === undefined || value === null) return null;
  const text = typeof value === 'string' ? value : 'more than one, or an element';
  return text.length > LONGEST_FOUND ? `${text.slice(0, LONGEST_FOUND)}…` : text;
}

/** The line, from 1, that a character stands on. */
function linesOf(text: string): (at: number) => number {
  const breaks: number[] = [];
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) breaks.push(at);
  return (at) => {
    let [low, high] = [0, breaks.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (breaks[middle]! < at) low = middle + 1;
      else high = middle;
    }
    return low + 1;
  };
}
