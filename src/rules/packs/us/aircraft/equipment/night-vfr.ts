import { defineRule } from '../../../../engine/rule.js';
import { downBeforeNight, flyByDay, NIGHT_PARAMETERS } from '../../../common/shared/by-day.js';
import {
  EQUIPMENT_PARAMETERS,
  EQUIPMENT_READS,
  isPowered,
  listState,
  nightOf,
  restoreEquipment,
  wantedAtNight,
  wantingCounted,
  wantingWords,
} from './requirements.js';

/**
 * 14 CFR 91.205(c), 91.209(a): what a flight into civil night needs on top of the day list, under VFR and IFR alike;
 * position lights from sunset on. The sun is asked only when something is wanting.
 */
export const equipmentNightVfr = defineRule({
  id: 'equipment.night_vfr',
  title: 'Equipment for night',
  weight: 'law',
  binds: 'aircraft',
  reads: [...EQUIPMENT_READS],
  parameters: [...EQUIPMENT_PARAMETERS, ...NIGHT_PARAMETERS],
  branches: {
    unpowered: { status: 'not-applicable', says: 'The list binds powered aircraft only.' },
    complete: { status: 'met', says: 'Everything required for flight at night is fitted and works.' },
    'by-day': {
      status: 'met',
      says: 'The flight is over by day, so the night list does not bind (wanting for night: {wanting}).',
    },
    wanting: { status: 'short', says: 'Required at night and missing or not working: {wanting}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.205(c), (d)(1), 91.209(a)',
        status: 'seen',
        reading:
          'Night is civil night, at any airfield of the route; for position lights it lasts from sunset to sunrise, in Alaska too (strict).',
      },
      judge(f, moment, p, take) {
        if (!isPowered(f.get('aircraft.type'))) return take('unpowered');
        const { wanting } = listState(f, 'night', moment, p);
        if (wanting.length === 0) return take('complete');
        const wanted = wantedAtNight(f, wanting, moment);
        if (wanted.length === 0) {
          const told = downBeforeNight(moment, f.flight.route, nightOf(wanting), p);
          return take('by-day', { wanting: wantingWords(wanting) }, { conditions: told });
        }
        return take(
          'wanting',
          { wanting: wantingWords(wanted) },
          {
            counted: wantingCounted(wanted),
            remedies: () => [
              ...restoreEquipment(wanting, moment),
              ...flyByDay(moment, f.flight.route, nightOf(wanting)),
            ],
          },
        );
      },
    },
  ],
});
