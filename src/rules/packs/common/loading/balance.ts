import { armsAt, categoriesOf, type WeightAtArm } from '../../../air/envelope.js';
import type { Parameters } from '../../../engine/parameters.js';
import type { Remedy } from '../../../engine/remedy.js';
import { defineRule, type FactView } from '../../../engine/rule.js';
import { need, UnknownFact } from '../../../engine/unknown.js';
import type { AircraftType } from '../../../facts/aircraft.js';
import type { Fact } from '../../../facts/fact.js';
import type { LoadingFact, WeighingFact } from '../../../facts/loading.js';
import { keptUsGal, KEPT_FUEL, lighterLoads, otherCompartments, surely } from './lighter.js';
import { overLimit, type Over, type Weighed } from './limits.js';
import { burnUsGal, FUEL_WEIGHTS, lbPerUsGal, loadedWith, toldLoading } from './loaded.js';

/**
 * 14 CFR 91.9(a), 23.23: what the loading sheet limits, at take-off and after the planned flight: seat rows, compartments,
 * tanks, landing and zero-fuel weight, and the centre of gravity. Worked from the newest empty weight and arm.
 */
export const loadBalance = defineRule({
  id: 'load.balance',
  title: 'Loading and centre of gravity',
  weight: 'law',
  binds: 'flight',
  settledAt: 'departure',
  whenUnknown:
    'Work out the centre of gravity for take-off and landing, and make sure that it and the load of each station are within the limits of the flight manual.',
  reads: ['aircraft.type', 'aircraft.weighing', 'aircraft.loading'],
  parameters: [...FUEL_WEIGHTS, ...KEPT_FUEL],
  branches: {
    'no-limits': { status: 'not-applicable', says: 'Balloons and airships have no such limits.' },
    within: {
      status: 'met',
      says: '{takeoff} inches at take-off and {landing} at landing, within the limits of the {categories} category.',
    },
    'station-over': { status: 'short', says: '{station}: {load}, but only {most} allowed.' },
    'too-heavy': {
      status: 'short',
      says: 'About {total} lb {when}, {over} lb more than the {most} lb allowed.',
    },
    outside: { status: 'short', says: '{when} not within limits: {weight} lb at {arm} inches, {how}.' },
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
        const sheet = f.get('aircraft.loading');
        const weighing = f.peek('aircraft.weighing');
        const of: ToJudge = {
          ...{ type, sheet, weighing, loading: toldLoading(f.flight) },
          personsOnBoard: f.flight.personsOnBoard,
          lbPerUsGal: lbPerUsGal(type, sheet, p),
          burnUsGal: burnUsGal(type, f.flight),
        };
        const found = work(of);
        if (found.branch === 'within') return take('within', found.values);
        return take(found.branch, found.values, { remedies: () => remediesFor(f, of, p) });
      },
    },
  ],
});

type ToJudge = Omit<Weighed, 'emptyLb' | 'type'> & { type: AircraftType; weighing: Fact<WeighingFact> };
type Found = Over | { branch: 'within' | 'outside'; values: Record<string, string> };

/** The first limit that is passed, or that none is. A category counts where both points are in it. */
function work({ weighing, ...of }: ToJudge): Found {
  const over = overLimit({ ...of, emptyLb: weighing.known ? weighing.value.emptyWeightLb : null });
  if (over) return over;
  if (!weighing.known) throw new UnknownFact('aircraft.weighing', weighing.because);
  const burn = need(of.burnUsGal, 'aircraft.type', 'the fuel burn at cruise is not on record');
  const load = { ...of, weighing: weighing.value };
  const takeoff = loadedWith(load, of.loading.fuelUsGal);
  const landing = loadedWith(load, Math.max(0, of.loading.fuelUsGal - burn));
  const [atTakeoff, atLanding] = [takeoff, landing].map((one) => categoriesOf(of.sheet.envelopes, one));
  const categories = atTakeoff!.filter((category) => atLanding!.includes(category));
  if (categories.length === 0)
    return atTakeoff!.length === 0
      ? outside('At take-off', of.sheet, takeoff)
      : outside('At landing', of.sheet, landing);
  const values = { takeoff: takeoff.armIn.toFixed(1), landing: landing.armIn.toFixed(1) };
  return { branch: 'within', values: { ...values, categories: categories.join(' and the ') } };
}

const outside = (when: string, sheet: LoadingFact, at: WeightAtArm): Found => ({
  branch: 'outside',
  values: { when, weight: at.weightLb.toFixed(0), arm: at.armIn.toFixed(2), how: howOutside(sheet, at) },
});

/** On which side of the limits of all categories together. */
function howOutside({ envelopes }: LoadingFact, at: WeightAtArm): string {
  const arms = envelopes.map(({ points }) => armsAt(points, at.weightLb)).filter((one) => one !== null);
  if (arms.length === 0) return 'a weight for which there are no limits';
  const forward = Math.min(...arms.map(({ forwardIn }) => forwardIn));
  const aft = Math.max(...arms.map(({ aftIn }) => aftIn));
  if (at.armIn < forward) return `forward of the limit of ${forward.toFixed(2)}`;
  return at.armIn > aft ? `aft of the limit of ${aft.toFixed(2)}` : 'outside the limits';
}

function remediesFor(f: Pick<FactView, 'flight' | 'crew'>, of: ToJudge, p: Parameters): Remedy[] {
  const asked = {
    ...{ flight: f.flight, crew: f.crew, loading: of.loading, sheet: of.sheet },
    keptUsGal: keptUsGal(of.type, f.flight, p),
    fits: ({ loading, personsOnBoard }: Pick<ToJudge, 'loading' | 'personsOnBoard'>) =>
      surely(() => work({ ...of, loading, personsOnBoard }).branch === 'within'),
  };
  return [...otherCompartments(asked), ...lighterLoads(asked)];
}
