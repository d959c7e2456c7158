import { defineRule } from '../../../engine/rule.js';
import { workFields, type WorkedManoeuvre } from '../../common/runway/field-work.js';
import {
  conditionsOf,
  FIELD_PARAMETERS,
  FIELD_READS,
  FIELD_REMEDY_PARAMETERS,
  FIND_DISTANCES,
  neededFt,
  runwayRemedies,
  said,
  tightest,
  toFly,
  tooLong,
} from '../../common/runway/held-against.js';

const MARGIN = 'club.runway.margin-factor';

/** The handbook's distances times the club's factor fit the runways: handbooks are flown new, by test pilots. */
export const runwayMargin = defineRule({
  id: 'club.runway_margin',
  title: 'Runway margin',
  weight: 'club',
  binds: 'flight',
  settledAt: 'departure',
  whenUnknown: FIND_DISTANCES,
  reads: FIELD_READS,
  parameters: [...FIELD_PARAMETERS, ...FIELD_REMEDY_PARAMETERS, MARGIN],
  branches: {
    'no-airplane': { status: 'not-applicable', says: 'Only airplanes are held against runways.' },
    enough: {
      status: 'met',
      says: 'The tightest is the {what} at {airfield}: {distance} ft times {factor} is {needed} ft, runway {runway} has {length} ft.',
    },
    'too-little': {
      status: 'short',
      says: 'The {what} at {airfield} takes {distance} ft over a 50 ft obstacle; times {factor} that is {needed} ft, and runway {runway} has only {length} ft.',
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
          'The factor multiplies the distance over a 50 ft obstacle after all of the handbook’s own factors.',
      },
      judge(f, moment, p, take) {
        if (f.get('aircraft.type').category !== 'airplane') return take('no-airplane');
        const factor = Math.max(1, p.number(MARGIN));
        const of = toFly(f, moment, p);
        const work = workFields(of);
        const withFactor = (one: WorkedManoeuvre): Record<string, string | number> => ({
          ...said(one),
          needed: neededFt(one.answer.over50Ft, factor),
          factor,
        });
        const short = tooLong(work, factor);
        if (!short)
          return take('enough', withFactor(tightest(work)), { conditions: conditionsOf(work, factor) });
        return take('too-little', withFactor(short), {
          remedies: () => runwayRemedies({ f, of, p, factor }, short),
        });
      },
    },
  ],
});
