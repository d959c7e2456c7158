/**
 * The flight's place in time, and the only way a rule may ask about time.
 *
 * Every question compares the flight with a fixed instant, and remembers the next departure at which the comparison
 * would come out differently. A verdict depends on time through these questions alone, so between two remembered
 * departures it cannot change: `until` and the timeline come from here, no rule computes them by hand.
 *
 * INVARIANT: no rule sees the departure as a number. `departureDate` and `arrivalDate` are answered as dates and
 * remember the midnight at which they change.
 */
import type { LocalDate } from '../calendar/dates.js';
import {
  endOfDay,
  localDateOf,
  startOfDay,
  toInstant,
  toSeconds,
  type EpochSeconds,
  type Instant,
} from '../calendar/instants.js';

/** What a moment is made of. */
export interface MomentOf {
  /** Departure: the instant `as of` which the flight is judged. */
  departs: EpochSeconds;
  /** Planned length from departure to arrival, seconds, >= 0. */
  durationSeconds: number;
  /** When the facts were gathered; lead times count from here. */
  knownAt: EpochSeconds;
  /** IANA zone of the club: law counts days here. */
  zone: string;
}

/** The flight's interval [departs, arrives], both ends included: a flight must be legal at the instant it arrives. */
export class Moment {
  private next = Number.POSITIVE_INFINITY;

  constructor(private readonly of: MomentOf) {}

  /** The earliest later departure at which an answer given by this moment would differ; null when none would. */
  get nextChange(): EpochSeconds | null {
    return Number.isFinite(this.next) ? this.next : null;
  }

  /** Planned length in seconds; it does not move with the departure, so reading it is not a question about time. */
  get durationSeconds(): number {
    return this.of.durationSeconds;
  }

  get zone(): string {
    return this.of.zone;
  }

  /** Remembers that an answer changes for departures at or after `departure`. */
  changesAt(departure: EpochSeconds): void {
    if (departure > this.of.departs && departure < this.next) this.next = departure;
  }

  /** Does the flight end before `instant`? */
  arrivesBefore(instant: Instant | EpochSeconds): boolean {
    const edge = seconds(instant) - this.of.durationSeconds;
    this.changesAt(edge);
    return this.of.departs < edge;
  }

  /** Does the flight start at or after `instant`? Use it for "has this event happened?" */
  departsAtOrAfter(instant: Instant | EpochSeconds): boolean {
    const edge = seconds(instant);
    this.changesAt(edge);
    return this.of.departs >= edge;
  }

  /** Is the whole flight over by the end of `date`, in the club's zone? Use it for "valid through". */
  endsOnOrBefore(date: LocalDate): boolean {
    return this.arrivesBefore(endOfDay(date, this.of.zone));
  }

  /** Does the flight start on or after `date`, in the club's zone? */
  startsOnOrAfter(date: LocalDate): boolean {
    return this.departsAtOrAfter(startOfDay(date, this.of.zone));
  }

  /** Does the flight share time with [from, to)? Back-to-back intervals do not. A null `to` never ends. */
  overlaps(from: Instant | EpochSeconds, to: Instant | EpochSeconds | null): boolean {
    const begins = seconds(from) - this.of.durationSeconds;
    this.changesAt(begins + 1);
    const startsInside =
      this.of.departs > begins || (this.of.durationSeconds === 0 && this.of.departs === begins);
    if (this.of.durationSeconds === 0) this.changesAt(begins);
    return startsInside && (to === null || !this.departsAtOrAfter(to));
  }

  /** Does the flight start no later than `instant`? Use it for "may be booked up to so long ahead". */
  departsAtOrBefore(instant: Instant | EpochSeconds): boolean {
    return !this.departsAtOrAfter(seconds(instant) + 1);
  }

  /** The instant so many hours after the facts were gathered. */
  hoursFromKnowledge(hours: number): Instant {
    return toInstant(this.of.knownAt + Math.round(hours * 3600));
  }

  /** The date on which the facts were gathered, in the club's zone: where hypothetical acts are placed. */
  knowledgeDate(): LocalDate {
    return localDateOf(this.of.knownAt, this.of.zone);
  }

  /** Calendar date of departure in the club's zone. */
  departureDate(): LocalDate {
    const date = localDateOf(this.of.departs, this.of.zone);
    this.changesAt(endOfDay(date, this.of.zone));
    return date;
  }

  /** Calendar date of arrival in the club's zone. */
  arrivalDate(): LocalDate {
    const date = localDateOf(this.of.departs + this.of.durationSeconds, this.of.zone);
    this.changesAt(endOfDay(date, this.of.zone) - this.of.durationSeconds);
    return date;
  }

  /**
   * Asks a question that is a step function of time with edges known only for a while (the sun's).
   * `edges` gives the instants, within [from, to], at which the answer for a point in time flips; the moment remembers
   * each as a departure edge and as an arrival edge, and the end of what is known.
   */
  watch<T>(
    ask: (span: { departs: EpochSeconds; arrives: EpochSeconds }) => {
      answer: T;
      edges: EpochSeconds[];
      knownTo: EpochSeconds;
    },
  ): T {
    const { departs, durationSeconds } = this.of;
    const { answer, edges, knownTo } = ask({ departs, arrives: departs + durationSeconds });
    for (const edge of edges) {
      this.changesAt(edge);
      this.changesAt(edge + 1);
      this.changesAt(edge - durationSeconds);
      this.changesAt(edge - durationSeconds + 1);
    }
    this.changesAt(knownTo - durationSeconds);
    return answer;
  }
}

const seconds = (value: Instant | EpochSeconds): EpochSeconds =>
  typeof value === 'number' ? value : toSeconds(value);
