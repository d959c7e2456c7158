/** A pilot held against the minimums of an insurer: what is missing, each with what would supply it. */
import { addDays, addPlainMonths, addYears, ageOn, type LocalDate } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import type { Counted, FactView } from '../../../engine/rule.js';
import { need } from '../../../engine/unknown.js';
import type { AircraftType } from '../../../facts/aircraft.js';
import type { InsuranceFact, PilotMinimums } from '../../../facts/insurance.js';
import type { CertificateLevel, ReviewKind } from '../../../facts/person.js';
import { hours } from '../../common/items/meter.js';
import { standingAmong } from '../../common/people/standing.js';
import { best, countedSignOff, stands } from '../checks/sign-offs.js';
import { flownInAll, flownLately, type Serves, type WholeLog } from './hours.js';

/** What whoever asks must declare. */
export const PILOT_READS = [
  'pic.birthDate',
  'pic.certificates',
  'pic.ratings',
  'pic.reviews',
  'pic.log',
  'pic.logBefore',
  'pic.checkouts',
  'aircraft.type',
] as const;
type View = FactView<(typeof PILOT_READS)[number] | 'aircraft.insurance'>;

/** Every level there is, lowest first; one of another country counts where it stands among them (strict reading). */
const LEVELS: readonly CertificateLevel[] = [
  'student',
  'sport',
  'recreational',
  'lapl',
  'private',
  'commercial',
  'atp',
];

/** Reviews and tests that are flown with an instructor or an examiner. */
const FLOWN_REVIEWS: readonly ReviewKind[] = [
  'flight-review',
  'practical-test',
  'proficiency-check',
  'faa-proficiency-phase',
  'instructor-practical-test',
];

/** Something missing. `supply` says what would put it right; null: nothing that can be arranged here. */
export interface Lack {
  /** Completes "short of what is asked: …". */
  what: string;
  supply: { dualTenths: number } | 'checkout' | 'check' | null;
}

/** What is missing, until when all that is there lasts, and the records it rests on. */
export interface Held {
  lacks: Lack[];
  ends: LocalDate[];
  counted: Counted[];
}

/** Holds the pilot in command against the minimums. Asks only for facts that they are about. */
export function heldAgainst(terms: InsuranceFact, minimums: PilotMinimums, f: View, moment: Moment): Held {
  const held: Held = { lacks: [], ends: [], counted: [] };
  const of = { minimums, terms, f, moment, held, type: f.get('aircraft.type') };
  certificate(of);
  age(of);
  allHours(of);
  recentHours(of);
  checkout(of);
  review(of);
  return held;
}

interface Of {
  minimums: PilotMinimums;
  terms: InsuranceFact;
  f: View;
  moment: Moment;
  held: Held;
  type: AircraftType;
}

function certificate({ minimums, f, moment, held, type }: Of): void {
  const { leastLevel, instrumentRating } = minimums;
  if (leastLevel === null && !instrumentRating) return;
  const { inForce } = standingAmong(LEVELS, f.get('pic.certificates'), moment);
  if (leastLevel !== null) {
    const serving = inForce.filter(({ level }) => LEVELS.indexOf(level) >= LEVELS.indexOf(leastLevel));
    if (serving.length > 0) held.ends.push(lastOf(serving));
    else
      held.lacks.push({
        what: `no ${leastLevel} pilot certificate, or a higher one, in force`,
        supply: null,
      });
  }
  if (!instrumentRating) return;
  const rated = inForce.filter(({ instrument }) => instrument.includes(type.category));
  if (rated.length > 0) {
    held.ends.push(lastOf(rated));
    return;
  }
  // Where an instrument rating ends, it is a record of its own.
  const ratings = f
    .get('pic.ratings')
    .filter(({ kind, on }) => kind === 'instrument' && moment.startsOnOrAfter(on))
    .filter(({ validThrough }) => validThrough === null || moment.endsOnOrBefore(validThrough));
  if (ratings.length > 0) held.ends.push(lastOf(ratings));
  else held.lacks.push({ what: `no instrument rating (${type.category})`, supply: null });
}

const lastOf = (papers: readonly { validThrough: LocalDate | null }[]): LocalDate =>
  papers
    .map(({ validThrough }) => validThrough ?? FOR_GOOD)
    .sort()
    .at(-1)!;

function age({ minimums: { leastAgeYears, mostAgeYears }, f, moment, held }: Of): void {
  if (leastAgeYears === null && mostAgeYears === null) return;
  const born = f.get('pic.birthDate');
  const birthday = (years: number): LocalDate => addYears(born, years, 'roll-to-next-month');
  const years = ageOn(born, moment.aside().arrivalDate());
  if (leastAgeYears !== null && !moment.startsOnOrAfter(birthday(leastAgeYears)))
    held.lacks.push({ what: `aged ${years}, at least ${leastAgeYears}`, supply: null });
  if (mostAgeYears === null) return;
  const last = addDays(birthday(mostAgeYears + 1), -1);
  held.ends.push(last);
  if (!moment.endsOnOrBefore(last))
    held.lacks.push({ what: `aged ${years}, at most ${mostAgeYears}`, supply: null });
}

function allHours({ minimums, terms, f, moment, held, type }: Of): void {
  const inModel: Serves = ({ modelId }) => modelId === type.modelId;
  const retractable: Serves = ({ modelId }) =>
    modelId !== null && terms.retractableModelIds.includes(modelId);
  const model = `the ${type.makeModel}`;
  const asked: [number | null, Serves, string, boolean][] = [
    [minimums.totalTenths, () => true, 'in all', true],
    [
      minimums.classTenths,
      (one) => one.category === type.category && one.class === type.class,
      'in the category and class',
      true,
    ],
    [minimums.retractableTenths, retractable, 'with retractable gear', type.retractableGear],
    [minimums.tailwheelTenths, ({ tailwheel }) => tailwheel, 'in tailwheel aircraft', type.tailwheel],
    [minimums.modelTenths, inModel, `in ${model}`, true],
    [
      minimums.dualInModelTenths,
      (one) => one.role === 'dual-received' && inModel(one),
      'of instruction in the model',
      true,
    ],
  ];
  if (asked.every(([needed]) => needed === null)) return;
  const log: WholeLog = { entries: f.get('pic.log'), before: f.get('pic.logBefore') };
  const { through } = log.before;
  if (through !== null && !moment.departsAtOrAfter(through))
    need(null, 'pic.logBefore', 'earlier flying is on the sheet as a sum that reaches past this flight');
  for (const [needed, serves, where, inThis] of asked) {
    if (needed === null) continue;
    const tenths = flownInAll(log, serves, needed, moment);
    if (tenths >= needed) continue;
    held.lacks.push({
      what: `${hours(tenths)} of ${hours(needed)} h ${where}`,
      supply: inThis ? { dualTenths: needed - tenths } : null,
    });
  }
}

function recentHours({ minimums: { recentTenths, recentDays }, f, moment, held }: Of): void {
  if (recentTenths === null || recentDays === null) return;
  const { tenths, through } = flownLately(
    f.get('pic.log'),
    { tenths: recentTenths, days: recentDays },
    moment,
  );
  if (through !== null) held.ends.push(through);
  else
    held.lacks.push({
      what: `${hours(tenths)} of ${hours(recentTenths)} h in ${recentDays} days`,
      supply: { dualTenths: recentTenths - tenths },
    });
}

function checkout({ minimums, f, moment, held, type }: Of): void {
  if (!minimums.checkoutInModel) return;
  const signed = f
    .get('pic.checkouts')
    .filter(({ kind, modelId }) => kind === 'model' && modelId === type.modelId);
  const found = best(signed.filter((one) => stands(one, moment)));
  if (found === undefined) {
    held.lacks.push({ what: `no checkout in the ${type.makeModel}`, supply: 'checkout' });
    return;
  }
  if (found.expiresOn !== null) held.ends.push(found.expiresOn);
  held.counted.push(countedSignOff(found, 'model checkout'));
}

function review({ minimums: { reviewMonths }, f, moment, held }: Of): void {
  if (reviewMonths === null) return;
  const through = (on: LocalDate): LocalDate => addPlainMonths(on, reviewMonths, 'clamp-to-month-end');
  const checks = f.get('pic.checkouts').filter(({ kind }) => kind === 'annual-check');
  const reviews = f.get('pic.reviews').filter(({ kind }) => FLOWN_REVIEWS.includes(kind));
  const newest = [
    ...checks.map(({ id, on }) => ({ id, on, what: 'club check' })),
    ...reviews.map(({ id, on, kind }) => ({ id, on, what: kind.replaceAll('-', ' ') })),
  ]
    .filter(({ on }) => moment.startsOnOrAfter(on) && moment.endsOnOrBefore(through(on)))
    .sort((a, b) => (`${a.on} ${a.id}` < `${b.on} ${b.id}` ? 1 : -1))[0];
  if (newest === undefined) {
    const what = `no review or club check in ${reviewMonths} months`;
    held.lacks.push({ what, supply: 'check' });
    return;
  }
  held.ends.push(through(newest.on));
  held.counted.push(newest);
}

/** Later than every end. */
export const FOR_GOOD: LocalDate = '9999-12-31';
