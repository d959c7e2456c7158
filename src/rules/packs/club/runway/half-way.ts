import { halfwaySpeedKt, mustAbort, takeoffCheck } from '../../../air/takeoff-check.js';
import { defineRule } from '../../../engine/rule.js';
import { need } from '../../../engine/unknown.js';
import { workFields } from '../../common/runway/field-work.js';
import { FIELD_PARAMETERS, FIELD_READS, toFly } from '../../common/runway/held-against.js';

/** The speed to have at half the runway, else the take-off is given up. Advice; common practice, no source. */
export const halfWayCheck = defineRule({
  id: 'takeoff.half_way',
  title: 'Speed at half the runway',
  weight: 'advice',
  binds: 'flight',
  reads: FIELD_READS,
  parameters: FIELD_PARAMETERS,
  branches: {
    'no-figure': { status: 'not-applicable', says: 'No lift-off speed is on record for this aircraft.' },
    'no-airplane': { status: 'not-applicable', says: 'The check is for airplanes.' },
    expected: {
      status: 'met',
      says: 'Runway {runway} at {airfield}: at {half} ft have {least} kt, or stop. By the tables it is about {expected} kt there.',
    },
    'too-slow': {
      status: 'short',
      says: 'Runway {runway} at {airfield}: by the tables there are about {expected} kt at {half} ft, less than the {least} kt with which a take-off goes on.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '70 % of the lift-off speed by half the runway, else stop',
        status: 'common practice, no source',
        reading:
          'The speed expected there is that of an even acceleration over the ground roll of the tables.',
      },
      judge(f, moment, p, take) {
        if (f.get('aircraft.type').category !== 'airplane') return take('no-airplane');
        const liftOffKt = f.get('aircraft.performance').liftOffKias;
        if (liftOffKt === null) return take('no-figure');
        const work = workFields(toFly(f, moment, p));
        const first = need(
          work.worked.find(({ does, away }) => does === 'takeoff' && !away),
          'aircraft.performance',
          work.unknown[0] ?? 'the take-off cannot be worked out',
        );
        const check = takeoffCheck(first.runway.lengthFt, liftOffKt);
        const expected = halfwaySpeedKt(check, first.answer.groundRollFt, liftOffKt);
        return take(mustAbort(check, expected) ? 'too-slow' : 'expected', {
          runway: first.runway.designator,
          airfield: first.airfield.code,
          half: Math.floor(check.checkDistanceFt),
          least: Math.ceil(check.minimumKt - 1e-9),
          expected: Math.floor(expected + 1e-9),
        });
      },
    },
  ],
});
