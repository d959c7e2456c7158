import { defineRule } from '../../../../engine/rule.js';
import { ferried } from '../../../common/permits/permit-flight.js';
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
 * 14 CFR 91.205(b), 91.207(a): the instruments and equipment for VFR by day, fitted and working. Night and IFR add to
 * this list, so it binds every flight.
 */
export const equipmentDayVfr = defineRule({
  id: 'equipment.day_vfr',
  title: 'Equipment for every flight',
  weight: 'law',
  binds: 'aircraft',
  reads: [...EQUIPMENT_READS, 'aircraft.permits'],
  parameters: [...EQUIPMENT_PARAMETERS],
  branches: {
    unpowered: { status: 'not-applicable', says: 'The list binds powered aircraft only.' },
    complete: { status: 'met', says: 'Everything required for flight by day is fitted and works.' },
    'under-permit': {
      status: 'met',
      says: 'Required for every flight and missing or not working: {wanting}; a special flight permit covers this ferry flight.',
    },
    'permit-crew-only': {
      status: 'short',
      says: 'Required for every flight and missing or not working: {wanting}; a special flight permit carries nobody but required crew.',
    },
    wanting: { status: 'short', says: 'Required for every flight and missing or not working: {wanting}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.205(b), 91.207(a), 91.213(e)',
        status: 'seen',
        reading:
          'Portable equipment never counts, and what an open squawk names counts as not working until it is triaged. ' +
          'A permit issued for the flight covers it (91.213(e)).',
      },
      judge(f, moment, p, take) {
        if (!isPowered(f.get('aircraft.type'))) return take('unpowered');
        const { wanting, conditions, unknown } = listState(f, 'day', moment, p);
        if (wanting.length === 0) return take('complete', {}, { conditions });
        const values = { wanting: wantingWords(wanting) };
        const counted = wantingCounted(wanting);
        // Where the record leaves something open too, repair alone would not lead to a yes.
        const restore = () => (unknown.length > 0 ? [] : restoreEquipment(wanting, moment));
        const { branch, ...told } = ferried(f, moment, restore);
        return take(branch ?? 'wanting', values, { counted, ...told });
      },
    },
  ],
});
