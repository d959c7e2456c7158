/** The flying that revalidates a single-engine class rating (FCL.740.A(b)(1)(ii)). */
import type { LocalDate } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import type { Remedy } from '../../../engine/remedy.js';
import type { Counted } from '../../../engine/rule.js';
import type { AircraftType } from '../../../facts/aircraft.js';
import type { LogFact, RatingFact } from '../../../facts/person.js';
import { hours } from '../../common/items/meter.js';
import { canStillAct } from '../../common/people/plans.js';
import { plannedLandings } from '../../planned-flight.js';
import { isMotorGlider } from '../licence/standing.js';

/** Hours in tenths. */
export interface Asked {
  tenths: number;
  commandTenths: number;
  landings: number;
  trainingTenths: number;
}

/** What was flown of it. */
export interface FlownTowards {
  tenths: number;
  commandTenths: number;
  takeoffs: number;
  landings: number;
  trainingTenths: number;
  counted: Counted[];
}

const COMMAND: readonly LogFact['role'][] = ['pilot-in-command', 'solo', 'instructor'];

/** Sums what was flown in the class since a day; in either class by the owner of both ratings (FCL.740.A(b)(2)). */
export function flownTowards(
  log: readonly LogFact[],
  type: AircraftType,
  ratings: readonly RatingFact[],
  from: LocalDate,
  moment: Moment,
): FlownTowards {
  // Asked of a motor glider, whose own rating is the one that is revalidated.
  const both = ratings.some(({ kind }) => kind === 'single-engine-piston-land');
  const flown: FlownTowards = {
    ...{ tenths: 0, commandTenths: 0, takeoffs: 0, landings: 0, trainingTenths: 0, counted: [] },
  };
  const entries = log
    .filter((entry) => entry.on >= from && entry.device === null && inClass(entry, type, both))
    .filter(({ departedAt }) => moment.departsAtOrAfter(departedAt))
    .sort((a, b) => (`${a.departedAt} ${a.id}` < `${b.departedAt} ${b.id}` ? 1 : -1));
  for (const entry of entries) {
    flown.tenths += entry.totalTenths;
    if (COMMAND.includes(entry.role)) flown.commandTenths += entry.totalTenths;
    if (entry.role === 'dual-received') flown.trainingTenths += entry.totalTenths;
    flown.takeoffs += entry.takeoffs;
    flown.landings += entry.landings;
    flown.counted.push({ id: entry.id, on: entry.on, what: `${hours(entry.totalTenths)} h` });
  }
  return flown;
}

/** The log does not tell motor gliders from other gliders, so of gliders the model flown counts. */
function inClass(entry: LogFact, type: AircraftType, both: boolean): boolean {
  const glider = entry.category === 'glider' && entry.modelId === type.modelId;
  if (isMotorGlider(type)) return glider || (both && entry.class === 'single-engine-land');
  return entry.category === type.category && entry.class === type.class;
}

/** Is all flown? */
export const enough = (flown: FlownTowards, asked: Asked): boolean => missing(flown, asked).length === 0;

function missing(flown: FlownTowards, asked: Asked): string[] {
  const left = (has: number, needs: number, words: (left: number) => string): string[] =>
    has >= needs ? [] : [words(needs - has)];
  return [
    ...left(flown.tenths, asked.tenths, (tenths) => `${hours(tenths)} h of flight time`),
    ...left(flown.commandTenths, asked.commandTenths, (tenths) => `${hours(tenths)} h of it in command`),
    ...left(flown.takeoffs, asked.landings, (count) => `${count} take-offs`),
    ...left(flown.landings, asked.landings, (count) => `${count} landings`),
    ...left(flown.trainingTenths, asked.trainingTenths, (tenths) => `${hours(tenths)} h with an instructor`),
  ];
}

/** 'fly 4.5 h of flight time, 3 landings more'. */
export const missingWords = (flown: FlownTowards, asked: Asked): string =>
  `fly ${missing(flown, asked).join(', ')} more`;

/** Flies what is missing now: in command, and with an instructor. */
export function remainingFlights(
  type: AircraftType,
  flown: FlownTowards,
  asked: Asked,
  from: LocalDate,
  moment: Moment,
): Remedy[] {
  if (!canStillAct(moment) || moment.knowledgeDate() < from) return [];
  const act = 'fly-to-revalidate';
  const training = Math.max(0, asked.trainingTenths - flown.trainingTenths);
  const command = Math.max(
    0,
    asked.commandTenths - flown.commandTenths,
    asked.tenths - flown.tenths - training,
  );
  const landings = Math.max(0, asked.landings - flown.takeoffs, asked.landings - flown.landings);
  const entry = (id: string, role: LogFact['role'], count: number, tenths: number): LogFact => ({
    ...plannedLandings(type, count, false, moment),
    id: `planned:${act}-${id}`,
    role,
    totalTenths: tenths,
  });
  const entries = [
    ...(command > 0 || landings > 0
      ? [entry('command', 'pilot-in-command', landings, Math.max(command, 1))]
      : []),
    ...(training > 0 ? [entry('training', 'dual-received', 1, training)] : []),
  ];
  return [
    {
      act,
      title: `For the rating, ${missingWords(flown, asked)}.`,
      by: training > 0 ? 'instructor' : 'member',
      effects: entries.map((value) => ({ op: 'append', fact: 'pic.log', value })),
    },
  ];
}
