import { addPlainMonths, type LocalDate } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import type { Parameters } from '../../../engine/parameters.js';
import type { Remedy } from '../../../engine/remedy.js';
import { counted } from '../../../explain/words.js';
import { defineRule, type FactView, type Judgement, type Take } from '../../../engine/rule.js';
import type { AircraftType } from '../../../facts/aircraft.js';
import type { CertificateFact, LogFact } from '../../../facts/person.js';
import { EU_LAPL_RECENCY } from '../../../parameters/eu/licences.js';
import { hours } from '../../common/items/meter.js';
import { wouldServe } from '../../common/people/plans.js';
import { kindWords } from '../../common/people/standing.js';
import { plannedLandings } from '../../planned-flight.js';
import { euStanding, flownOn } from '../licence/standing.js';
import { passProficiencyCheck } from '../proficiency-check.js';
import { flownLately, type Amounts } from './lapl-flown.js';

type Reads = 'pic.certificates' | 'pic.log' | 'pic.reviews' | 'aircraft.type';
type Branch = 'not-lapl' | 'by-experience' | 'by-check' | 'short';

/**
 * Part-FCL, FCL.140.A: privileges of a light aircraft licence are used only with twelve hours, twelve take-offs and
 * landings and an hour of training within the last two years, or after a proficiency check. Since 2020-04-08 hours with an
 * instructor count as well as those in command, and who flies on land and at sea needs an hour, six take-offs and six landings of
 * it in the class flown.
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
      says: '{hours} h, {takeoffs} take-offs, {landings} landings and {training} h of training with an instructor in the last {months} months; good through {through}.',
    },
    'by-check': { status: 'met', says: 'A proficiency check on {on} serves through {through}.' },
    short: {
      status: 'short',
      says: 'In the last {months} months {hours} of {needHours} h, {takeoffs} take-offs and {landings} landings of {needLandings}, and {training} of {needTraining} h of training with an instructor{ofClass}.',
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
  since2020: boolean,
) {
  return {
    version,
    from,
    to,
    citation: {
      text,
      status: version === 1 ? ('seen' as const) : ('from memory' as const),
      reading:
        'Months run day for day. Hours in aeroplanes count; of gliders those in the model flown, as the log does not tell motor gliders apart. Training may be several flights. Ultralights are not counted. The share in each class of FCL.140.A(b) is asked for in the class flown.',
    },
    judge: (f: FactView<Reads>, moment: Moment, p: Parameters, take: Take<Branch>): Judgement =>
      judge(f, moment, p, take, since2020),
  };
}

function judge(
  f: FactView<Reads>,
  moment: Moment,
  p: Parameters,
  take: Take<Branch>,
  since2020: boolean,
): Judgement {
  const type = f.get('aircraft.type');
  const licence = flownOn(euStanding(f.get('pic.certificates'), moment), type);
  if (licence?.level !== 'lapl') return take('not-lapl');
  const months = p.number('eu.lapl.recency-months');
  const through = (on: LocalDate): LocalDate => addPlainMonths(on, months, 'clamp-to-month-end');
  const inClass = since2020 && bothClasses(licence) && type.category === 'airplane' ? 1 : 0;
  const landings = p.number('eu.lapl.recency-takeoffs-and-landings');
  const classLandings = p.number('eu.lapl.recency-class-takeoffs-and-landings') * inClass;
  const needed: Amounts = {
    ...{ tenths: p.number('eu.lapl.recency-hours') * 10, takeoffs: landings, landings },
    trainingTenths: p.number('eu.lapl.recency-training-hours') * 10,
    classTenths: p.number('eu.lapl.recency-class-hours') * 10 * inClass,
    ...{ classTakeoffs: classLandings, classLandings },
  };
  const flown = flownLately(f.get('pic.log'), type, moment, { needed, through, dualCounts: since2020 });
  const values = {
    months,
    hours: hours(flown.tenths),
    takeoffs: flown.takeoffs,
    landings: flown.landings,
    training: hours(flown.trainingTenths),
    needHours: hours(needed.tenths),
    needLandings: needed.landings,
    needTraining: hours(needed.trainingTenths),
    ofClass:
      inClass === 1
        ? `; ${kindWords(type)}: ${hours(flown.classTenths)} of ${hours(needed.classTenths)} h, ${flown.classTakeoffs} take-offs and ${flown.classLandings} landings of ${classLandings}`
        : '',
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
    remedies: () =>
      wouldServe(moment, through)
        ? [
            ...(since2020 ? [flyWithInstructor(type, moment, flown, needed)] : []),
            passProficiencyCheck(moment),
          ]
        : [],
  });
}

/** The licence has the privileges for aeroplanes on land and at sea. */
const bothClasses = ({ ratings }: CertificateFact): boolean =>
  ['single-engine-land', 'single-engine-sea'].every((one) => ratings.some((rating) => rating.class === one));

/** FCL.140.A(a)(1): what is missing, flown with an instructor in the aircraft of the flight. */
function flyWithInstructor(type: AircraftType, moment: Moment, flown: Amounts, needed: Amounts): Remedy {
  const most = (...amounts: (keyof Amounts)[]): number =>
    Math.max(1, ...amounts.map((amount) => needed[amount] - flown[amount]));
  const tenths = most('tenths', 'trainingTenths', 'classTenths');
  const landings = most('takeoffs', 'landings', 'classTakeoffs', 'classLandings');
  const act = 'fly-missing-with-instructor';
  const entry: LogFact = {
    ...plannedLandings(type, landings, false, moment),
    id: `planned:${act}`,
    role: 'dual-received',
    totalTenths: tenths,
  };
  return {
    act,
    title: `Fly ${hours(tenths)} h with an instructor, with ${counted(landings, 'take-off')} and ${counted(landings, 'landing')}.`,
    by: 'instructor',
    effects: [{ op: 'append', fact: 'pic.log', value: entry }],
  };
}
