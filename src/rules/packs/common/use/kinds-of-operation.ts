import { defineRule } from '../../../engine/rule.js';
import { touchesNight } from '../../../sky/nights.js';
import { downBeforeNight, flyByDay, NIGHT_PARAMETERS } from '../shared/by-day.js';
import { CHANGE_TO_VFR } from '../shared/flight-changes.js';

const WORDS = { 'day-vfr': 'VFR by day', 'night-vfr': 'night', ifr: 'IFR' };

/**
 * 14 CFR 91.9(a): the aircraft is flown within its operating limitations, which name the kinds of operation its type
 * design allows. The sun is asked only where night is not among them.
 */
export const kindsOfOperation = defineRule({
  id: 'aircraft.kinds_of_operation',
  title: 'Kinds of operation',
  weight: 'law',
  binds: 'aircraft',
  reads: ['aircraft.type'],
  parameters: [...NIGHT_PARAMETERS],
  branches: {
    allowed: { status: 'met', says: 'The type design allows this kind of operation (allowed: {kinds}).' },
    'no-ifr': { status: 'short', says: 'The type design does not allow IFR (allowed: {kinds}).' },
    'no-vfr': { status: 'short', says: 'The type design does not allow VFR by day (allowed: {kinds}).' },
    'no-night': {
      status: 'short',
      says: 'The type design does not allow flight at night (allowed: {kinds}).',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.9(a), 23.1525 (1964)',
        status: 'from memory',
        reading: 'Night is civil night, at any airfield of the route; IFR at night needs both IFR and night.',
      },
      judge(f, moment, p, take) {
        const { kindsOfOperation: kinds } = f.get('aircraft.type');
        const values = { kinds: kinds.map((kind) => WORDS[kind]).join(', ') || 'none on record' };
        const ifr = f.flight.flightRules === 'IFR';
        if (ifr && !kinds.includes('ifr'))
          return take('no-ifr', values, { remedies: () => vfrInstead(kinds) });
        if (!ifr && !kinds.includes('day-vfr')) return take('no-vfr', values);
        if (kinds.includes('night-vfr')) return take('allowed', values);
        const { route } = f.flight;
        if (touchesNight(moment, route, 'civil'))
          return take('no-night', values, { remedies: () => flyByDay(moment, route, 'civil') });
        return take('allowed', values, { conditions: downBeforeNight(moment, route, 'civil', p) });
      },
    },
  ],
});

/** Changing to VFR cures an aircraft that has no IFR; at night only if it may be flown at night. */
const vfrInstead = (kinds: readonly string[]) =>
  kinds.includes('day-vfr') && kinds.includes('night-vfr') ? [CHANGE_TO_VFR] : [];
