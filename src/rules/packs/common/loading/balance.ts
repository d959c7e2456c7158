import { armsAt, categoriesOf, type WeightAtArm } from '../../../air/envelope.js';
import { defineRule, type FactView } from '../../../engine/rule.js';
import { need } from '../../../engine/unknown.js';
import type { EnvelopeCategory, LoadingFact } from '../../../facts/loading.js';
import { keptUsGal, KEPT_FUEL, lighterLoads, otherCompartments, surely } from './lighter.js';
import { burnUsGal, FUEL_WEIGHTS, lbPerUsGal, loadedWith, toldLoading, type ToLoad } from './loaded.js';

/**
 * 14 CFR 91.9(a), 23.23: weight and centre of gravity within the limits of the type design, at take-off and after the
 * planned flight. Worked from the newest empty weight and arm and the stations of the loading sheet.
 */
export const loadBalance = defineRule({
  id: 'load.balance',
  title: 'Centre of gravity',
  weight: 'law',
  binds: 'flight',
  settledAt: 'departure',
  whenUnknown:
    'Work out the centre of gravity for take-off and landing, and make sure that it is within the limits of the flight manual.',
  reads: ['aircraft.type', 'aircraft.weighing', 'aircraft.loading'],
  parameters: [...FUEL_WEIGHTS, ...KEPT_FUEL],
  branches: {
    'no-limits': { status: 'not-applicable', says: 'Balloons and airships have no such limits.' },
    within: {
      status: 'met',
      says: '{takeoff} inches at take-off and {landing} at landing, within the limits of the {categories} category.',
    },
    outside: {
      status: 'short',
      says: '{when}: {weight} lb at {arm} inches, {how}.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.9(a), 91.103, 23.23; arithmetic of FAA-H-8083-1',
        status: 'from memory',
        reading:
          'Tanks are filled in the order of the sheet and emptied in the opposite one. Between take-off and landing the centre of gravity is taken to lie within the limits where it does at both. A point on the edge is within. Nothing is taken off for taxi fuel.',
      },
      judge(f, _moment, p, take) {
        const type = f.get('aircraft.type');
        if (type.category === 'lighter-than-air') return take('no-limits');
        const weighing = f.get('aircraft.weighing');
        const sheet = f.get('aircraft.loading');
        const loading = toldLoading(f.flight);
        const burn = need(
          burnUsGal(type, f.flight),
          'aircraft.type',
          'the fuel burn at cruise is not on record',
        );
        const of: ToLoad = {
          ...{ sheet, weighing, loading, personsOnBoard: f.flight.personsOnBoard },
          lbPerUsGal: lbPerUsGal(type, sheet, p),
        };
        const worked = work(of, burn);
        if ('outside' in worked) {
          const remedies = () => remediesFor(f, of, burn, keptUsGal(type, f.flight, p));
          return take('outside', worked.outside, { remedies });
        }
        const [takeoff, landing] = [worked.takeoff, worked.landing].map((one) => one.armIn.toFixed(1));
        return take('within', {
          takeoff: takeoff!,
          landing: landing!,
          categories: worked.categories.join(' and the '),
        });
      },
    },
  ],
});

type Worked =
  | { takeoff: WeightAtArm; landing: WeightAtArm; categories: EnvelopeCategory[] }
  | { outside: Record<string, string> };

/** Both points against the limits. A category counts where both are in it. */
function work(of: ToLoad, burn: number): Worked {
  const takeoff = loadedWith(of, of.loading.fuelUsGal);
  const landing = loadedWith(of, Math.max(0, of.loading.fuelUsGal - burn));
  const [atTakeoff, atLanding] = [takeoff, landing].map((one) => categoriesOf(of.sheet.envelopes, one));
  const categories = atTakeoff!.filter((category) => atLanding!.includes(category));
  if (categories.length > 0) return { takeoff, landing, categories };
  return {
    outside:
      atTakeoff!.length === 0
        ? says('At take-off', of.sheet, takeoff)
        : says('At landing', of.sheet, landing),
  };
}

function says(when: string, sheet: LoadingFact, at: WeightAtArm): Record<string, string> {
  return { when, weight: at.weightLb.toFixed(0), arm: at.armIn.toFixed(2), how: howOutside(sheet, at) };
}

/** On which side of the limits of all categories together. */
function howOutside({ envelopes }: LoadingFact, at: WeightAtArm): string {
  const arms = envelopes.map(({ points }) => armsAt(points, at.weightLb)).filter((one) => one !== null);
  if (arms.length === 0) return 'a weight for which there are no limits';
  const forward = Math.min(...arms.map(({ forwardIn }) => forwardIn));
  const aft = Math.max(...arms.map(({ aftIn }) => aftIn));
  if (at.armIn < forward) return `forward of the limit of ${forward.toFixed(2)}`;
  return at.armIn > aft ? `aft of the limit of ${aft.toFixed(2)}` : 'outside the limits';
}

function remediesFor(f: Pick<FactView, 'flight' | 'crew'>, of: ToLoad, burn: number, kept: number | null) {
  const asked = {
    ...{ flight: f.flight, crew: f.crew, loading: of.loading, sheet: of.sheet, keptUsGal: kept },
    fits: (changed: Pick<ToLoad, 'loading' | 'personsOnBoard'>) =>
      surely(() => !('outside' in work({ ...of, ...changed }, burn))),
  };
  return [...otherCompartments(asked), ...lighterLoads(asked)];
}
