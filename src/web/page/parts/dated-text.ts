/**
 * Sentences of the service carry their dates in ISO 8601: '2026-11-23', '2026-11-23 14:30' (the club's clock),
 * '2026-11-23T20:30:00Z'. Here they are found, so that the page can write them as the reader does.
 */

/** A piece of a sentence: words, or a date or time with its machine form. */
export type Piece =
  | { kind: 'words'; text: string }
  | { kind: 'day'; date: string }
  | { kind: 'clock'; date: string; clock: string }
  | { kind: 'instant'; instant: string };

const DATED =
  /(?<instant>\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}Z)|(?<date>\d{4}-\d{2}-\d{2})(?: (?<clock>\d{2}:\d{2})\b)?/g;

/** Cuts a sentence at its dates. Joined again, the pieces are the sentence. */
export function piecesOf(sentence: string): Piece[] {
  const pieces: Piece[] = [];
  let at = 0;
  for (const match of sentence.matchAll(DATED)) {
    if (match.index > at) pieces.push({ kind: 'words', text: sentence.slice(at, match.index) });
    const { instant, date, clock } = match.groups as { instant?: string; date?: string; clock?: string };
    if (instant) pieces.push({ kind: 'instant', instant });
    else if (clock) pieces.push({ kind: 'clock', date: date!, clock });
    else pieces.push({ kind: 'day', date: date! });
    at = match.index + match[0].length;
  }
  if (at < sentence.length) pieces.push({ kind: 'words', text: sentence.slice(at) });
  return pieces;
}

/** '23 Nov 2026', or as the locale writes it; an impossible date stays as it is. */
export function dayInWords(date: string, locale: string): string {
  const day = new Date(`${date}T12:00:00Z`);
  if (Number.isNaN(day.getTime()) || !day.toISOString().startsWith(date)) return date;
  return new Intl.DateTimeFormat(locale, {
    timeZone: 'UTC',
    day: 'numeric',
    month: 'short',
    year: 'numeric',
  }).format(day);
}
