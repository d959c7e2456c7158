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
    id: 'us.registration.ends-since',
    title: 'Certificates issued from this date have an end date',
    unit: 'date',
    values: [{ from: null, value: '2010-10-01', reference: '14 CFR 47.40; 75 FR 41968' }],
    checkedOn: '2026-11-25',
    status: 'seen',
    recheckAfterMonths: 12,
  }),
  defineParameter({
    id: 'us.registration.re-registration',
    title: 'Month of issue of a certificate from before that date, and the day it ended unless re-registered',
    unit: 'text',
    values: [
      {
        from: null,
        value:
          '01 2013-09-30, 02 2013-12-31, 03 2011-03-31, 04 2011-06-30, 05 2011-09-30, 06 2011-12-31, ' +
          '07 2012-03-31, 08 2012-06-30, 09 2012-09-30, 10 2012-12-31, 11 2013-03-31, 12 2013-06-30',
        reference: '14 CFR 47.40(a)(1) as of 2010; 75 FR 41968',
      },
    ],
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
