/** Members made for a purpose: each shows one thing, and the table printed at the start names it (tries.ts). */
import type { Story } from './story.js';

/**
 * A private pilot in good order, but for what a story changes. `landed`: days since the last landings in the trainer, unless the story tells its own flights.
 */
export const pilot = ({
  landed = 15,
  ...fields
}: Pick<Story, 'key' | 'name' | 'age'> & Partial<Story> & { landed?: number }): Story => ({
  joinedMonthsAgo: 60,
  level: 'private',
  certificateMonthsAgo: 55,
  medical: { class: 3, monthsAgo: 9 },
  reviewMonthsAgo: 9,
  checkDaysAgo: 150,
  models: [{ model: 'sprig', daysAgo: 1100 }],
  rate: 2,
  trips: true,
  musts: [{ daysAgo: landed, model: 'sprig', what: 'landings', landings: 4 }],
  ...fields,
});

export const PILOTS: readonly Story[] = [
  pilot({
    key: 'ada',
    name: 'Ada Quillon',
    age: 29,
    landed: 16,
    level: 'recreational',
    nearHome: true,
    trips: false,
    checkDaysAgo: 44,
  }),
  pilot({
    key: 'henrik',
    name: 'Henrik Vale',
    age: 38,
    models: [
      { model: 'sprig', daysAgo: 1000 },
      { model: 'almanac', daysAgo: 800 },
    ],
    differencesDaysAgo: 95,
    checkDaysAgo: 88,
    musts: [
      { daysAgo: 15, model: 'sprig', what: 'landings', landings: 4 },
      { daysAgo: 22, model: 'almanac', what: 'landings', landings: 3 },
    ],
  }),
  pilot({
    key: 'corinne',
    name: 'Corinne Hatch',
    age: 46,
    quietDays: 100,
    models: [
      { model: 'sprig', daysAgo: 1100 },
      { model: 'almanac', daysAgo: 1000 },
    ],
    differencesDaysAgo: 130,
    checkDaysAgo: 190,
    musts: [{ daysAgo: 100, model: 'sprig', what: 'landings', landings: 3 }],
  }),
  pilot({
    key: 'luis',
    name: 'Luis Amaya',
    age: 31,
    night: true,
    models: [
      { model: 'almanac', daysAgo: 700 },
      { model: 'sprig', daysAgo: 900 },
    ],
    differencesDaysAgo: 101,
    checkDaysAgo: 60,
    musts: [
      { daysAgo: 19, model: 'almanac', what: 'night', landings: 4 },
      { daysAgo: 26, model: 'sprig', what: 'landings', landings: 3 },
    ],
  }),
  pilot({
    key: 'yusuf',
    name: 'Yusuf Brandt',
    age: 57,
    landed: 14,
    medical: { class: 3, monthsAgo: 'runs-out-soon' },
    checkDaysAgo: 115,
  }),
  pilot({ key: 'hana', name: 'Hana Lindqvist', age: 35, landed: 17, reviewMonthsAgo: 23, checkDaysAgo: 176 }),
  pilot({
    key: 'greta',
    name: 'Greta Solano',
    age: 50,
    reviewMonthsAgo: 27,
    checkDaysAgo: 230,
    musts: [{ daysAgo: 21, model: 'sprig', what: 'landings', landings: 3, with: 'yolanda' }],
  }),
  pilot({
    key: 'clive',
    name: 'Clive Dunmore',
    age: 42,
    landed: 51,
    standing: { state: 'arrears', daysAgo: 47 },
    checkDaysAgo: 99,
  }),
  pilot({
    key: 'rex',
    name: 'Rex Tolliver',
    age: 27,
    landed: 19,
    standing: { state: 'suspended', daysAgo: 12 },
    checkDaysAgo: 132,
  }),
  pilot({
    key: 'nadia',
    name: 'Nadia Field',
    age: 30,
    landed: 20,
    medical: { class: 3, monthsAgo: 1, unverified: true },
  }),
  pilot({
    key: 'felix',
    name: 'Felix Morrow',
    age: 61,
    landed: 22,
    membershipEndsInDays: 21,
    checkDaysAgo: 205,
  }),
  pilot({
    key: 'walter',
    name: 'Walter Ingram',
    age: 68,
    landed: 23,
    medical: undefined,
    basicMed: { examMonthsAgo: 30, courseMonthsAgo: 14 },
    checkDaysAgo: 71,
  }),
  pilot({
    key: 'dolores',
    name: 'Dolores Pike',
    age: 72,
    landed: 24,
    medical: undefined,
    basicMed: { examMonthsAgo: 20, courseMonthsAgo: 27 },
    checkDaysAgo: 143,
  }),
  pilot({
    key: 'sven',
    name: 'Sven Abelard',
    age: 49,
    models: [
      { model: 'wicket', daysAgo: 1500 },
      { model: 'sprig', daysAgo: 1500 },
    ],
    checkDaysAgo: 82,
    musts: [
      { daysAgo: 13, model: 'wicket', what: 'landings', landings: 4 },
      { daysAgo: 27, model: 'sprig', what: 'landings', landings: 3 },
    ],
  }),
  pilot({
    key: 'olga',
    name: 'Olga Penhallow',
    age: 54,
    landed: 28,
    models: [
      { model: 'almanac', daysAgo: 1100 },
      { model: 'sprig', daysAgo: 1200 },
    ],
    checkDaysAgo: 125,
  }),
];
