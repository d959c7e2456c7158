/** A point of the search: acts done in an order, the facts as they would then be, and how the flight fares on them. */
import { toSeconds, type EpochSeconds } from '../calendar/instants.js';
import type { Crew } from '../engine/crew.js';
import { canonicalJson } from '../engine/digest.js';
import type { Actor, Effect } from '../engine/remedy.js';
import type { FlightFacts } from '../facts/flight.js';
import type { AircraftFacts } from '../facts/aircraft.js';
import type { PersonFacts } from '../facts/person.js';
import type { FactSheet } from '../facts/sheet.js';
import type { ActEntry } from './acts.js';
import type { Bill, Cost } from './cost.js';
import type { Practice } from './practice.js';
import type { Verdicts } from './verdicts.js';

/** What an act changes. */
export type Change =
  | { is: 'effects'; effects: readonly Effect[] }
  /** Acts of the search's own: another aircraft, somebody named, papers that count. */
  | {
      is: 'parts';
      aircraft?: AircraftFacts;
      people?: readonly PersonFacts[];
      flight?: Partial<FlightFacts>;
      /** Somebody's papers, those included that nobody verified before. */
      papers?: PersonFacts;
    }
  /** An officer sets rules aside; no fact changes. */
  | { is: 'leave' };

/** Who is asked for an act: the n-th remedy of that name of one rule, on the flight wanted or on a practice flight. */
export interface Asker {
  rule: number;
  nth: number;
  practice: Practice | null;
}

/** An act that can be had. */
export interface Offer {
  act: string;
  title: string;
  by: Actor;
  entries: readonly ActEntry[];
  /** As offered; rules are asked again for the day on which it is done. */
  change: Change;
  askers: readonly Asker[];
  /** Whose record it changes. */
  person: string | null;
  notBefore: EpochSeconds;
  /** Offers that come to the same have the same. */
  meaning: string;
}

/** Acts done in one go: one, or several on the same practice flight. */
export interface Unit {
  offers: readonly Offer[];
  /** Practice flights: with an instructor aboard. */
  dual: boolean;
}

/** A practice flight; what takes longer than one flight takes as many, on as many days. */
export interface Sortie {
  dual: boolean;
  night: boolean;
  /** Of each flight. */
  tenths: number;
  flights: number;
  from: EpochSeconds;
  to: EpochSeconds;
  person: string;
}

/** An act as done. */
export interface Done {
  offer: Offer;
  change: Change;
  /** Whose roles its facts name: the crew, and the flight where that is a practice flight. */
  as: { crew: Crew; flight: FlightFacts | null };
  from: EpochSeconds;
  to: EpochSeconds;
  bill: Bill;
  /** Rules in the way of the flight that it put right. */
  cures: readonly string[];
  sortie: Sortie | null;
  /** The first act of its practice flight books aircraft and person for it. */
  books: boolean;
  /** Same act, same change, same time: same text. */
  mark: string;
}

export interface State {
  parent: State | null;
  unit: Unit | null;
  sheet: FactSheet;
  verdicts: Verdicts;
  done: readonly Done[];
  /** Who and what flies is settled: from here on things are done for it, and the request stays as it is. */
  settled: boolean;
  /** Rules set aside by an officer. */
  overrides: readonly string[];
  cost: Cost;
  /** Same request and same acts done at the same times, however come by: same text. */
  key: string;
  /** What was done, in order. */
  trail: string;
}

/** Does nothing but change the request: it takes no time. */
export const isRequest = ({ change }: Pick<Offer, 'change'>): boolean =>
  change.is === 'parts'
    ? change.flight !== undefined
    : change.is === 'effects' &&
      change.effects.length > 0 &&
      change.effects.every(({ op }) => op === 'flight');

/** Is the act left out, by its name or its kind? */
export const isBanned = (banned: ReadonlySet<string>, { act, entries }: Offer): boolean =>
  banned.has(act) || entries.some(({ kind }) => banned.has(`kind ${kind}`));

export const isPractice = (offer: Offer): boolean =>
  !isRequest(offer) && offer.entries.some(({ sketch }) => sketch !== null);

/** An act as offered and when it is done; acts on one practice flight begin at the same second. */
export const markOf = (
  { meaning }: Pick<Offer, 'meaning'>,
  { at, sortie }: { at: EpochSeconds; sortie: Sortie | null },
): string => `${at}${sortie?.dual ? 'd' : ''} ${meaning}`;

/** States in which the same flight is asked for and the same has been done are one; the cheaper is gone on with. */
export const keyOf = (of: { settled: boolean; request: string; marks: readonly string[] }): string =>
  `${of.settled ? 'settled' : 'open'} ${of.request}\n${[...of.marks].sort().join('\n')}`;

/** Marks of what has been done, but for changes of the request: those show in the request. */
export const marksOf = (done: readonly Done[]): string[] =>
  done.filter((one) => !(isRequest(one) && one.change.is === 'effects')).map(({ mark }) => mark);

const requests = new WeakMap<FlightFacts, string>();

/** The request as text. */
export function requestOf({ flight, aircraft }: FactSheet): string {
  let text = requests.get(flight);
  if (text === undefined) requests.set(flight, (text = canonicalJson(flight)));
  return `${aircraft.id} ${text}`;
}

/** Does an instructor still have to be found? */
export const isUnnamed = ({ verdicts: { crew } }: State): boolean => crew.instruction && crew.picId === null;

/** When the last of its flights is over. */
export const endOf = ({ to, flights }: Sortie): EpochSeconds => to + (flights - 1) * 86_400;

export const departureOf = (sheet: FactSheet): EpochSeconds => toSeconds(sheet.flight.departs);
