/** Students made for a purpose. */
import type { Story } from './story.js';

const learner = (fields: Pick<Story, 'key' | 'name' | 'age'> & Partial<Story>): Story => ({
  joinedMonthsAgo: 9,
  level: 'student',
  certificateMonthsAgo: 8,
  medical: { class: 3, monthsAgo: 8 },
  models: [],
  rate: 5,
  ...fields,
});

export const STUDENTS: readonly Story[] = [
  learner({ key: 'tobias', name: 'Tobias Wren', age: 19, joinedMonthsAgo: 4, certificateMonthsAgo: 3 }),
  learner({
    key: 'ines',
    name: 'Ines Caldera',
    age: 24,
    soloDaysAgo: 31,
    musts: [{ daysAgo: 6, model: 'sprig', what: 'landings', landings: 6 }],
  }),
  learner({
    key: 'pavel',
    name: 'Pavel Ruiz-Ott',
    age: 33,
    soloDaysAgo: 124,
    musts: [{ daysAgo: 10, model: 'sprig', what: 'landings', landings: 5, with: 'bram' }],
  }),
];
