import type { VfrFigures } from '../../air/vfr-minima.js';
import { defineParameter, type Parameter } from '../parameter.js';

type Figure = keyof VfrFigures;
const REFERENCE = '14 CFR 91.155(a)';

const figure = (id: string, title: string, unit: 'sm' | 'ft', value: number): Parameter<number> =>
  defineParameter({
    id: `us.vfr-minima.${id}`,
    title,
    unit,
    values: [{ from: null, value, reference: REFERENCE }],
    checkedOn: '2026-11-25',
    status: 'seen',
    recheckAfterMonths: 12,
  });

/** 14 CFR 91.155(a): the figures of the table of basic VFR weather minima. */
export const VFR_FIGURES: Record<Figure, Parameter<number>> = {
  standardVisibilitySm: figure(
    'visibility',
    'Flight visibility in controlled airspace, and in class G by night',
    'sm',
    3,
  ),
  highVisibilitySm: figure('high-visibility', 'Flight visibility at height', 'sm', 5),
  classGDayVisibilitySm: figure('class-g-day-visibility', 'Flight visibility in class G by day', 'sm', 1),
  belowFt: figure('below', 'Distance below cloud', 'ft', 500),
  aboveFt: figure('above', 'Distance above cloud', 'ft', 1000),
  horizontalFt: figure('horizontal', 'Horizontal distance from cloud', 'ft', 2000),
  highBelowFt: figure('high-below', 'Distance below cloud at height', 'ft', 1000),
  highAboveFt: figure('high-above', 'Distance above cloud at height', 'ft', 1000),
  highHorizontalSm: figure('high-horizontal', 'Horizontal distance from cloud at height', 'sm', 1),
  classGLowFtAgl: figure(
    'class-g-low',
    'Height above the surface up to which class G asks least',
    'ft',
    1200,
  ),
  highFromFtMsl: figure(
    'high-from',
    'Altitude above sea level from which the minima at height hold',
    'ft',
    10_000,
  ),
};

/** The ids of the table's parameters, for a rule's header. */
export const VFR_FIGURE_IDS: readonly string[] = Object.values(VFR_FIGURES).map((parameter) => parameter.id);

/** The table's figures as `read` gives them by parameter id. */
export function vfrFigures(read: (id: string) => number): VfrFigures {
  const entries = Object.entries(VFR_FIGURES).map(([name, parameter]) => [name, read(parameter.id)]);
  return Object.fromEntries(entries) as VfrFigures;
}

/** Everything the weather rules read. */
export const WEATHER: readonly Parameter[] = [
  ...Object.values(VFR_FIGURES),
  defineParameter({
    id: 'us.vfr-minima.surface-ceiling',
    title: 'Ceiling below which there is no VFR beneath it in controlled airspace designated to the surface',
    unit: 'ft',
    values: [{ from: null, value: 1000, reference: '14 CFR 91.155(c)' }],
    checkedOn: '2026-11-25',
    status: 'from memory',
    recheckAfterMonths: 12,
  }),
  defineParameter({
    id: 'us.weather.observation-hours',
    title: 'Hours for which a declared observation still says something about a departure',
    unit: 'hours',
    values: [{ from: null, value: 2, reference: 'hourly observations; common practice, no source' }],
    checkedOn: '2026-11-25',
    status: 'common practice, no source',
    recheckAfterMonths: 24,
  }),
  defineParameter({
    id: 'us.class-a.floor',
    title: 'Altitude above sea level from which airspace is class A',
    unit: 'ft',
    values: [{ from: null, value: 18_000, reference: '14 CFR 71.33, 91.135' }],
    checkedOn: '2026-11-25',
    status: 'from memory',
    recheckAfterMonths: 12,
  }),
];
