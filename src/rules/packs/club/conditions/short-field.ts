import { defineRule } from '../../../engine/rule.js';
import { need, UnknownFact } from '../../../engine/unknown.js';
import { grouped } from '../../../explain/words.js';
import { stayLocal } from '../../common/shared/flight-changes.js';
import {
  CONDITION_BRANCHES,
  CONDITION_INSTRUCTORS_TOO,
  flyConditionCheckout,
  signedBy,
  standingFor,
  usesRunways,
} from './condition-sign-off.js';
import { fieldsAsked, otherRunways, useEasyRunway, type FieldAsked } from './runways-asked.js';

const SHORTER_THAN_FT = 'club.condition-checkout.short-field-ft';
const GRASS = 'club.condition-checkout.grass';

/** Club rule: whoever uses a short runway, or grass where the club says so, has been checked out on short fields. */
export const shortFieldCheckout = defineRule({
  id: 'club.short_field_checkout',
  title: 'Short-field checkout',
  weight: 'club',
  binds: 'pilot',
  reads: ['pic.checkouts', 'aircraft.type'],
  parameters: [SHORTER_THAN_FT, GRASS, CONDITION_INSTRUCTORS_TOO],
  branches: {
    ...CONDITION_BRANCHES,
    'not-asked': { status: 'not-applicable', says: 'The club asks for no short-field checkout.' },
    'no-runway-needed': {
      status: 'not-applicable',
      says: 'The aircraft is not held against runways, so no short-field checkout is needed.',
    },
    'long-enough': { status: 'met', says: 'Runways can be used that need no short-field checkout.' },
    'not-signed': {
      status: 'short',
      says: 'Runway {runway} at {airfield} ({length} ft, {surface}) needs a short-field checkout, and none that covers the whole flight is on record.',
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
          'Of an airfield where no runway is chosen every runway may be used: where only some need the checkout, keeping to the others is a condition.',
      },
      judge(f, moment, p, take) {
        const by = { shorterThanFt: p.number(SHORTER_THAN_FT), grass: p.flag(GRASS) };
        if (by.shorterThanFt <= 0 && !by.grass) return take('not-asked');
        if (f.crew.instruction && !p.flag(CONDITION_INSTRUCTORS_TOO)) return take('with-instructor');
        if (!usesRunways(f.get('aircraft.type'))) return take('no-runway-needed');
        const { route } = f.flight;
        const origin = need(route[0], 'flight.route', 'the flight names no airfield');
        const fields = fieldsAsked(f.flight, by);
        const thatAre = (asks: FieldAsked['asks']): FieldAsked[] => fields.filter((one) => one.asks === asks);
        if (fields.every(({ asks }) => asks === 'no')) return take('long-enough');
        const signed = standingFor('short-field', f.peek('pic.checkouts'), moment);
        if (signed) return take('signed', ...signedBy('short-field', signed));
        f.get('pic.checkouts');
        const [asking] = thatAre('yes');
        const [unknown] = thatAre('unknown');
        if (asking) {
          const runway = asking.usable.reduce((a, b) => (b.lengthFt < a.lengthFt ? b : a));
          const clear = !fields.some(({ airfield, asks }) => airfield.code === origin.code && asks !== 'no');
          return take(
            'not-signed',
            {
              runway: runway.designator,
              airfield: asking.airfield.code,
              length: grouped(runway.lengthFt),
              surface: runway.surface,
            },
            {
              remedies: () => [
                ...(unknown ? [] : otherRunways(f.flight, fields)),
                ...(clear ? [stayLocal(route)] : []),
                flyConditionCheckout('short-field', moment),
              ],
            },
          );
        }
        if (unknown)
          throw new UnknownFact(
            'flight.route',
            `no runway to be used at ${unknown.airfield.code} is on record`,
            `Find the runways at ${unknown.airfield.code}: short ones need a short-field checkout, and none is on record.`,
          );
        return take('long-enough', {}, { conditions: thatAre('some').map(useEasyRunway) });
      },
    },
  ],
});
