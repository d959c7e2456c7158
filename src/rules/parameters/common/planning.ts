/**
 * Figures that no country's law gives: margins and weights for planning. Ids keep the names under which decisions were
 * stored before other packs read them.
 */
import { defineParameter, type Parameter } from '../parameter.js';

const planning = (
  id: string,
  title: string,
  unit: Parameter['unit'],
  value: number,
  reference: string,
  recheckAfterMonths: number,
): Parameter =>
  defineParameter({
    id,
    title,
    unit,
    values: [{ from: null, value, reference }],
    checkedOn: '2026-11-25',
    status: 'common practice, no source',
    recheckAfterMonths,
  });

/** When the start of a night is told to a pilot who must be down before it. */
export const NIGHT: readonly Parameter[] = [
  planning(
    'us.night.told-within-hours',
    'A flight that ends within so many hours of a night closed to it is told when the night begins',
    'hours',
    3,
    'a margin for delays; common practice, no source',
    24,
  ),
];

/** What fuel weighs. */
export const FUEL_WEIGHT: readonly Parameter[] = [
  planning(
    'us.fuel.avgas-lb-per-us-gal',
    'Weight of one US gallon of aviation gasoline',
    'lb',
    6,
    'usual planning figure',
    12,
  ),
  planning(
    'us.fuel.jet-lb-per-us-gal',
    'Weight of one US gallon of jet fuel',
    'lb',
    6.8,
    'usual planning figure',
    12,
  ),
];
