import { ProblemException } from '../../platform/problems/index.js';
import { toInstant, toSeconds, type Span } from '../../rules/index.js';
import type { FlightRequestDto } from '../flight-request.dto.js';

/** Longest span of departures: a year, leap years too. */
export const LONGEST_SPAN_DAYS = 366;
/** How long ago the first departure may be, as for a decision: somebody may be standing at the aircraft. */
const GRACE_SECONDS = 15 * 60;
const DAY = 86_400;

/** What a question about a span gives besides the flight. */
export interface SpanRequest {
  from: string;
  to: string;
  durationMinutes: number;
  weather?: unknown;
}

const refuse = (field: string, detail: string): ProblemException =>
  new ProblemException('flight-invalid', { detail, field });

/**
 * The departures to look at.
 *
 * @throws ProblemException 422 naming the field: weather told, a span that is none, begins in the past or is too long.
 */
export function spanOf(request: SpanRequest, knownAt: string): Span {
  if (request.weather !== undefined) {
    throw refuse(
      'weather',
      'Weather told for one flight does not hold for a span. Leave it out: what hangs on it becomes a condition to settle ' +
        'before departure.',
    );
  }
  const from = toSeconds(request.from);
  const to = toSeconds(request.to);
  if (from < toSeconds(knownAt) - GRACE_SECONDS)
    throw refuse('from', `The span begins in the past (it is ${knownAt}); begin it now or later.`);
  if (to <= from) throw refuse('to', 'The span must end after it begins; change one of the two times.');
  if (to - from > LONGEST_SPAN_DAYS * DAY)
    throw refuse('to', `A span lasts at most ${LONGEST_SPAN_DAYS} days; ask for less at once.`);
  return { from, to };
}

/** Days of a span, those begun counted whole: what its size is measured in. */
export const daysOf = ({ from, to }: Span): number => Math.ceil((to - from) / DAY);

/** The flight as it would be asked for at the span's first departure; `Rest` is what a flight is besides its times. */
export function firstFlight<Rest extends object>(
  rest: Rest,
  { from, durationMinutes }: SpanRequest,
): Rest & Pick<FlightRequestDto, 'departs' | 'arrives'> {
  return { ...rest, departs: from, arrives: toInstant(toSeconds(from) + durationMinutes * 60) };
}
