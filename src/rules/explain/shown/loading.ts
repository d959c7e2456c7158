/** Empty weight, loading sheet and performance tables, a line each. */
import type { LoadingFact, PerformanceFact, WeighingFact } from '../../facts/loading.js';
import { counted } from '../words.js';
import { parts, type Show } from './shown.js';

export const showWeighing: Show<WeighingFact> = (one) => [
  {
    id: one.id,
    on: one.on,
    says: parts(
      `${one.emptyWeightLb} lb empty since ${one.on}`,
      one.emptyArmIn === null ? 'arm not on record' : `arm ${one.emptyArmIn} inches`,
    ),
  },
];

export const showLoading: Show<LoadingFact> = (one) => [
  {
    id: one.id,
    on: null,
    says: parts(
      one.source,
      one.stations.map(({ name, armIn }) => `${name} ${armIn} inches`).join(', '),
      one.maxLandingLb !== null && `at most ${one.maxLandingLb} lb at landing`,
      one.maxZeroFuelLb !== null && `at most ${one.maxZeroFuelLb} lb without fuel`,
      `limits for ${one.envelopes.map(({ category }) => `the ${category} category`).join(', ')}`,
    ),
  },
];

export const showPerformance: Show<PerformanceFact> = (one) => [
  {
    id: one.id,
    on: null,
    says: parts(
      one.source,
      `${counted(one.takeoff.tables.length, 'table')} for take-off`,
      `${counted(one.landing.tables.length, 'table')} for landing`,
      one.liftOffKias !== null && `lift-off at ${one.liftOffKias} kt`,
    ),
  },
];
