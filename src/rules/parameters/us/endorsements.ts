import { lawValue } from '../law-value.js';

/** 14 CFR 61.31(e) to (i): from when additional training is needed, and who was flying before. */
export const ADDITIONAL_TRAINING = [
  lawValue(
    'us.additional-training.power-hp',
    'Engine power above which an airplane is high-performance',
    'hp',
    200,
    '14 CFR 61.31(f)(1)',
  ),
  lawValue(
    'us.additional-training.altitude-ft',
    'Altitude above which a pressurised aircraft needs training',
    'ft',
    25_000,
    '14 CFR 61.31(g)(1)',
  ),
  lawValue(
    'us.additional-training.complex-before',
    'Pilots in command of a complex airplane before this date need no endorsement',
    'date',
    '1997-08-04',
    '14 CFR 61.31(e)(2)',
  ),
  lawValue(
    'us.additional-training.high-performance-before',
    'Pilots in command of a high-performance airplane before this date need no endorsement',
    'date',
    '1997-08-04',
    '14 CFR 61.31(f)(2)',
  ),
  lawValue(
    'us.additional-training.high-altitude-before',
    'Pilots in command of a pressurised aircraft before this date need no endorsement',
    'date',
    '1991-04-15',
    '14 CFR 61.31(g)(3)(i)',
    'from memory',
  ),
  lawValue(
    'us.additional-training.tailwheel-before',
    'Pilots in command of a tailwheel airplane before this date need no endorsement',
    'date',
    '1991-04-15',
    '14 CFR 61.31(i)(2)',
    'from memory',
  ),
];
