import { defineParameter, type Parameter } from '../parameter.js';

const CHECKED = { checkedOn: '2026-11-25', status: 'seen', recheckAfterMonths: 12 } as const;

/** Canadian Aviation Regulations (SOR/96-433), section 401.05. */
export const CA_RECENCY: readonly Parameter[] = [
  defineParameter({
    id: 'ca.passenger-recency.months',
    title: 'Months in which take-offs and landings count towards carrying passengers',
    unit: 'months',
    values: [{ from: null, value: 6, reference: 'CARs 401.05(2)(b)' }],
    ...CHECKED,
  }),
  defineParameter({
    id: 'ca.passenger-recency.count',
    title: 'Take-offs, and landings, needed to carry passengers',
    unit: 'count',
    values: [{ from: null, value: 5, reference: 'CARs 401.05(2)(b)(i)' }],
    ...CHECKED,
  }),
  defineParameter({
    id: 'ca.recent-command.years',
    title: 'Years in which a flight as pilot in command or co-pilot keeps the privileges',
    unit: 'years',
    values: [{ from: null, value: 5, reference: 'CARs 401.05(1)(a)' }],
    ...CHECKED,
  }),
  defineParameter({
    id: 'ca.recurrent-training.months',
    title: 'Months for which recurrent training lasts',
    unit: 'months',
    values: [{ from: null, value: 24, reference: 'CARs 401.05(2)(a)' }],
    ...CHECKED,
  }),
];

/** Regaining the privileges after five years, CARs 401.05(1)(b). */
export const CA_REGAINING: readonly Parameter[] = [
  defineParameter({
    id: 'ca.recent-command.regain-months',
    title: 'Months for which a flight review and an examination regain the privileges',
    unit: 'months',
    values: [{ from: null, value: 12, reference: 'CARs 401.05(1)(b)' }],
    ...CHECKED,
  }),
];
