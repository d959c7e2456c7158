import { defineRule } from '../../../engine/rule.js';
import { workFields } from '../../common/runway/field-work.js';
import {
  FIELD_PARAMETERS,
  FIELD_READS,
  FIELD_REMEDY_PARAMETERS,
  FIND_DISTANCES,
  runwayRemedies,
  said,
  tightest,
  toFly,
  tooLong,
} from '../../common/runway/held-against.js';

/** No take-off and no landing on a runway shorter than the handbook's distance over 50 ft. Nobody sets that aside. */
export const runwayLength = defineRule({
  id: 'club.runway_length',
  title: 'Runway length',
  weight: 'club',
  neverOverridden: true,
  binds: 'flight',
  settledAt: 'departure',
  whenUnknown: FIND_DISTANCES,
  reads: FIELD_READS,
  parameters: [...FIELD_PARAMETERS, ...FIELD_REMEDY_PARAMETERS],
  branches: {
    'no-airplane': { status: 'not-applicable', says: 'Only airplanes are held against runways.' },
    'long-enough': {
      status: 'met',
      says: 'The tightest is the {what} at {airfield}: {distance} ft over a 50 ft obstacle, {length} ft of runway {runway}.',
    },
    'too-short': {
      status: 'short',
      says: 'The {what} at {airfield} takes {distance} ft over a 50 ft obstacle; runway {runway} has only {length} ft.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Club handbook, section 6.2',
        status: 'club paper',
        reading:
          'A runway is as long as it is recorded, with a 50 ft obstacle at its end. Fields other than that of departure are reckoned in still air, with the temperature of the field of departure or warmer. Fuel is not taken on the way.',
      },
      judge(f, moment, p, take) {
        if (f.get('aircraft.type').category !== 'airplane') return take('no-airplane');
        const of = toFly(f, moment, p);
        const work = workFields(of);
        const factor = 1;
        const short = tooLong(work, factor);
        if (!short) return take('long-enough', said(tightest(work)));
        return take('too-short', said(short), {
          remedies: () => runwayRemedies({ f, of, p, factor }, short),
        });
      },
    },
  ],
});
