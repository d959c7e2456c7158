import { defineRule } from '../../../engine/rule.js';
import { workFields } from '../../common/runway/field-work.js';
import {
  FIELD_PARAMETERS,
  FIELD_READS,
  FIND_DISTANCES,
  tightest,
  toFly,
} from '../../common/runway/held-against.js';

/**
 * 14 CFR 91.103(b): before a flight the pilot in command knows the runway lengths at the airfields of intended use, and
 * the take-off and landing distances. How much runway is enough the section does not say: the club's rules do.
 */
export const runwayInformation = defineRule({
  id: 'preflight.runways',
  title: 'Runway lengths, take-off and landing distances known',
  weight: 'law',
  binds: 'flight',
  settledAt: 'departure',
  whenUnknown: FIND_DISTANCES,
  reads: FIELD_READS,
  parameters: FIELD_PARAMETERS,
  branches: {
    'no-airplane': {
      status: 'not-applicable',
      says: 'Distances are worked out for airplanes only; for others it is left to the pilot in command.',
    },
    'worked-out': {
      status: 'met',
      says: 'Worked out for every take-off and landing of the flight: {count}.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.103(b)',
        status: 'from memory',
        reading: 'Known means worked out here from the tables on record and the weather told.',
      },
      judge(f, moment, p, take) {
        if (f.get('aircraft.type').category !== 'airplane') return take('no-airplane');
        const work = workFields(toFly(f, moment, p));
        tightest(work);
        return take('worked-out', { count: work.worked.length });
      },
    },
  ],
});
