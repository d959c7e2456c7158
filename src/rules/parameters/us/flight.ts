import { defineParameter, type Parameter } from '../parameter.js';

const minutes = (id: string, title: string, value: number, reference: string): Parameter<number> =>
  defineParameter({
    id: `us.fuel.${id}`,
    title,
    unit: 'minutes',
    values: [{ from: null, value, reference }],
    checkedOn: '2026-11-25',
    status: 'seen',
    recheckAfterMonths: 12,
  });

/** 14 CFR 91.151 and 91.167(a): minutes of fuel that must be left, at normal cruise. */
export const FUEL_RESERVE: readonly Parameter[] = [
  minutes('vfr-day-reserve', 'Fuel reserve of an airplane, VFR by day', 30, '14 CFR 91.151(a)(1)'),
  minutes('vfr-night-reserve', 'Fuel reserve of an airplane, VFR by night', 45, '14 CFR 91.151(a)(2)'),
  minutes('vfr-rotorcraft-reserve', 'Fuel reserve of a rotorcraft, VFR', 20, '14 CFR 91.151(b)'),
  minutes('ifr-reserve', 'Fuel reserve of an airplane, IFR', 45, '14 CFR 91.167(a)(3)'),
  minutes('ifr-helicopter-reserve', 'Fuel reserve of a helicopter, IFR', 30, '14 CFR 91.167(a)(3)'),
];

/** 14 CFR 61.1(b): when a flight of an airplane counts as cross-country experience. */
export const CROSS_COUNTRY_EXPERIENCE: readonly Parameter[] = [
  defineParameter({
    id: 'us.cross-country.experience-nm',
    title: 'A landing farther than this from the airfield of departure makes cross-country time',
    unit: 'nm',
    values: [{ from: null, value: 50, reference: '14 CFR 61.1(b), cross-country time (ii)' }],
    checkedOn: '2026-11-25',
    status: 'from memory',
    recheckAfterMonths: 12,
  }),
];

/** 14 CFR 91.167(b)(2)(i): when an airplane needs no alternate. */
export const ALTERNATE: readonly Parameter[] = [
  defineParameter({
    id: 'us.alternate.ceiling',
    title: 'Ceiling forecast at the destination from which no alternate is needed',
    unit: 'ft',
    values: [{ from: null, value: 2000, reference: '14 CFR 91.167(b)(2)(i)' }],
    checkedOn: '2026-11-25',
    status: 'seen',
    recheckAfterMonths: 12,
  }),
  defineParameter({
    id: 'us.alternate.visibility',
    title: 'Visibility forecast at the destination from which no alternate is needed',
    unit: 'sm',
    values: [{ from: null, value: 3, reference: '14 CFR 91.167(b)(2)(i)' }],
    checkedOn: '2026-11-25',
    status: 'seen',
    recheckAfterMonths: 12,
  }),
  defineParameter({
    id: 'us.alternate.window',
    title: 'Hours before and after arrival that the forecast must cover',
    unit: 'hours',
    values: [{ from: null, value: 1, reference: '14 CFR 91.167(b)(2)(i)' }],
    checkedOn: '2026-11-25',
    status: 'seen',
    recheckAfterMonths: 12,
  }),
];
