/**
 * The fact sheet an entry is laid over: the base sheet of the rules' own case tables, on which every rule is met. A scene
 * is judged by the real engine with the policy a new club starts with.
 */
import { Temporal } from 'temporal-polyfill';
import {
  decide,
  decideCrew,
  judgeAll,
  momentAt,
  Parameters,
  known,
  localDateOf,
  plusSeconds,
  replaceFact,
  rulesetFor,
  toInstant,
  toSeconds,
  unknownFact,
  type AircraftType,
  type FactKey,
  type FactSheet,
  type FactValue,
  type Finding,
  type FlightFacts,
  type Instant,
  type LocalDate,
  type Ruleset,
} from '../../rules/index.js';
import { startingPolicy } from '../../rules/packs/club/starting-policy.js';
import { baseSheet } from '../../rules/workshop/base-sheet.js';

/** Longest validity an entry may ask for, in days: registrations run seven years and more. */
const HORIZON = { days: 6000, stepsPerRule: 6000 };

export class Scene {
  readonly sheet: FactSheet = baseSheet();

  constructor(asOf?: LocalDate, clockMinutes = 12 * 60, durationMinutes = 0) {
    if (asOf !== undefined) this.departAt(this.instant(asOf, clockMinutes), durationMinutes);
  }

  get zone(): string {
    return this.sheet.zone;
  }

  /** The flight departs then; the facts are those known an hour before. */
  departAt(departs: Instant, durationMinutes: number): this {
    this.sheet.flight.departs = departs;
    this.sheet.flight.arrives = plusSeconds(departs, durationMinutes * 60);
    this.sheet.knownAt = plusSeconds(departs, -3600);
    return this;
  }

  /** The instant at which clocks of the club show so many minutes after midnight on a date. */
  instant(date: LocalDate, clockMinutes: number): Instant {
    return clockInstant(date, clockMinutes, this.zone);
  }

  /** The club's date of an instant. */
  dateOf(instant: Instant): LocalDate {
    return localDateOf(toSeconds(instant), this.zone);
  }

  flight(fields: Partial<FlightFacts>): this {
    Object.assign(this.sheet.flight, fields);
    return this;
  }

  /** The flight carries so many passengers beside the member. */
  passengers(count: number): this {
    return this.flight({ personsOnBoard: 1 + count, purpose: count > 0 ? 'passengers' : 'solo' });
  }

  /** Changes what the aircraft is; keys whose value is undefined are left as they are. */
  aircraft(fields: Partial<AircraftType>): this {
    const { type } = this.sheet.aircraft;
    if (!type.known) throw new Error('the base sheet knows its aircraft');
    for (const [key, value] of Object.entries(fields)) {
      if (value !== undefined) Object.assign(type.value, { [key]: value });
    }
    return this;
  }

  set<K extends FactKey>(key: K, value: FactValue<K>): this {
    const changed = replaceFact(this.sheet, this.crew(), key, known(value, this.sheet.knownAt) as never);
    Object.assign(this.sheet, changed);
    return this;
  }

  forget(key: FactKey): this {
    const changed = replaceFact(
      this.sheet,
      this.crew(),
      key,
      unknownFact(`${key} is not on record`) as never,
    );
    Object.assign(this.sheet, changed);
    return this;
  }

  /** What a rule finds on this flight. */
  finding(rule: string, at: Instant = this.sheet.flight.departs): Finding {
    const { judged } = judgeAll(this.sheet, this.alone(rule), toSeconds(at));
    return judged[0]!.finding;
  }

  /** True when the rule lets the flight go, false when it is short; in words when the rule cannot tell. */
  allows(rule: string, at?: Instant): boolean | string {
    const { status, says } = this.finding(rule, at);
    if (status === 'met' || status === 'not-applicable') return true;
    return status === 'short' ? false : `${status}: ${says}`;
  }

  /** All of several rules; the first that does not simply allow the flight decides. */
  allowsAll(...rules: readonly string[]): boolean | string {
    const answers = rules.map((rule) => this.allows(rule));
    return answers.find((one) => one === false) ?? answers.find((one) => one !== true) ?? true;
  }

  /**
   * The last date on which the rule is still met, by the engine's own `until`: from the day of the flight, or when it is
   * too late then, from the newest of `events` (the dates of the evidence) on which it was met. Null when time alone
   * never ends it, or it was never met.
   */
  lastValidDate(rule: string, events: readonly (LocalDate | undefined)[] = []): LocalDate | null {
    const clock = this.sheet.flight.departs.slice(10);
    const dates = events
      .filter((date) => date !== undefined)
      .sort()
      .reverse();
    for (const at of [this.sheet.flight.departs, ...dates.map((date) => `${date}${clock}`)]) {
      if (this.finding(rule, at).status !== 'met') continue;
      const decision = decide(this.sheet, startingPolicy(), this.alone(rule), at, HORIZON);
      const until = decision.findings[0]!.until;
      return until === null ? null : localDateOf(toSeconds(until) - 1, this.zone);
    }
    return null;
  }

  /** The parameters in force on the day of the flight, for the pure functions that read them. */
  parameters(ids: readonly string[]): Parameters {
    const { book } = rulesetFor(this.sheet.jurisdiction, startingPolicy());
    return new Parameters(book, momentAt(this.sheet, toSeconds(this.sheet.flight.departs)), ids);
  }

  /** Acts the finding offers as cures. */
  acts(rule: string): string[] {
    return this.finding(rule).remedies.map((remedy) => remedy.act);
  }

  private alone(id: string): Ruleset {
    const { rules, book } = rulesetFor(this.sheet.jurisdiction, startingPolicy());
    const rule = rules.find((one) => one.id === id);
    if (!rule) throw new Error(`the ${this.sheet.jurisdiction} pack has no rule ${id}`);
    return { rules: [rule], book };
  }

  private crew() {
    return decideCrew(this.sheet.flight, { secondPilotIsPassenger: true });
  }
}

/** The instant at which clocks in a zone show so many minutes after midnight on a date. */
export function clockInstant(date: LocalDate, clockMinutes: number, zone: string): Instant {
  const clock = Temporal.PlainTime.from({ hour: Math.floor(clockMinutes / 60), minute: clockMinutes % 60 });
  const at = Temporal.PlainDate.from(date).toZonedDateTime({ timeZone: zone, plainTime: clock });
  return toInstant(Math.floor(at.epochMilliseconds / 1000));
}
