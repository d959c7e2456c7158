/** Instrument-rated members made for a purpose. */
import { pilot } from './cast.js';
import type { Story } from './story.js';

const touring = [
  { model: 'traverse', daysAgo: 900 },
  { model: 'sprig', daysAgo: 1300 },
] as const;

export const INSTRUMENT_PILOTS: readonly Story[] = [
  pilot({
    key: 'priya',
    name: 'Priya Sandoval',
    age: 36,
    instrument: true,
    approaches: true,
    night: true,
    models: [...touring],
    checkDaysAgo: 110,
    musts: [
      { daysAgo: 23, model: 'traverse', what: 'approaches', approaches: 6 },
      { daysAgo: 12, model: 'traverse', what: 'landings', landings: 3 },
    ],
  }),
  pilot({
    key: 'gideon',
    name: 'Gideon Marsh',
    age: 43,
    instrument: true,
    models: [...touring],
    checkDaysAgo: 165,
    musts: [
      { daysAgo: 250, model: 'traverse', what: 'approaches', approaches: 6 },
      { daysAgo: 18, model: 'traverse', what: 'landings', landings: 3 },
    ],
  }),
  pilot({
    key: 'bettina',
    name: 'Bettina Krol',
    age: 47,
    instrument: true,
    models: [...touring],
    checkDaysAgo: 92,
    musts: [
      { daysAgo: 500, model: 'traverse', what: 'approaches', approaches: 6 },
      { daysAgo: 25, model: 'traverse', what: 'landings', landings: 4 },
    ],
  }),
  pilot({
    key: 'roscoe',
    name: 'Roscoe Tan',
    age: 39,
    level: 'commercial',
    multiEngine: true,
    instrument: true,
    approaches: true,
    night: true,
    medical: { class: 2, monthsAgo: 4 },
    models: [
      { model: 'gemel', daysAgo: 600 },
      { model: 'lindle', daysAgo: 900 },
      { model: 'traverse', daysAgo: 900 },
    ],
    checkDaysAgo: 58,
    musts: [
      { daysAgo: 11, model: 'gemel', what: 'landings', landings: 4 },
      { daysAgo: 32, model: 'lindle', what: 'landings', landings: 3 },
    ],
  }),
];
