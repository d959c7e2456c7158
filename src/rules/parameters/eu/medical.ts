import { lawValue } from '../law-value.js';
import type { Parameter } from '../parameter.js';

const figure = (id: string, title: string, unit: 'months' | 'years', value: number, reference: string) =>
  lawValue(`eu.medical.${id}`, title, unit, value, reference);

/** Part-MED, MED.A.045(a)(1)-(3): how long class 1 and class 2 medical certificates last, by age. */
export const EU_MEDICAL: readonly Parameter[] = [
  figure('class-2-young-months', 'Class 2, examined young: validity', 'months', 60, 'MED.A.045(a)(3)(i)'),
  figure(
    'class-2-young-until',
    'Age at which the first class 2 validity ends',
    'years',
    40,
    'MED.A.045(a)(3)(i)',
  ),
  figure(
    'class-2-young-cap',
    'Age at which a class 2 certificate issued young ends',
    'years',
    42,
    'MED.A.045(a)(3)(i)',
  ),
  figure(
    'class-2-middle-months',
    'Class 2, examined in middle age: validity',
    'months',
    24,
    'MED.A.045(a)(3)(ii)',
  ),
  figure(
    'class-2-middle-until',
    'Age at which the second class 2 validity ends',
    'years',
    50,
    'MED.A.045(a)(3)(ii)',
  ),
  figure(
    'class-2-middle-cap',
    'Age at which a class 2 certificate issued in middle age ends',
    'years',
    51,
    'MED.A.045(a)(3)(ii)',
  ),
  figure('class-2-late-months', 'Class 2, examined later: validity', 'months', 12, 'MED.A.045(a)(3)(iii)'),
  figure('class-1-months', 'Class 1: validity', 'months', 12, 'MED.A.045(a)(1)'),
  figure('class-1-short-months', 'Class 1, shortened by age: validity', 'months', 6, 'MED.A.045(a)(2)'),
  figure(
    'class-1-short-from',
    'Age from which class 1 is shortened for single-pilot transport of passengers',
    'years',
    40,
    'MED.A.045(a)(2)(i)',
  ),
];
