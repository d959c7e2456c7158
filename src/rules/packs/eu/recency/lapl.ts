import { addPlainMonths, type LocalDate } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import type { Parameters } from '../../../engine/parameters.js';
import type { Remedy } from '../../../engine/remedy.js';
import { counted } from '../../../explain/words.js';
import { defineRule, type Counted, type FactView, type Judgement, type Take } from '../../../engine/rule.js';
import type { AircraftType } from '../../../facts/aircraft.js';
import type { LogFact } from '../../../facts/person.js';
import { EU_LAPL_RECENCY } from '../../../parameters/eu/licences.js';
import { wouldServe } from '../../common/people/plans.js';
import { plannedLandings } from '../../planned-flight.js';
import { euStanding, flownOn, isMotorGlider } from '../licence/standing.js';
import { passProficiencyCheck } from '../proficiency-check.js';

type Reads = 'pic.certificates' | 'pic.log' | 'pic.reviews' | 'aircraft.type';
type Branch = 'not-lapl' | 'by-experience' | 'by-check' | 'short';

/**
 * Part-FCL, FCL.140.A: privileges of a light aircraft licence are used only with twelve hours, twelve take-offs and
 * landings and an hour of training within the last two years, or after a proficiency check. Since 2020-04-08 hours with an
 * instructor count as well as those in command.
 */
export const laplRecency = defineRule({
  id: 'recency.easa.lapl',
  title: 'Recent experience of a light aircraft pilot',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.certificates', 'pic.log', 'pic.reviews', 'aircraft.type'],
  parameters: EU_LAPL_RECENCY.map(({ id }) => id),
  branches: {
    'not-lapl': {
      status: 'not-applicable',
      says: 'The pilot in command is not flying on a light aircraft licence.',
    },
    'by-experience': {
      status: 'met',
      says: '{hours} h, {takeoffs} take-offs, {landings} landings and {training} h of training in the last {months} months; good through {through}.',
    },
    'by-check': { status: 'met', says: 'A proficiency check on {on} serves through {through}.' },
    short: {
      status: 'short',
      says: 'In the last {months} months {hours} of {needHours} h, {takeoffs} take-offs and {landings} landings of {needLandings}, and {training} of {needTraining} h of training with an instructor.',
    },
  },
  bodies: [
    body(1, null, '2020-04-08', 'Regulation (EU) No 1178/2011, FCL.140.A as of 2011', false),
    body(2, '2020-04-08', null, 'Regulation (EU) No 1178/2011, FCL.140.A (Regulation (EU) 2020/359)', true),
  ],
});

function body(
  version: number,
  from: LocalDate | null,
  to: LocalDate | null,
  text: string,
  dualCounts: boolean,
) {
  return {
    version,
    from,
    to,
    citation: {
      text,
      status: version === 1 ? ('seen' as const) : ('from memory' as const),
      reading:
        'Months run day for day. Hours in aeroplanes count; of gliders those in the model flown, as the log does not tell motor gliders apart. Training may be several flights. Ultralights are not counted.',
    },
    judge: (f: FactView<Reads>, moment: Moment, p: Parameters, take: Take<Branch>): Judgement =>
      judge(f, moment, p, take, dualCounts),
  };
}

const COMMAND: readonly LogFact['role'][] = ['pilot-in-command', 'solo', 'instructor'];

/** Tenths of hours, and counts. */
interface Flown {
  tenths: number;
  takeoffs: number;
  landings: number;
  trainingTenths: number;
  /** The oldest entry that is needed; null while something is missing. */
  governs: LocalDate | null;
  counted: Counted[];
}

interface Needed {
  tenths: number;
  landings: number;
  trainingTenths: number;
}

function judge(
  f: FactView<Reads>,
  moment: Moment,
  p: Parameters,
  take: Take<Branch>,
  dualCounts: boolean,
): Judgement {
  const type = f.get('aircraft.type');
  if (flownOn(euStanding(f.get('pic.certificates'), moment), type)?.level !== 'lapl') return take('not-lapl');
  const months = p.number('eu.lapl.recency-months');
  const through = (on: LocalDate): LocalDate => addPlainMonths(on, months, 'clamp-to-month-end');
  const needed: Needed = {
    tenths: p.number('eu.lapl.recency-hours') * 10,
    landings: p.number('eu.lapl.recency-takeoffs-and-landings'),
    trainingTenths: p.number('eu.lapl.recency-training-hours') * 10,
  };
  const flown = count(f.get('pic.log'), type, moment, needed, through, dualCounts);
  const values = {
    months,
    hours: hours(flown.tenths),
    takeoffs: flown.takeoffs,
    landings: flown.landings,
    training: hours(flown.trainingTenths),
    needHours: hours(needed.tenths),
    needLandings: needed.landings,
    needTraining: hours(needed.trainingTenths),
  };
  if (flown.governs !== null)
    return take('by-experience', { ...values, through: through(flown.governs) }, { counted: flown.counted });
  const check = f
    .get('pic.reviews')
    .filter(({ kind }) => kind === 'proficiency-check' || kind === 'practical-test')
    .filter(({ category }) => category === null || category === 'airplane')
    .filter(({ on }) => moment.startsOnOrAfter(on) && moment.endsOnOrBefore(through(on)))
    .sort((a, b) => (`${a.on} ${a.id}` < `${b.on} ${b.id}` ? 1 : -1))[0];
  if (check)
    return take(
      'by-check',
      { on: check.on, through: through(check.on) },
      { counted: [{ id: check.id, on: check.on, what: 'proficiency check' }] },
    );
  return take('short', values, {
    counted: flown.counted,
    remedies: () => [
      ...(dualCounts ? flyWithInstructor(type, moment, flown, needed, through) : []),
      ...(wouldServe(moment, through) ? [passProficiencyCheck(moment)] : []),
    ],
  });
}

/** Counts the newest first until all is there. */
function count(
  log: readonly LogFact[],
  type: AircraftType,
  moment: Moment,
  needed: Needed,
  through: (on: LocalDate) => LocalDate,
  dualCounts: boolean,
): Flown {
  const flown: Flown = { tenths: 0, takeoffs: 0, landings: 0, trainingTenths: 0, governs: null, counted: [] };
  const recent = log
    .filter((entry) => entry.device === null && counts(entry, type))
    .filter(({ departedAt, on }) => moment.departsAtOrAfter(departedAt) && moment.endsOnOrBefore(through(on)))
    .sort((a, b) => (`${a.on} ${a.departedAt} ${a.id}` < `${b.on} ${b.departedAt} ${b.id}` ? 1 : -1));
  for (const entry of recent) {
    const dual = entry.role === 'dual-received';
    if (!dual && !COMMAND.includes(entry.role)) continue;
    if (dual) flown.trainingTenths += entry.totalTenths;
    if (!dual || dualCounts) {
      flown.tenths += entry.totalTenths;
      flown.takeoffs += entry.takeoffs;
      flown.landings += entry.landings;
    }
    flown.counted.push({ id: entry.id, on: entry.on, what: `${hours(entry.totalTenths)} h` });
    if (
      flown.tenths >= needed.tenths &&
      flown.takeoffs >= needed.landings &&
      flown.landings >= needed.landings &&
      flown.trainingTenths >= needed.trainingTenths
    )
      return { ...flown, governs: entry.on };
  }
  return flown;
}

const counts = (entry: LogFact, type: AircraftType): boolean =>
  entry.category === 'airplane' ||
  (entry.category === 'glider' && isMotorGlider(type) && entry.modelId === type.modelId);

/** FCL.140.A(b)(2): what is missing, flown with an instructor. */
function flyWithInstructor(
  type: AircraftType,
  moment: Moment,
  flown: Flown,
  needed: Needed,
  through: (on: LocalDate) => LocalDate,
): Remedy[] {
  if (!wouldServe(moment, through)) return [];
  const tenths = Math.max(needed.tenths - flown.tenths, needed.trainingTenths - flown.trainingTenths, 1);
  const landings = Math.max(needed.landings - flown.takeoffs, needed.landings - flown.landings, 1);
  const act = 'fly-missing-with-instructor';
  const entry: LogFact = {
    ...plannedLandings(type, landings, false, moment),
    id: `planned:${act}`,
    role: 'dual-received',
    totalTenths: tenths,
  };
  return [
    {
      act,
      title: `Fly ${hours(tenths)} h with an instructor, with ${counted(landings, 'take-off')} and ${counted(landings, 'landing')}.`,
      by: 'instructor',
      effects: [{ op: 'append', fact: 'pic.log', value: entry }],
    },
  ];
}

const hours = (tenths: number): string => (tenths / 10).toFixed(1);
