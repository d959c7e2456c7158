import { addDays } from '../../../../calendar/dates.js';
import { defineRule, type Counted } from '../../../../engine/rule.js';
import { touchesNight } from '../../../../sky/nights.js';
import { downBeforeNight, flyByDay, NIGHT_PARAMETERS } from '../../../common/shared/by-day.js';
import { declaredVisibilitySm, VISIBILITY_PARAMETERS } from '../../flight/declared-weather.js';
import { isStudent, standingOf } from '../shared/certificates.js';
import { countedEndorsement, endorsementFor, getEndorsement } from '../../../common/people/endorsements.js';
import { flyAlone } from '../../../leave-passengers.js';
import { CHANGE_TO_VFR, FLY_WITHOUT_HIRE } from '../../../common/shared/flight-changes.js';
import { curesOf, saysAll, NO_CURE, type Shortfall } from '../../../common/people/shortfalls.js';

/**
 * 14 CFR 61.87(n) to (p), 61.89: a student pilot flies alone, with an endorsement of the preceding 90 days for the make
 * and model (and one for the night, in the night), visibility of 3 statute miles by day and 5 at night, in sight of the
 * surface, and not for hire.
 */
export const studentSolo = defineRule({
  id: 'student.solo',
  title: 'Student solo flight',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.certificates', 'pic.endorsements', 'aircraft.type'],
  parameters: [
    'us.student.solo-days',
    'us.student.visibility-day-sm',
    'us.student.visibility-night-sm',
    ...NIGHT_PARAMETERS,
    ...VISIBILITY_PARAMETERS,
  ],
  branches: {
    'not-student': {
      status: 'not-applicable',
      says: 'The pilot in command is not flying on a student certificate.',
    },
    allowed: {
      status: 'met',
      says: 'Endorsed for solo flight in the {makeModel} on {on}; good through {through}.',
    },
    short: { status: 'short', says: 'Student solo flight is not open: {wrong}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 61.87(n) to (p), 61.89(a)',
        status: 'seen',
        reading:
          'An endorsement exactly 90 days before the flight counts; one that names no make and model does not. The night endorsement stands for the night training at the airfield. Night is that of 14 CFR 1.1. The tower and class B, C, D training of 61.94 and 61.95, the furtherance of a business and limits written by the instructor are left to the instructor.',
      },
      judge(f, moment, p, take) {
        const standing = standingOf(f.get('pic.certificates'), moment);
        if (!isStudent(standing)) return take('not-student');
        const { makeModel } = f.get('aircraft.type');
        const endorsements = f.get('pic.endorsements');
        const { flight, crew } = f;
        const withinDays = p.number('us.student.solo-days');
        const shortfalls: Shortfall[] = [];
        const conditions: string[] = [];
        const counted: Counted[] = [];

        if (!crew.alone)
          shortfalls.push({ what: 'a student flies with nobody else aboard', cures: () => flyAlone(f) });
        if (flight.forHire)
          shortfalls.push({ what: 'a student carries nothing for hire', cures: () => [FLY_WITHOUT_HIRE] });
        if (flight.flightRules === 'IFR')
          shortfalls.push({ what: 'a student flies in sight of the surface', cures: () => [CHANGE_TO_VFR] });

        const solo = endorsementFor(endorsements, moment, { kind: 'solo', makeModel, withinDays });
        if (solo) counted.push(countedEndorsement(solo, 'solo endorsement'));
        else {
          const what = `no solo endorsement for the ${makeModel} in the preceding ${withinDays} days`;
          const title = `Train with an instructor and be endorsed for solo flight in the ${makeModel}.`;
          shortfalls.push({
            what,
            cures: () => getEndorsement(moment, { kind: 'solo', makeModel, withinDays }, title),
          });
        }

        const night = endorsementFor(endorsements, moment, { kind: 'solo-night', makeModel, withinDays });
        const byDay = p.number('us.student.visibility-day-sm');
        const byNight = p.number('us.student.visibility-night-sm');
        const visibility = declaredVisibilitySm(flight.weather, moment, p);
        if (visibility === null)
          conditions.push(
            `Make sure of ${byDay} statute miles visibility (${byNight} at night), and keep the surface in sight all the way.`,
          );
        else if (visibility < byDay)
          shortfalls.push({
            what: `the visibility is ${visibility} statute miles, less than ${byDay}; wait for better weather`,
            cures: NO_CURE,
          });
        else conditions.push('Keep the surface in sight all the way.');

        const nightMatters = !night || (visibility !== null && visibility >= byDay && visibility < byNight);
        if (nightMatters && touchesNight(moment, flight.route, 'civil')) {
          const byDay = () => flyByDay(moment, flight.route, 'civil');
          if (!night) {
            const title = `Train at night with an instructor and be endorsed for solo flight at night in the ${makeModel}.`;
            const wanted = { kind: 'solo-night' as const, makeModel, withinDays };
            const trained = () => getEndorsement(moment, wanted, title);
            const dim = visibility !== null && visibility < byNight;
            shortfalls.push({
              what: `part of the flight is at night and there is no night solo endorsement for the ${makeModel} in the preceding ${withinDays} days${dim ? ', nor enough visibility' : ''}`,
              cures: dim ? byDay : () => [...byDay(), ...trained()],
            });
          } else {
            const what = `the visibility is ${visibility} statute miles, less than ${byNight} at night`;
            shortfalls.push({ what, cures: byDay });
          }
        } else if (nightMatters) {
          conditions.push(...downBeforeNight(moment, flight.route, 'civil', p));
        } else counted.push(countedEndorsement(night, 'night solo endorsement'));

        if (shortfalls.length > 0) {
          const remedies = () => curesOf(shortfalls, 'keep-within-student-limits');
          return take('short', { wrong: saysAll(shortfalls) }, { counted, remedies });
        }
        const through = addDays(solo!.on, withinDays);
        return take('allowed', { makeModel, on: solo!.on, through }, { counted, conditions });
      },
    },
  ],
});
