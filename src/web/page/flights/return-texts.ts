/** The return form as its inputs hold it, and as the service takes it. */
import { figureOf, typed } from '../parts/fields.js';
import { clockIn, dateIn, instantIn, plusDays } from '../parts/time.js';
import type { Entry, Flight } from './types.js';

/** Figures of an entry that are typed in. */
export const FIGURES = [
  ['totalH', 'Total, h', true],
  ['nightH', 'Of it by night, h', true],
  ['landings', 'Landings', true],
  ['fullStopLandings', 'Of them to a full stop', true],
  ['takeoffs', 'Take-offs', true],
  ['nightTakeoffs', 'Night take-offs', true],
  ['nightFullStopLandings', 'Night full stops', true],
  ['crossCountryH', 'Cross-country, h', true],
  ['approaches', 'Instrument approaches', false],
  ['actualInstrumentH', 'Actual instrument, h', false],
  ['simulatedInstrumentH', 'Simulated instrument, h', false],
  ['dualGivenH', 'Instruction given, h', false],
] as const;
export type Figure = (typeof FIGURES)[number][0];

export interface EntryTexts {
  memberId: string;
  name: string;
  role: string;
  soleManipulator: boolean;
  figures: Record<Figure, string>;
}

export interface ReturnTexts {
  day: string;
  off: string;
  on: string;
  from: string;
  to: string;
  landings: string;
  fullStops: string;
  meters: Record<string, string>;
  confirmJump: boolean;
  fuelLeft: string;
  fuelBought: string;
  fuelPaid: string;
  oilAdded: string;
  /** Whose account it goes on. A return kept by an earlier page does not say. */
  payer?: string;
  squawk: string;
  squawkDetail: string;
  entries: EntryTexts[];
}

/** As the form begins: what was planned, or the return that is corrected. */
export function textsOf(flight: Flight, zone: string): ReturnTexts {
  const { planned, dispatch, return: before } = flight;
  if (before) {
    return {
      ...{ day: dateIn(zone, before.departedAt), off: clockIn(zone, before.departedAt) },
      ...{ on: clockIn(zone, before.arrivedAt), from: before.fromAirfield, to: before.toAirfield },
      ...{ landings: '', fullStops: '', confirmJump: false },
      meters: Object.fromEntries(before.meters.map(({ kind, shownH }) => [kind, shownH.toFixed(1)])),
      fuelLeft: typed(before.fuelUsGal),
      fuelBought: typed(before.fuelBoughtUsGal || null),
      fuelPaid: typed(before.fuelPaid || null),
      oilAdded: typed(before.oilAddedQt || null),
      payer: before.payerId,
      ...{ squawk: '', squawkDetail: '' },
      entries: before.entries.map((entry) => entryTexts(entry, nameOf(flight, entry.memberId))),
    };
  }
  return {
    ...{ day: dateIn(zone, dispatch!.dispatchedAt), off: clockIn(zone, dispatch!.dispatchedAt), on: '' },
    ...{ from: planned?.fromAirfield ?? '', to: planned?.toAirfield ?? '', landings: '1', fullStops: '1' },
    ...{ meters: {}, confirmJump: false, fuelLeft: '', fuelBought: '', fuelPaid: '', oilAdded: '' },
    ...{ payer: flight.booking.memberId, squawk: '', squawkDetail: '', entries: [] },
  };
}

export const nameOf = (flight: Flight, memberId: string): string =>
  flight.booking.people.find((person) => person.memberId === memberId)?.name ?? 'Somebody';

/** An entry as proposed or given; what is not known stays empty and has to be typed. */
export function entryTexts(
  entry: { [K in keyof Entry]?: Entry[K] | null } & Pick<Entry, 'memberId'>,
  name: string,
): EntryTexts {
  const optional = new Set<string>(FIGURES.filter(([, , needed]) => !needed).map(([field]) => field));
  return {
    ...{ memberId: entry.memberId, name, role: entry.role ?? 'pilot-in-command' },
    soleManipulator: entry.soleManipulator ?? true,
    figures: Object.fromEntries(
      FIGURES.map(([field]) => [field, optional.has(field) && !entry[field] ? '' : typed(entry[field])]),
    ) as Record<Figure, string>,
  };
}

/** The two instants; null where a clock change makes one of them doubtful. On blocks before off blocks is the next day. */
export function timesOf(texts: ReturnTexts, zone: string): { departedAt: string; arrivedAt: string } | null {
  const departedAt = instantIn(zone, texts.day, texts.off);
  const arrivedAt = instantIn(zone, texts.on < texts.off ? plusDays(texts.day, 1) : texts.day, texts.on);
  return departedAt && arrivedAt ? { departedAt, arrivedAt } : null;
}

/** The return as the service takes it. */
export function bodyOf(texts: ReturnTexts, times: object, flight: Flight): Record<string, unknown> {
  const given = (field: string, text: string) => (text.trim() === '' ? {} : { [field]: figureOf(text) });
  return {
    ...times,
    ...{ fromAirfield: texts.from, toAirfield: texts.to },
    meters: flight.dispatch!.meters.map(({ kind }) => ({
      ...{ kind, shownH: Number(texts.meters[kind]) },
      ...(texts.confirmJump ? { confirmJump: true } : {}),
    })),
    ...given('fuelUsGal', texts.fuelLeft),
    ...given('fuelBoughtUsGal', texts.fuelBought),
    ...given('fuelPaid', texts.fuelPaid),
    ...given('oilAddedQt', texts.oilAdded),
    ...(texts.payer === undefined ? {} : { payerId: texts.payer }),
    entries: texts.entries.map(({ memberId, role, soleManipulator, figures }) => ({
      ...{ memberId, role, soleManipulator },
      ...kindOf(flight, memberId),
      ...Object.fromEntries(FIGURES.map(([field]) => [field, Number(figures[field] || 0)])),
    })),
  };
}

/** What the form does not ask for stays as the return had it. */
function kindOf(flight: Flight, memberId: string): object {
  const before = flight.return?.entries.find((entry) => entry.memberId === memberId);
  return before ? { holding: before.holding, interceptTrack: before.interceptTrack } : {};
}
