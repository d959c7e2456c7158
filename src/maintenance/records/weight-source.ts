import type { WeighingSource } from '../../fleet/weighings/weighing.entity.js';

/** On paper there are weighings and computations; that of an equipment change is a computation. */
export const currentSource = (source: WeighingSource): 'weighing' | 'computed' =>
  source === 'weighing' ? 'weighing' : 'computed';
