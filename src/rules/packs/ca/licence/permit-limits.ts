import type { Moment } from '../../../engine/moment.js';
import type { Parameters } from '../../../engine/parameters.js';
import { defineRule, type FactView } from '../../../engine/rule.js';
import { CA_PERMIT } from '../../../parameters/ca/licences.js';
import { touchesNight } from '../../../sky/nights.js';
import { flyAlone } from '../../leave-passengers.js';
import { curesOf, NO_CURE, saysAll, type Shortfall } from '../../common/people/shortfalls.js';
import { downBeforeNight, flyByDay, NIGHT_PARAMETERS } from '../../common/shared/by-day.js';
import { CHANGE_TO_VFR, FLY_WITHOUT_HIRE, takeFewerPassengers } from '../../common/shared/flight-changes.js';
import { CA_LEVEL_WORDS, caStanding, flownOn } from './standing.js';

/**
 * CARs 401.19 and 401.22: a student flies alone, by day, under visual flight rules and an instructor's supervision; the
 * holder of a recreational permit a single-engine aeroplane of four seats at most, with one passenger, by day and under
 * visual flight rules.
 */
export const permitLimits = defineRule({
  id: 'certificate.canada.permit_limits',
  title: 'Limits of a pilot permit',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.certificates', 'aircraft.type'],
  parameters: [...CA_PERMIT.map(({ id }) => id), ...NIGHT_PARAMETERS],
  branches: {
    'no-permit': { status: 'not-applicable', says: 'The pilot in command is not flying on a permit.' },
    within: { status: 'met', says: 'The flight is within the limits of a {level}.' },
    beyond: { status: 'short', says: 'Beyond the limits of a {level}: {wrong}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'CARs 401.19, 401.22',
        status: 'from memory',
        reading:
          'A high-performance aeroplane is one with a type rating of its own. That the flight stays in Canada is a condition.',
      },
      judge(f, moment, p, take) {
        const type = f.get('aircraft.type');
        const held = flownOn(caStanding(f.get('pic.certificates'), moment), type);
        if (held?.level !== 'student' && held?.level !== 'recreational') return take('no-permit');
        const level = CA_LEVEL_WORDS[held.level]!;
        const { shortfalls, conditions } = daylight(f, moment, p);
        const wrong = (what: string, cures: Shortfall['cures'] = NO_CURE) => shortfalls.push({ what, cures });
        if (f.flight.forHire) wrong('the flight is for hire', () => [FLY_WITHOUT_HIRE]);
        if (f.flight.flightRules === 'IFR')
          wrong('the flight is under instrument flight rules', () => [CHANGE_TO_VFR]);
        if (held.level === 'student') {
          if (!f.crew.alone) wrong('a student flies with nobody else aboard', () => flyAlone(f));
          conditions.push('Fly only as a flight instructor authorises and supervises it.');
        } else {
          const most = p.number('ca.recreational.passengers');
          const tooMany = f.crew.passengers - most;
          if (tooMany > 0)
            wrong(`${f.crew.passengers} passengers are planned, more than ${most}`, () => [
              takeFewerPassengers(f.flight, tooMany),
            ]);
          const seats = p.number('ca.recreational.seats');
          if (type.seats > seats) wrong(`the aircraft has ${type.seats} seats, more than ${seats}`);
          if (type.category !== 'airplane' || type.engines !== 1 || type.typeRating !== null)
            wrong('the aircraft is no single-engine aeroplane without a type rating');
        }
        conditions.push('Stay in Canada.');
        if (shortfalls.length === 0) return take('within', { level }, { conditions });
        return take(
          'beyond',
          { level, wrong: saysAll(shortfalls) },
          { remedies: () => curesOf(shortfalls, 'keep-within-permit-limits') },
        );
      },
    },
  ],
});

function daylight(
  f: Pick<FactView, 'flight'>,
  moment: Moment,
  p: Parameters,
): { shortfalls: Shortfall[]; conditions: string[] } {
  const { route } = f.flight;
  if (!touchesNight(moment, route, 'civil'))
    return { shortfalls: [], conditions: downBeforeNight(moment, route, 'civil', p) };
  const cures = () => flyByDay(moment, route, 'civil');
  return { shortfalls: [{ what: 'part of the flight is at night', cures }], conditions: [] };
}
