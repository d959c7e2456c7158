import { defineRule } from '../../engine/rule.js';
import type { Remedy } from '../../engine/remedy.js';
import type { Moment } from '../../engine/moment.js';
import {
  restoreEquipment,
  wantingCounted,
  wantingWords,
  type Wanting,
} from '../../packs/us/aircraft/equipment/requirements.js';
import {
  avoidAirspace,
  devices,
  needOf,
  TRANSPONDER_PARAMETERS,
  TRANSPONDER_READS,
  type DeviceState,
} from '../../packs/us/aircraft/equipment/transponder-state.js';

/**
 * 14 CFR 91.215(b), 91.225: a transponder that reports altitude and ADS-B Out in class A, B and C, near listed primary
 * airports, above class B and C, and at and above 10,000 ft. Class D alone asks for neither.
 */
export const equipmentTransponder1 = defineRule({
  id: 'equipment.transponder',
  title: 'Transponder and ADS-B Out',
  weight: 'law',
  binds: 'flight',
  reads: [...TRANSPONDER_READS],
  parameters: [...TRANSPONDER_PARAMETERS],
  branches: {
    equipped: {
      status: 'met',
      says: 'The devices that airspace may ask for are fitted and work: {devices}.',
    },
    'not-needed': { status: 'met', says: '{wanting}, but {because}.' },
    'left-off': { status: 'short', says: 'The transponder is left off, but {because}.' },
    wanting: { status: 'short', says: '{wanting}, and {because}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.215(b), 91.225(d)',
        status: 'seen',
        reading:
          'How near the route comes to a listed primary airport is not known, so staying clear is a condition. At ' +
          'and above 10,000 ft the exception within 2,500 ft of the surface is not taken.',
      },
      judge(f, moment, p, take) {
        const all = devices(f, moment, p);
        const lacking = all.filter((one) => one.at !== 'hand');
        const names = all.map((one) => one.words).join(', ');
        if (lacking.length === 0) return take('equipped', { devices: names });
        const need = needOf(f, p, []);
        const values = { wanting: stateWords(lacking), because: need.because };
        const counted = wantingCounted(asWanting(lacking));
        if (!need.needed) return take('not-needed', values, { counted, conditions: need.conditions });
        const off = f.flight.usesTransponder === false;
        const remedies = () => [...equip(lacking, off, moment), avoidAirspace(f, p)];
        const onlyOff = lacking.every((one) => one.at === 'off');
        return take(onlyOff ? 'left-off' : 'wanting', values, { counted, remedies });
      },
    },
  ],
});

const asWanting = (lacking: readonly DeviceState[]): Wanting[] =>
  lacking
    .filter((one) => one.at !== 'off')
    .map(({ kind, words, fitted }) => ({ words, anyOf: [kind], down: fitted, night: 'civil' as const }));

/** 'No working ADS-B Out is fitted', 'the transponder is left off'. */
function stateWords(lacking: readonly DeviceState[]): string {
  const gone = asWanting(lacking);
  const off = lacking.some((one) => one.at === 'off') ? ['The transponder is left off'] : [];
  return [...(gone.length > 0 ? [`Not fitted or not working: ${wantingWords(gone)}`] : []), ...off].join(
    '; ',
  );
}

/** Repairs and fits what is lacking, and turns the transponder on. */
function equip(lacking: readonly DeviceState[], off: boolean, moment: Moment): Remedy[] {
  const turnOn: Remedy = {
    act: 'use-transponder',
    title: 'Use the transponder.',
    by: 'member',
    effects: [{ op: 'flight', fields: { usesTransponder: true } }],
  };
  const restored = restoreEquipment(asWanting(lacking), moment);
  if (asWanting(lacking).length === 0) return [turnOn];
  return restored.map((remedy) =>
    off ? { ...remedy, effects: [...remedy.effects, ...turnOn.effects] } : remedy,
  );
}
