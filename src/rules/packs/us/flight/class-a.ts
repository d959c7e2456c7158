import { defineRule } from '../../../engine/rule.js';
import { UnknownFact } from '../../../engine/unknown.js';
import { changeToIfr } from './change-to-ifr.js';

/** The altitude planned instead lies so far below class A: the next one used under VFR (14 CFR 91.159). */
const BELOW_FT = 500;

/** 14 CFR 91.135: class A airspace, from 18,000 ft above sea level up, is for flights under IFR. */
export const classA = defineRule({
  id: 'airspace.class_a',
  title: 'Class A airspace only under IFR',
  weight: 'law',
  binds: 'flight',
  settledAt: 'departure',
  whenUnknown: 'Stay below class A airspace, or fly IFR.',
  reads: ['aircraft.type'],
  parameters: ['us.class-a.floor'],
  branches: {
    ifr: { status: 'not-applicable', says: 'The flight is under IFR.' },
    below: { status: 'met', says: 'The flight stays below class A airspace, which begins at {floor} ft.' },
    'in-class-a': {
      status: 'short',
      says: 'VFR is not allowed in class A airspace, which begins at {floor} ft.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: { text: '14 CFR 91.135, 71.33', status: 'from memory' },
      judge(f, _moment, p, take) {
        const { flightRules, airspace, maxAltitudeFtMsl } = f.flight;
        if (flightRules === 'IFR') return take('ifr');
        const floor = p.number('us.class-a.floor');
        const named = airspace?.includes('A') ?? false;
        if (named || (maxAltitudeFtMsl ?? 0) >= floor) {
          const fields = {
            ...(named && { airspace: airspace!.filter((one) => one !== 'A') }),
            ...((maxAltitudeFtMsl ?? 0) >= floor && { maxAltitudeFtMsl: floor - BELOW_FT }),
          };
          return take(
            'in-class-a',
            { floor },
            {
              remedies: () => [
                {
                  act: 'stay-below-class-a',
                  title: `Plan the flight below ${floor} ft and outside class A airspace.`,
                  by: 'member',
                  effects: [
                    // Out of class A with no height said, the floor still has to be kept.
                    {
                      op: 'flight',
                      fields: { maxAltitudeFtMsl: maxAltitudeFtMsl ?? floor - BELOW_FT, ...fields },
                    },
                  ],
                },
                changeToIfr,
              ],
            },
          );
        }
        if (maxAltitudeFtMsl !== null) return take('below', { floor });
        const type = f.peek('aircraft.type');
        const reach = type.known ? (type.value.maxOperatingAltitudeFt ?? type.value.serviceCeilingFt) : null;
        if (reach !== null && reach < floor) return take('below', { floor });
        throw new UnknownFact('flight.maxAltitudeFtMsl', 'how high the flight goes is not declared');
      },
    },
  ],
});
