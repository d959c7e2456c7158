import type { Moment } from '../../../engine/moment.js';
import { defineRule, type FactView } from '../../../engine/rule.js';
import { need, UnknownFact } from '../../../engine/unknown.js';
import type { AircraftType } from '../../../facts/aircraft.js';
import type { CertificateFact } from '../../../facts/person.js';
import { EU_LAPL } from '../../../parameters/eu/licences.js';
import { leavePassengers } from '../../leave-passengers.js';
import { curesOf, NO_CURE, saysAll, type Shortfall } from '../../common/people/shortfalls.js';
import { CHANGE_TO_VFR, FLY_WITHOUT_HIRE, takeFewerPassengers } from '../../common/shared/flight-changes.js';
import { euStanding, flownOn, inAeroplane, isMotorGlider } from './standing.js';

/**
 * Part-FCL, FCL.105.A: with a light aircraft licence single-engine piston aeroplanes and touring motor gliders of 2 000 kg
 * at most, three passengers and four persons at most, and no passengers before ten hours in command of aeroplanes or touring
 * motor gliders, unless a private licence or better was held before.
 */
export const laplLimits = defineRule({
  id: 'certificate.easa.lapl_limits',
  title: 'Limits of a light aircraft licence',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.certificates', 'pic.log', 'pic.logBefore', 'aircraft.type'],
  parameters: EU_LAPL.map(({ id }) => id),
  branches: {
    'not-lapl': {
      status: 'not-applicable',
      says: 'The pilot in command is not flying on a light aircraft licence.',
    },
    within: { status: 'met', says: 'The flight is within the limits of a light aircraft licence.' },
    beyond: { status: 'short', says: 'Beyond the limits of a light aircraft licence: {wrong}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Regulation (EU) No 1178/2011, FCL.105.A',
        status: 'seen',
        reading:
          'Hours in command count as far as the records go, of gliders those in the model flown, as the log does not tell ' +
          'motor gliders apart; nobody is in command for hire or under instruments on this ' +
          'licence. Two thousand kilograms are 4 409 lb. The class and variant of the skill test (FCL.135.A) are judged ' +
          'with the class rating and the differences training.',
      },
      judge(f, moment, p, take) {
        const type = f.get('aircraft.type');
        const standing = euStanding(f.get('pic.certificates'), moment);
        const licence = flownOn(standing, type);
        if (licence?.level !== 'lapl') return take('not-lapl');
        const shortfalls: Shortfall[] = [];
        const wrong = (what: string, cures: Shortfall['cures'] = NO_CURE) => shortfalls.push({ what, cures });
        const singlePiston = type.category === 'airplane' && type.engines === 1 && !type.turbine;
        if (!singlePiston && !isMotorGlider(type))
          wrong('the aircraft is no single-engine piston aeroplane or touring motor glider');
        const most = p.number('eu.lapl.takeoff-lb');
        const lb = need(type.maxTakeoffLb, 'aircraft.type', 'the maximum take-off mass is not on record');
        if (lb > most) wrong(`the maximum take-off mass is ${lb} lb, more than ${most} lb (2 000 kg)`);
        if (f.flight.forHire) wrong('the flight is for hire', () => [FLY_WITHOUT_HIRE]);
        if (f.flight.flightRules === 'IFR')
          wrong('the flight is under instrument flight rules', () => [CHANGE_TO_VFR]);
        const { passengers } = f.crew;
        const aboard = f.flight.personsOnBoard;
        const tooMany = Math.max(
          passengers - p.number('eu.lapl.passengers'),
          aboard - p.number('eu.lapl.persons'),
        );
        if (tooMany > 0)
          wrong(`${aboard} persons with ${passengers} passengers are planned, ${tooMany} too many`, () => [
            takeFewerPassengers(f.flight, tooMany),
          ]);
        const hours = p.number('eu.lapl.command-hours');
        if (
          passengers > 0 &&
          !standing.ended.some(exempts) &&
          !inCommandFor(f, licence, type, hours * 10, moment)
        )
          wrong(`passengers are carried before ${hours} hours in command since the licence was issued`, () =>
            leavePassengers(f),
          );
        if (shortfalls.length === 0) return take('within');
        return take(
          'beyond',
          { wrong: saysAll(shortfalls) },
          { remedies: () => curesOf(shortfalls, 'keep-within-lapl-limits') },
        );
      },
    },
  ],
});

type Reads = FactView<'pic.log' | 'pic.logBefore'>;

/** FCL.105.A(b)(2): who held a private licence for aeroplanes or better before needs no ten hours. */
const exempts = ({ level, ratings }: CertificateFact): boolean =>
  level !== 'student' && level !== 'lapl' && ratings.some(({ category }) => category === 'airplane');

/**
 * So many tenths in command since the licence was issued. Before it nobody is pilot in command but as a student alone, so
 * what the older sums hold in command counts whole. Where the log alone is too short, the sums must be known.
 */
function inCommandFor(
  f: Reads,
  licence: CertificateFact,
  type: AircraftType,
  tenths: number,
  moment: Moment,
): boolean {
  let total = 0;
  for (const entry of f.get('pic.log')) {
    if (entry.device !== null || entry.role !== 'pilot-in-command' || !inAeroplane(entry, type)) continue;
    if (entry.on < licence.issuedOn) continue;
    if (moment.departsAtOrAfter(entry.departedAt)) total += entry.totalTenths;
    if (total >= tenths) return true;
  }
  const before = f.peek('pic.logBefore');
  if (!before.known)
    throw new UnknownFact('pic.logBefore', `hours in command before the log on record are not known`);
  for (const sum of before.value.sums)
    if (sum.role === 'pilot-in-command' && inAeroplane(sum, type)) total += sum.totalTenths;
  return total >= tenths;
}
