import { defineRule } from '../../../../engine/rule.js';
import { touchesNight } from '../../../../sky/nights.js';
import { flyByDay } from '../use/change-flight.js';
import {
  EQUIPMENT_PARAMETERS,
  EQUIPMENT_READS,
  isPowered,
  listState,
  restoreEquipment,
  wantingCounted,
  wantingWords,
} from './requirements.js';

/**
 * 14 CFR 91.205(c): what a flight into civil night needs on top of the day list, under VFR and IFR alike. The sun is
 * asked only when something is wanting.
 */
export const equipmentNightVfr = defineRule({
  id: 'equipment.night_vfr',
  title: 'Equipment for night',
  weight: 'law',
  binds: 'aircraft',
  reads: [...EQUIPMENT_READS],
  parameters: [...EQUIPMENT_PARAMETERS],
  branches: {
    unpowered: { status: 'not-applicable', says: 'The list binds powered aircraft only.' },
    complete: { status: 'met', says: 'Everything required for flight at night is fitted and works.' },
    'by-day': {
      status: 'not-applicable',
      says: 'The flight is over by day, so the night list does not bind (wanting for night: {wanting}).',
    },
    wanting: { status: 'short', says: 'Required at night and wanting: {wanting}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.205(c), (d)(1)',
        status: 'seen',
        reading: 'Night is civil night, at any airfield of the route.',
      },
      judge(f, moment, p, take) {
        if (!isPowered(f.get('aircraft.type'))) return take('unpowered');
        const { wanting, conditions } = listState(f, 'night', moment, p);
        if (wanting.length === 0) return take('complete', {}, { conditions });
        const values = { wanting: wantingWords(wanting) };
        if (!touchesNight(moment, f.flight.route, 'civil')) return take('by-day', values);
        return take('wanting', values, {
          counted: wantingCounted(wanting),
          remedies: [...restoreEquipment(wanting, moment), ...flyByDay(moment, f.flight.route)],
        });
      },
    },
  ],
});
