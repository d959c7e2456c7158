import { defineParameter } from '../parameter.js';

/** 14 CFR 47.40: how long a Certificate of Aircraft Registration lasts. */
export const REGISTRATION = [
  defineParameter({
    id: 'us.registration.years',
    title: 'Years a registration certificate lasts, to the end of the month of issue',
    unit: 'years',
    values: [
      { from: null, value: 3, reference: '14 CFR 47.40 before 87 FR 71210' },
      { from: '2023-01-23', value: 7, reference: '14 CFR 47.40; 87 FR 71210, effective 2023-01-23' },
    ],
    checkedOn: '2026-11-25',
    status: 'seen',
    recheckAfterMonths: 12,
  }),
  defineParameter({
    id: 'us.registration.years-before-extension',
    title: 'Years a registration certificate issued before the extension had when none is printed on it',
    unit: 'years',
    values: [{ from: null, value: 3, reference: '14 CFR 47.40 before 87 FR 71210' }],
    checkedOn: '2026-11-25',
    status: 'seen',
    recheckAfterMonths: 12,
  }),
  defineParameter({
    id: 'us.registration.extended-on',
    title: 'Certificates in force on this date were extended whatever date is printed on them',
    unit: 'date',
    values: [{ from: null, value: '2023-01-23', reference: '14 CFR 47.40; 87 FR 71210' }],
    checkedOn: '2026-11-25',
    status: 'seen',
    recheckAfterMonths: 12,
  }),
];
