import type { Remedy } from '../../../engine/remedy.js';

/** Fly the same flight under IFR; whether pilot and aircraft may is judged with the rest. */
export const changeToIfr: Remedy = {
  act: 'change-to-ifr',
  title: 'Fly it under IFR, with a clearance.',
  by: 'member',
  effects: [{ op: 'flight', fields: { flightRules: 'IFR' } }],
};
