import { defineRule } from '../../../../engine/rule.js';
import { CHANGE_TO_VFR } from '../../../common/shared/flight-changes.js';
import {
  EQUIPMENT_PARAMETERS,
  EQUIPMENT_READS,
  isPowered,
  listState,
  restoreEquipment,
  wantingCounted,
  wantingWords,
} from './requirements.js';

/** 14 CFR 91.205(d), (e): what flight under IFR needs on top of the day (and night) list. */
export const equipmentIfr = defineRule({
  id: 'equipment.ifr',
  title: 'Equipment for IFR',
  weight: 'law',
  binds: 'aircraft',
  reads: [...EQUIPMENT_READS],
  parameters: [...EQUIPMENT_PARAMETERS],
  branches: {
    'not-under-ifr': { status: 'not-applicable', says: 'The flight is not under IFR.' },
    unpowered: { status: 'not-applicable', says: 'The list binds powered aircraft only.' },
    complete: { status: 'met', says: 'Everything required for IFR is fitted and works.' },
    wanting: { status: 'short', says: 'Required under IFR and missing or not working: {wanting}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.205(d), (e)',
        status: 'seen',
        reading:
          'An approved substitute (a third attitude system for the rate-of-turn indicator) is entered as equipment ' +
          'that satisfies the kind it replaces.',
      },
      judge(f, moment, p, take) {
        if (f.flight.flightRules !== 'IFR') return take('not-under-ifr');
        if (!isPowered(f.get('aircraft.type'))) return take('unpowered');
        const { wanting, conditions } = listState(f, 'ifr', moment, p);
        if (wanting.length === 0) return take('complete', {}, { conditions });
        return take(
          'wanting',
          { wanting: wantingWords(wanting) },
          {
            counted: wantingCounted(wanting),
            remedies: () => [...restoreEquipment(wanting, moment), CHANGE_TO_VFR],
          },
        );
      },
    },
  ],
});
