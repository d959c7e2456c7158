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
import { addDays, type LocalDate } from '../calendar/dates.js';
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

/**
 * The flight's interval in the forms rules compare with: seconds, local dates, instants as text. Worked out once for all
 * the rules judged at one departure; dates and instants of one length compare as text, which is most of what rules ask.
 */
export class FlightTime {
  readonly arrives: EpochSeconds;
  readonly departsOn: LocalDate;
  readonly arrivesOn: LocalDate;
  private departsWritten: Instant | null = null;
  private arrivesWritten: Instant | null = null;
  private lastDays = -1;
  private lastDate: LocalDate = '';

  constructor(readonly of: MomentOf) {
    this.arrives = of.departs + of.durationSeconds;
    this.departsOn = localDateOf(of.departs, of.zone);
    this.arrivesOn = localDateOf(this.arrives, of.zone);
  }

  get departsText(): Instant {
    return (this.departsWritten ??= toInstant(this.of.departs));
  }

  get arrivesText(): Instant {
    return (this.arrivesWritten ??= toInstant(this.arrives));
  }

  /** The date so many days before the arrival's. */
  arrivalDateLess(days: number): LocalDate {
    // Asked of each entry of a log in turn, for the same days.
    if (days !== this.lastDays) {
      this.lastDays = days;
      this.lastDate = addDays(this.arrivesOn, -days);
    }
    return this.lastDate;
  }
}

/** The flight's interval [departs, arrives], both ends included: a flight must be legal at the instant it arrives. */
export class Moment {
  private readonly time: FlightTime;
  private next = Number.POSITIVE_INFINITY;
  /** First date whose beginning, met by the departure, changes an answer; turned into seconds only when asked for. */
  private nextStart: LocalDate = NEVER;
  /** First date whose end, met by the arrival, changes an answer. */
  private nextEnd: LocalDate = NEVER;

  constructor(
    of: MomentOf | FlightTime,
    private readonly unwatched = false,
  ) {
    this.time = of instanceof FlightTime ? of : new FlightTime(of);
  }

  /** The earliest later departure at which an answer given by this moment would differ; null when none would. */
  get nextChange(): EpochSeconds | null {
    const { zone, durationSeconds } = this.time.of;
    if (this.nextStart !== NEVER) this.changesAt(startOfDay(this.nextStart, zone));
    if (this.nextEnd !== NEVER) this.changesAt(endOfDay(this.nextEnd, zone) - durationSeconds);
    this.nextStart = NEVER;
    this.nextEnd = NEVER;
    return Number.isFinite(this.next) ? this.next : null;
  }

  /**
   * The same moment for what only a sentence tells: its answers are not remembered as changes. Never for a question on
   * which the branch taken or a condition hangs.
   */
  aside(): Moment {
    return new Moment(this.time, true);
  }

  /** Planned length in seconds; it does not move with the departure, so reading it is not a question about time. */
  get durationSeconds(): number {
    return this.time.of.durationSeconds;
  }

  get zone(): string {
    return this.time.of.zone;
  }

  /** Remembers that an answer changes for departures at or after `departure`. */
  changesAt(departure: EpochSeconds): void {
    if (departure > this.time.of.departs && departure < this.next) this.next = departure;
  }

  /** Does the flight end before `instant`? */
  arrivesBefore(instant: Instant | EpochSeconds): boolean {
    if (typeof instant === 'string' && instant.length === INSTANT_LENGTH && instant <= this.time.arrivesText)
      return false;
    const edge = seconds(instant) - this.time.of.durationSeconds;
    this.changesAt(edge);
    return this.time.of.departs < edge;
  }

  /** Does the flight start at or after `instant`? Use it for "has this event happened?" */
  departsAtOrAfter(instant: Instant | EpochSeconds): boolean {
    if (typeof instant === 'string' && instant.length === INSTANT_LENGTH && instant <= this.time.departsText)
      return true;
    const edge = seconds(instant);
    this.changesAt(edge);
    return this.time.of.departs >= edge;
  }

  /** Is the whole flight over by the end of `date`, in the club's zone? Use it for "valid through". */
  endsOnOrBefore(date: LocalDate): boolean {
    if (this.time.arrivesOn > date) return false;
    if (date < this.nextEnd) this.nextEnd = date;
    return true;
  }

  /** Does `date` lie within the preceding `days` days of the whole flight? A date exactly so many days back does. */
  endsWithinDaysOf(date: LocalDate, days: number): boolean {
    if (date < this.time.arrivalDateLess(days)) return false;
    return this.unwatched || this.endsOnOrBefore(addDays(date, days));
  }

  /** Does the flight start on or after `date`, in the club's zone? */
  startsOnOrAfter(date: LocalDate): boolean {
    if (this.time.departsOn >= date) return true;
    if (date < this.nextStart) this.nextStart = date;
    return false;
  }

  /** Does the flight share time with [from, to)? Back-to-back intervals do not. A null `to` never ends. */
  overlaps(from: Instant | EpochSeconds, to: Instant | EpochSeconds | null): boolean {
    const { departs, durationSeconds } = this.time.of;
    const begins = seconds(from) - durationSeconds;
    this.changesAt(begins + 1);
    const startsInside = departs > begins || (durationSeconds === 0 && departs === begins);
    if (durationSeconds === 0) this.changesAt(begins);
    return startsInside && (to === null || !this.departsAtOrAfter(to));
  }

  /** Does the flight start no later than `instant`? Use it for "may be booked up to so long ahead". */
  departsAtOrBefore(instant: Instant | EpochSeconds): boolean {
    return !this.departsAtOrAfter(seconds(instant) + 1);
  }

  /** The instant so many hours after the facts were gathered. */
  hoursFromKnowledge(hours: number): Instant {
    return toInstant(this.time.of.knownAt + Math.round(hours * 3600));
  }

  /** The date on which the facts were gathered, in the club's zone: where hypothetical acts are placed. */
  knowledgeDate(): LocalDate {
    return localDateOf(this.time.of.knownAt, this.zone);
  }

  /** Calendar date of departure in the club's zone. */
  departureDate(): LocalDate {
    const date = this.time.departsOn;
    this.changesAt(endOfDay(date, this.zone));
    return date;
  }

  /** Calendar date of arrival in the club's zone. */
  arrivalDate(): LocalDate {
    const date = this.time.arrivesOn;
    this.changesAt(endOfDay(date, this.zone) - this.durationSeconds);
    return date;
  }

  /**
   * Asks a question that is a step function of time with edges known only for a while (the sun's).
   * `edges` gives the instants, within [from, to], at which the answer for a point in time flips; the moment remembers
   * each as a departure edge and as an arrival edge, and the end of what is known. `clock` says that it is the club's clock
   * that was asked about, and not the sun: explanations show the sun to whoever asked about it.
   */
  watch<T>(
    ask: (span: { departs: EpochSeconds; arrives: EpochSeconds }) => {
      answer: T;
      edges: EpochSeconds[];
      knownTo: EpochSeconds;
      clock?: true;
    },
  ): T {
    const { departs, durationSeconds } = this.time.of;
    const { answer, edges, knownTo } = ask({ departs, arrives: this.time.arrives });
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

/** Later than every date. */
const NEVER: LocalDate = '9999-99-99';
/** Length of an instant in its usual form, 'YYYY-MM-DDTHH:MM:SSZ'; those compare as text. */
const INSTANT_LENGTH = 20;

const seconds = (value: Instant | EpochSeconds): EpochSeconds =>
  typeof value === 'number' ? value : toSeconds(value);
