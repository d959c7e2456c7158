import { defineRule } from '../../../engine/rule.js';
import { touchesNight } from '../../../sky/nights.js';
import { downBeforeNight, flyByDay, NIGHT_PARAMETERS } from '../../common/shared/by-day.js';
import {
  CONDITION_BRANCHES,
  CONDITION_INSTRUCTORS_TOO,
  flyConditionCheckout,
  signedBy,
  standingFor,
} from './condition-sign-off.js';

const ASKED = 'club.condition-checkout.night';

/** Club rule: whoever flies at night as pilot in command has been checked out at night. */
export const nightCheckout = defineRule({
  id: 'club.night_checkout',
  title: 'Night checkout',
  weight: 'club',
  binds: 'pilot',
  reads: ['pic.checkouts'],
  parameters: [ASKED, CONDITION_INSTRUCTORS_TOO, ...NIGHT_PARAMETERS],
  branches: {
    ...CONDITION_BRANCHES,
    'not-asked': { status: 'not-applicable', says: 'The club asks for no night checkout.' },
    'by-day': { status: 'met', says: 'The flight is over by day, so no night checkout is needed.' },
    'not-signed': {
      status: 'short',
      says: 'Part of the flight is at night, and no night checkout that covers the whole flight is on record.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Club handbook, section 3.6',
        status: 'club paper',
        reading:
          'Night is civil night (14 CFR 1.1): from the end of evening twilight to the beginning of morning twilight, at any airfield of the route.',
      },
      judge(f, moment, p, take) {
        if (!p.flag(ASKED)) return take('not-asked');
        if (f.crew.instruction && !p.flag(CONDITION_INSTRUCTORS_TOO)) return take('with-instructor');
        const signed = standingFor('night', f.peek('pic.checkouts'), moment);
        if (signed) return take('signed', ...signedBy('night', signed));
        // Only now does the sun matter.
        const { route } = f.flight;
        if (!touchesNight(moment, route, 'civil'))
          return take('by-day', {}, { conditions: downBeforeNight(moment, route, 'civil', p) });
        f.get('pic.checkouts');
        return take(
          'not-signed',
          {},
          {
            remedies: () => [...flyByDay(moment, route, 'civil'), flyConditionCheckout('night', moment)],
          },
        );
      },
    },
  ],
});
