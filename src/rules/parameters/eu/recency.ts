import { defineParameter, type Parameter } from '../parameter.js';

const CHECKED = { checkedOn: '2026-11-25', status: 'seen', recheckAfterMonths: 12 } as const;

/** Part-FCL, FCL.060(b) (Regulation (EU) No 1178/2011): how many, how lately. The text of 2011 was seen. */
export const EU_PASSENGER_RECENCY: readonly Parameter[] = [
  defineParameter({
    id: 'eu.passenger-recency.days',
    title: 'Days in which take-offs, approaches and landings count towards carrying passengers',
    unit: 'days',
    values: [{ from: null, value: 90, reference: 'FCL.060(b)(1), (2)' }],
    ...CHECKED,
  }),
  defineParameter({
    id: 'eu.passenger-recency.count',
    title: 'Take-offs, approaches and landings needed to carry passengers',
    unit: 'count',
    values: [{ from: null, value: 3, reference: 'FCL.060(b)(1)' }],
    ...CHECKED,
  }),
  defineParameter({
    id: 'eu.passenger-recency.night-count',
    title: 'Of these, by night, to carry passengers by night without an instrument rating',
    unit: 'count',
    values: [{ from: null, value: 1, reference: 'FCL.060(b)(2)(i)' }],
    ...CHECKED,
  }),
];
