import type { Figure, Limits, LimitsSet, Side } from './types.js';

interface FigureWords {
  name: Figure;
  label: string;
  unit: string;
  bound: 'at most' | 'at least';
  min: number;
  max: number;
  step: string;
}

const figure = (
  name: Figure,
  label: string,
  unit: string,
  bound: FigureWords['bound'],
  max: number,
  more: Partial<FigureWords> = {},
): FigureWords => ({ ...{ name, label, unit, bound, max, min: 0, step: '1' }, ...more });

/** The figures in the order of the form. */
export const FIGURES: readonly FigureWords[] = [
  figure('windKt', 'Wind, with gusts', 'kt', 'at most', 80),
  figure('crosswindKt', 'Crosswind', 'kt', 'at most', 80),
  figure('gustSpreadKt', 'Gusts over the wind', 'kt', 'at most', 80),
  figure('ceilingDayFtAgl', 'Ceiling by day', 'ft', 'at least', 20_000),
  figure('ceilingNightFtAgl', 'Ceiling at night', 'ft', 'at least', 20_000),
  figure('visibilityDaySm', 'Visibility by day', 'SM', 'at least', 50, { step: '0.5' }),
  figure('visibilityNightSm', 'Visibility at night', 'SM', 'at least', 50, { step: '0.5' }),
  figure('runwayFt', 'Runway', 'ft', 'at least', 20_000, { min: 100 }),
];

export const labelOf = (name: keyof Limits): string =>
  FIGURES.find((one) => one.name === name)?.label ?? 'Flying at night';

/** '12 kt', 'none'; empty where nothing is set. */
export function valueSays(name: keyof Limits, value: number | boolean | null): string {
  if (value === null) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'none';
  const { bound, unit } = FIGURES.find((one) => one.name === name)!;
  return `${bound} ${value} ${unit}`;
}

/** The set that a new one begins with: the one that holds last. */
export const newest = ({ inForce, toCome }: Side): LimitsSet | null => toCome.at(-1) ?? inForce;

/** A set as the API takes it. */
export const limitsOf = (of: Limits | null): Limits => ({
  ...(Object.fromEntries(FIGURES.map(({ name }) => [name, of?.[name] ?? null])) as Record<
    Figure,
    number | null
  >),
  night: of?.night ?? null,
});
