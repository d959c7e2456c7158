import { defineRule, ruleList } from '../../../engine/rule.js';
import { need } from '../../../engine/unknown.js';
import { loadWeight1 } from '../../../versions/past/load-weight-1.js';
import { keptUsGal, KEPT_FUEL, lighterLoads } from './lighter.js';
import { FUEL_WEIGHTS, lbPerUsGal, pounds, toldLoading, totalLb } from './loaded.js';

/**
 * 14 CFR 91.9(a), 91.103(b): the aircraft takes off within its weight limits. Loading is settled before departure, so
 * what is not declared yet becomes a condition. What else the loading sheet limits is `load.balance`.
 */
export const loadWeight = defineRule({
  id: 'load.weight',
  title: 'Take-off weight',
  weight: 'law',
  binds: 'flight',
  settledAt: 'departure',
  whenUnknown:
    'Add up occupants, baggage and fuel, and make sure that take-off weight and balance are within limits.',
  reads: ['aircraft.type'],
  parameters: [...FUEL_WEIGHTS, ...KEPT_FUEL],
  branches: {
    within: { status: 'met', says: 'About {total} lb at take-off of {most} lb allowed.' },
    'too-heavy': {
      status: 'short',
      says: 'About {total} lb at take-off, {over} lb more than the {most} lb allowed.',
    },
  },
  superseded: ruleList(loadWeight1),
  changed:
    'Advises less fuel only down to what the club keeps beyond the planned time, and less fuel alone where that is enough, so that the advice never eats the reserve.',
  bodies: [
    {
      version: 2,
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
        const loading = toldLoading(f.flight);
        const perGallon = lbPerUsGal(type, null, p);
        const total = totalLb(empty, loading, perGallon);
        if (total <= most) return take('within', { total: pounds(total), most });
        const remedies = () =>
          lighterLoads({
            ...{ flight: f.flight, crew: f.crew, loading, sheet: null },
            keptUsGal: keptUsGal(type, f.flight, p),
            fits: (changed) => totalLb(empty, changed.loading, perGallon) <= most,
          });
        return take('too-heavy', { total: pounds(total), most, over: pounds(total - most) }, { remedies });
      },
    },
  ],
});
