import type { Remedy } from '../../engine/remedy.js';
import { defineRule } from '../../engine/rule.js';
import { need } from '../../engine/unknown.js';
import type { DeclaredLoading } from '../../facts/flight.js';

/**
 * 14 CFR 91.9(a), 91.103(b): the aircraft takes off within its weight limits. Loading is settled before departure, so
 * what is not declared yet becomes a condition. Balance is not worked out here.
 */
export const loadWeight1 = defineRule({
  id: 'load.weight',
  title: 'Take-off weight',
  weight: 'law',
  binds: 'flight',
  settledAt: 'departure',
  whenUnknown:
    'Add up occupants, baggage and fuel, and make sure that take-off weight and balance are within limits.',
  reads: ['aircraft.type'],
  parameters: ['us.fuel.avgas-lb-per-us-gal', 'us.fuel.jet-lb-per-us-gal'],
  branches: {
    within: { status: 'met', says: 'About {total} lb at take-off of {most} lb allowed.' },
    'too-heavy': {
      status: 'short',
      says: 'About {total} lb at take-off, {over} lb more than the {most} lb allowed.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.9(a), 91.103(b)',
        status: 'from memory',
        reading: 'Fuel is counted at a usual weight per gallon; nothing is taken off for taxi fuel.',
      },
      judge(f, _moment, p, take) {
        const type = f.get('aircraft.type');
        const most = need(
          type.maxTakeoffLb,
          'aircraft.type',
          'the greatest take-off weight is not on record',
        );
        const empty = need(type.emptyWeightLb, 'aircraft.type', 'the empty weight is not on record');
        const loading = need(f.flight.loading, 'flight.loading', 'the loading is not declared yet');
        const occupants = need(
          loading.occupantsLb,
          'flight.loading',
          'the weight of the occupants is not declared',
        );
        const baggage = need(
          loading.baggageLb,
          'flight.loading',
          'the weight of the baggage is not declared',
        );
        const fuel = need(loading.fuelUsGal, 'flight.loading', 'the fuel on board is not declared');
        const perGallon = p.number(
          type.turbine ? 'us.fuel.jet-lb-per-us-gal' : 'us.fuel.avgas-lb-per-us-gal',
        );
        // To a tenth of a pound, so that binary fractions of gallons do not tip an exact limit.
        const total = Math.round((empty + occupants + baggage + fuel * perGallon) * 10) / 10;
        if (total <= most) return take('within', { total: pounds(total), most });
        const over = total - most;
        return take(
          'too-heavy',
          { total: pounds(total), most, over: pounds(over) },
          { remedies: () => lighten({ ...loading, baggageLb: baggage, fuelUsGal: fuel }, over, perGallon) },
        );
      },
    },
  ],
});

/** Whole pounds, rounded up. */
const pounds = (lb: number): number => Math.ceil(Math.round(lb * 10) / 10);

/** Leaves baggage behind first, then fuel; who flies is not for the engine to choose. */
function lighten(
  loading: DeclaredLoading & { baggageLb: number; fuelUsGal: number },
  overLb: number,
  perGallon: number,
): Remedy[] {
  const baggage = Math.min(loading.baggageLb, Math.ceil(overLb));
  const rest = Math.max(0, overLb - baggage);
  const fuel = Math.ceil((rest / perGallon) * 10) / 10;
  if (fuel > loading.fuelUsGal) return [];
  const fuelUsGal = Math.floor((loading.fuelUsGal - fuel) * 10) / 10;
  const parts = [
    ...(baggage > 0 ? [`${baggage} lb of baggage`] : []),
    ...(fuel > 0 ? [`${fuel} US gal of fuel, if the reserves allow it`] : []),
  ];
  return [
    {
      act: 'reduce-load',
      title: `Leave behind ${parts.join(' and ')}.`,
      by: 'member',
      effects: [
        {
          op: 'flight',
          fields: { loading: { ...loading, baggageLb: loading.baggageLb - baggage, fuelUsGal } },
        },
      ],
    },
  ];
}
