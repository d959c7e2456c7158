import { defineRule } from '../../../engine/rule.js';
import { need } from '../../../engine/unknown.js';
import { grouped } from '../../../explain/words.js';
import { stayLocal } from '../../common/shared/flight-changes.js';
import {
  CONDITION_BRANCHES,
  CONDITION_INSTRUCTORS_TOO,
  flyConditionCheckout,
  signedBy,
  standingFor,
} from './condition-sign-off.js';

const FROM_FT = 'club.condition-checkout.mountain-ft';

/** Club rule: whoever goes to an airfield as high as the club says has been checked out in the mountains. */
export const mountainCheckout = defineRule({
  id: 'club.mountain_checkout',
  title: 'Mountain checkout',
  weight: 'club',
  binds: 'pilot',
  reads: ['pic.checkouts'],
  parameters: [FROM_FT, CONDITION_INSTRUCTORS_TOO],
  branches: {
    ...CONDITION_BRANCHES,
    'not-asked': { status: 'not-applicable', says: 'The club asks for no mountain checkout.' },
    low: {
      status: 'not-applicable',
      says: 'No airfield of the flight lies at {from} ft or higher, so no mountain checkout is needed.',
    },
    'not-signed': {
      status: 'short',
      says: '{airfield} lies at {elevation} ft; from {from} ft on the club asks for a mountain checkout, and none that covers the whole flight is on record.',
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
          'The elevation of the airfields counts, not the height of the ground on the way, which is left to the pilot.',
      },
      judge(f, moment, p, take) {
        const fromFt = p.number(FROM_FT);
        if (fromFt <= 0) return take('not-asked');
        if (f.crew.instruction && !p.flag(CONDITION_INSTRUCTORS_TOO)) return take('with-instructor');
        const { route } = f.flight;
        const origin = need(route[0], 'flight.route', 'the flight names no airfield');
        const highest = route.reduce((a, b) => (b.elevationFt > a.elevationFt ? b : a));
        const from = grouped(fromFt);
        if (highest.elevationFt < fromFt) return take('low', { from });
        const signed = standingFor('mountain', f.peek('pic.checkouts'), moment);
        if (signed) return take('signed', ...signedBy('mountain', signed));
        f.get('pic.checkouts');
        return take(
          'not-signed',
          { airfield: highest.code, elevation: grouped(highest.elevationFt), from },
          {
            remedies: () => [
              ...(origin.elevationFt < fromFt ? [stayLocal(route)] : []),
              flyConditionCheckout('mountain', moment),
            ],
          },
        );
      },
    },
  ],
});
