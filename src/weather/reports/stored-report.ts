/** Rows of weather_reports as facts. */
import type { WeatherReport } from '../../rules/index.js';
import { readReport, UnreadableReport, type ReadReport } from '../decode/read-report.js';

/** A row as gathered. */
export interface StoredReport extends Pick<
  WeatherReport,
  'id' | 'kind' | 'text' | 'issuedAt' | 'obtainedAt'
> {
  /** The airfield's code. */
  airfield: string;
  /** For whose flights it was pasted; null: fetched. */
  memberId: string | null;
}

/** Reading costs more than judging, and the same few reports are read for every flight of an afternoon. */
const READ = new Map<string, ReadReport | null>();
const MOST_REMEMBERED = 2000;

/** The reports that speak for these people's flights: what was fetched, and what was pasted for them. */
export function reportsFor(rows: readonly StoredReport[], memberIds: readonly string[]): WeatherReport[] {
  return rows
    .filter(({ memberId }) => memberId === null || memberIds.includes(memberId))
    .flatMap((row): WeatherReport[] => {
      const read = readOnce(row);
      // A text that no parser can read any more tells nothing, and its absence is a condition.
      if (read === null) return [];
      const { id, airfield, issuedAt, obtainedAt, memberId } = row;
      return [
        { ...read, id, airfield, issuedAt, obtainedAt, source: memberId === null ? 'fetched' : 'pasted' },
      ];
    });
}

function readOnce({ kind, text, issuedAt }: StoredReport): ReadReport | null {
  const key = `${kind} ${issuedAt} ${text}`;
  const known = READ.get(key);
  if (known !== undefined) return known;
  if (READ.size >= MOST_REMEMBERED) READ.clear();
  const read = tryRead(kind, text, issuedAt);
  READ.set(key, read);
  return read;
}

function tryRead(kind: StoredReport['kind'], text: string, issuedAt: string): ReadReport | null {
  try {
    return readReport(kind, text, issuedAt);
  } catch (error) {
    if (error instanceof UnreadableReport) return null;
    throw error;
  }
}
