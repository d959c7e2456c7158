/** What an entry of the published schema says of itself, and how its value is worked out. */
import type { LocalDate } from '../../calendar/dates.js';
import type { Crew } from '../../engine/crew.js';
import type { Moment } from '../../engine/moment.js';
import type { Counted, FactView } from '../../engine/rule.js';
import type { AircraftFacts } from '../../facts/aircraft.js';
import type { FactKey, FactValue, Role } from '../../facts/keys.js';
import type { PersonFacts } from '../../facts/person.js';
import type { DateValue, DaysValue } from '../dates.js';

/** Types of values in expressions, as CEL names them; `Date` and `Days` are ours (dates.ts). */
export type ValueType = 'bool' | 'int' | 'double' | 'string' | 'list<string>' | 'Date' | 'Days';

/** What an expression may name before the dot. */
export type Owner =
  'flight' | 'pilot' | 'member' | 'instructor' | 'aircraft' | 'wind' | 'weather' | 'loading';

export type PersonSubject = Exclude<keyof PersonFacts, 'id' | 'name'>;
export type AircraftSubject = Exclude<keyof AircraftFacts, 'id'>;

/** How an entry looks at the facts. It may ask about time through the moment only. */
export interface Reading {
  readonly flight: FactView['flight'];
  readonly crew: Crew;
  readonly moment: Moment;
  /** A fact of the person the owner names. @throws UnknownFact */
  person<S extends PersonSubject>(subject: S): FactValue<`${Role}.${S}` & FactKey>;
  /** A fact of the aircraft. @throws UnknownFact */
  aircraft<S extends AircraftSubject>(subject: S): FactValue<`aircraft.${S}` & FactKey>;
  /** Accounts for records looked through. @throws CostExceeded */
  spend(records: number): void;
  /** Names records that gave something. */
  counted(records: readonly Counted[]): void;
}

/** A value as an entry gives it: numbers for `int` and `double`, a day, never (null), or one of the flight's dates. */
export type Raw = boolean | number | string | readonly string[] | LocalDate | DateValue | DaysValue | null;

/** What a method takes: days to look back over, hours, or a clock reading. Written out, never computed. */
export type ArgumentKind = 'days' | 'hours' | 'clock' | 'Date';

/** One value that expressions may read. */
export interface Entry {
  name: string;
  type: ValueType;
  /** Unit of a number: 'h', 'ft', 'kt', ... */
  unit?: string;
  /** What it is, for people, a sentence. */
  says: string;
  /** The words it may be, of a text or a list. */
  words?: readonly string[];
  /** Least and greatest value of a number, where the facts bound it. */
  range?: readonly [number, number];
  /** Subjects of the owner (a person) that are read. */
  own?: readonly PersonSubject[];
  /** Subjects of the aircraft that are read. */
  aircraft?: readonly AircraftSubject[];
  /** Present for methods: `pilot.landingsInDays(90)`. */
  takes?: { kind: ArgumentKind; name: string };
  /** The member need not say it before the flight is near: missing, it may become a condition. */
  toldLate?: true;
  /** The value changes with the departure even if nothing else happens. */
  overTime?: true;
  get(reading: Reading, argument: never): Raw;
}

/** A name before the dot, with its entries. */
export interface OwnerEntries {
  owner: Owner;
  says: string;
  /** Whose facts `own` subjects are, for people. */
  role: Role | null;
  entries: readonly Entry[];
}
