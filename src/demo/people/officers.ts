/** Officers and instructors. */
import type { Must, Story } from './story.js';

const SINGLE = 'airplane-single-engine' as const;
const MULTI = 'airplane-multiengine' as const;
const INSTRUMENT = 'instrument-airplane' as const;

/** What every instructor of the club keeps up. */
const teaching = (daysAgo: number): Must[] => [
  { daysAgo, model: 'sprig', what: 'landings', landings: 4 },
  { daysAgo: daysAgo + 33, model: 'almanac', what: 'night', landings: 3 },
];

const instructor = (fields: Pick<Story, 'key' | 'name' | 'age'> & Partial<Story>): Story => ({
  roles: ['instructor'],
  joinedMonthsAgo: 90,
  level: 'commercial',
  certificateMonthsAgo: 140,
  instrument: true,
  instructor: { ratings: [SINGLE], experienceMonthsAgo: 9 },
  medical: { class: 2, monthsAgo: 7 },
  reviewMonthsAgo: 11,
  models: [
    { model: 'sprig', daysAgo: 1500 },
    { model: 'almanac', daysAgo: 1400 },
    { model: 'traverse', daysAgo: 1300 },
    { model: 'lindle', daysAgo: 1200 },
  ],
  checkDaysAgo: 120,
  rate: 2,
  night: true,
  trips: true,
  approaches: true,
  ...fields,
});

export const INSTRUCTORS: readonly Story[] = [
  instructor({
    key: 'iris',
    name: 'Iris Calloway',
    age: 41,
    differencesDaysAgo: 143,
    instructor: { ratings: [SINGLE, INSTRUMENT], experienceMonthsAgo: 9 },
    checkDaysAgo: 75,
    musts: [...teaching(9), { daysAgo: 24, model: 'traverse', what: 'approaches', approaches: 6 }],
  }),
  instructor({
    key: 'anton',
    name: 'Anton Verhey',
    age: 56,
    differencesDaysAgo: 146,
    multiEngine: true,
    instructor: { ratings: [SINGLE, MULTI, INSTRUMENT], experienceMonthsAgo: 4 },
    models: [
      { model: 'gemel', daysAgo: 1600 },
      { model: 'traverse', daysAgo: 1600 },
      { model: 'almanac', daysAgo: 1500 },
      { model: 'lindle', daysAgo: 1500 },
      { model: 'sprig', daysAgo: 1500 },
    ],
    checkDaysAgo: 201,
    musts: [...teaching(14), { daysAgo: 18, model: 'gemel', what: 'landings', landings: 4 }],
  }),
  instructor({
    key: 'yolanda',
    name: 'Yolanda Priddy',
    age: 48,
    differencesDaysAgo: 138,
    roles: ['instructor', 'safety-officer'],
    models: [
      { model: 'sprig', daysAgo: 1500 },
      { model: 'wicket', daysAgo: 1450 },
      { model: 'almanac', daysAgo: 1400 },
    ],
    checkDaysAgo: 33,
    musts: teaching(6),
  }),
  instructor({
    key: 'bram',
    name: 'Bram Oduya',
    age: 34,
    differencesDaysAgo: 141,
    instructor: { ratings: [SINGLE, INSTRUMENT], experienceMonthsAgo: 16 },
    medical: { class: 2, monthsAgo: 9 },
    checkDaysAgo: 260,
    musts: [...teaching(11), { daysAgo: 29, model: 'almanac', what: 'approaches', approaches: 6 }],
  }),
  instructor({
    key: 'lena',
    name: 'Lena Castellane',
    age: 37,
    multiEngine: true,
    instructor: { ratings: [SINGLE, MULTI, INSTRUMENT], experienceMonthsAgo: 12 },
    models: [
      { model: 'gemel', daysAgo: 800 },
      { model: 'sprig', daysAgo: 1000 },
      { model: 'almanac', daysAgo: 900 },
      { model: 'traverse', daysAgo: 850 },
    ],
    checkDaysAgo: 158,
    differencesDaysAgo: 148,
    musts: [...teaching(16), { daysAgo: 22, model: 'gemel', what: 'landings', landings: 3 }],
  }),
  instructor({
    key: 'otis',
    name: 'Otis Farrow',
    age: 67,
    differencesDaysAgo: 135,
    instructor: { ratings: [SINGLE], experienceMonthsAgo: 26 },
    medical: { class: 3, monthsAgo: 10 },
    checkDaysAgo: 96,
    musts: [{ daysAgo: 20, model: 'sprig', what: 'landings', landings: 3 }],
  }),
  instructor({
    key: 'signe',
    name: 'Signe Halvard',
    age: 45,
    models: [
      { model: 'wicket', daysAgo: 2000 },
      { model: 'sprig', daysAgo: 2000 },
    ],
    instrument: false,
    approaches: false,
    checkDaysAgo: 52,
    musts: [{ daysAgo: 8, model: 'wicket', what: 'landings', landings: 5 }],
  }),
];

const officer = (fields: Pick<Story, 'key' | 'name' | 'age' | 'roles'> & Partial<Story>): Story => ({
  joinedMonthsAgo: 110,
  level: 'private',
  certificateMonthsAgo: 150,
  medical: { class: 3, monthsAgo: 8 },
  reviewMonthsAgo: 10,
  checkDaysAgo: 140,
  models: [
    { model: 'sprig', daysAgo: 1700 },
    { model: 'almanac', daysAgo: 1200 },
  ],
  rate: 1.5,
  trips: true,
  musts: [{ daysAgo: 17, model: 'sprig', what: 'landings', landings: 3 }],
  ...fields,
});

export const OFFICERS: readonly Story[] = [
  officer({
    key: 'marta',
    name: 'Marta Ellinghaus',
    age: 52,
    differencesDaysAgo: 112,
    roles: ['administrator'],
  }),
  officer({
    key: 'desmond',
    name: 'Desmond Achterberg',
    age: 59,
    differencesDaysAgo: 108,
    roles: ['safety-officer'],
    instrument: true,
    approaches: true,
    checkDaysAgo: 215,
  }),
  officer({
    key: 'gus',
    name: 'Gus Fennimore',
    age: 63,
    differencesDaysAgo: 117,
    roles: ['maintenance-coordinator'],
    medical: undefined,
    basicMed: { examMonthsAgo: 20, courseMonthsAgo: 8 },
    checkDaysAgo: 61,
  }),
  officer({
    key: 'thea',
    name: 'Thea Brandvold',
    age: 44,
    differencesDaysAgo: 121,
    roles: ['maintenance-coordinator'],
    level: 'commercial',
    instrument: true,
    medical: { class: 2, monthsAgo: 5 },
    checkDaysAgo: 250,
  }),
];
