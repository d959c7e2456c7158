/** Distances held against runways, with a factor: what is too long, what has to be looked after, what would help. */
import type { Parameters } from '../../../engine/parameters.js';
import type { Moment } from '../../../engine/moment.js';
import type { Remedy } from '../../../engine/remedy.js';
import type { FactView } from '../../../engine/rule.js';
import { need, UnknownFact } from '../../../engine/unknown.js';
import type { FactKey } from '../../../facts/keys.js';
import { keptUsGal, KEPT_FUEL, lighterLoads, surely } from '../loading/lighter.js';
import { FUEL_WEIGHTS, lbPerUsGal, toldLoading } from '../loading/loaded.js';
import { freshWeather } from '../shared/fresh-weather.js';
import { useRunways, withChoices } from '../../choose-runway.js';
import { DOES, workFields, type FieldWork, type ToFly, type WorkedManoeuvre } from './field-work.js';

/** What whoever works distances out must declare. */
export const FIELD_READS = [
  'aircraft.type',
  'aircraft.loading',
  'aircraft.performance',
] as const satisfies FactKey[];
export const FIELD_PARAMETERS = [...FUEL_WEIGHTS, 'club.runway.weather-hours'] as const;
export const FIELD_REMEDY_PARAMETERS = KEPT_FUEL;
/** The same in every rule about runways, so that it is told once. */
export const FIND_DISTANCES =
  'Find the lengths of the runways and work out take-off and landing distances from the flight manual.';

type View = FactView<(typeof FIELD_READS)[number]>;

/** All that the distances hang on. Throws UnknownFact where something is missing. */
export function toFly(f: View, moment: Moment, p: Parameters): ToFly {
  const type = f.get('aircraft.type');
  const performance = f.get('aircraft.performance');
  const known = f.peek('aircraft.loading');
  const weather = freshWeather(f.flight.weather, moment, p.number('club.runway.weather-hours'));
  return {
    ...{ type, performance, flight: f.flight },
    loading: toldLoading(f.flight),
    emptyLb: need(type.emptyWeightLb, 'aircraft.type', 'the empty weight is not on record'),
    lbPerUsGal: lbPerUsGal(type, known.known ? known.value : null, p),
    weather: need(weather, 'flight.weather', 'no recent weather is declared for the flight'),
  };
}

/** Feet a manoeuvre asks for, whole and rounded up. */
export const neededFt = (distanceFt: number, factor: number): number => Math.ceil(distanceFt * factor - 1e-6);

/** The manoeuvre whose runway is too short by most; null when all fit. */
export function tooLong(work: FieldWork, factor: number): WorkedManoeuvre | null {
  const over = (one: WorkedManoeuvre): number => neededFt(one.answer.over50Ft, factor) - one.runway.lengthFt;
  return work.worked.filter((one) => over(one) > 0).sort((a, b) => over(b) - over(a))[0] ?? null;
}

/** The manoeuvre that uses most of its runway. Throws UnknownFact where one could not be worked out, or none is there. */
export function tightest(work: FieldWork): WorkedManoeuvre {
  const [because] = work.unknown;
  if (because !== undefined) throw new UnknownFact('aircraft.performance', because);
  const share = (one: WorkedManoeuvre): number => one.answer.over50Ft / one.runway.lengthFt;
  const [most] = [...work.worked].sort((a, b) => share(b) - share(a));
  return need(most, 'flight.route', 'the route has no take-off and landing');
}

/** What the sentences of a manoeuvre are filled with. */
export const said = (one: WorkedManoeuvre): Record<string, string | number> => ({
  what: DOES[one.does],
  airfield: one.airfield.code,
  runway: one.runway.designator,
  distance: neededFt(one.answer.over50Ft, 1),
  length: one.runway.lengthFt,
});

/** What was taken for granted, to be looked after before departure. */
export function conditionsOf(work: FieldWork, factor: number): string[] {
  const all = work.worked.flatMap((one) => {
    const runway = `runway ${one.runway.designator} at ${one.airfield.code}`;
    const wetFits = one.ifWet?.found === true && neededFt(one.ifWet.over50Ft, factor) <= one.runway.lengthFt;
    return [
      ...(one.ifWet === null || wetFits ? [] : [`Make sure that ${runway} is dry.`]),
      ...(one.slopeKnown ? [] : [`Find the slope of ${runway}, and allow for it.`]),
      ...(one.away
        ? [`Check wind and temperature at ${one.airfield.code}: distances there are for still air.`]
        : []),
    ];
  });
  return [...new Set(all)];
}

/** What would help where a manoeuvre is too long: another runway, or less weight. Each is tried before it is offered. */
export function runwayRemedies(
  { f, of, p, factor }: { f: View; of: ToFly; p: Parameters; factor: number },
  short: WorkedManoeuvre,
): Remedy[] {
  const fits = (changed: ToFly): boolean =>
    surely(() => {
      const work = workFields(changed);
      return work.unknown.length === 0 && tooLong(work, factor) === null;
    });
  const known = f.peek('aircraft.loading');
  const lighter = lighterLoads({
    ...{ flight: f.flight, crew: f.crew, loading: of.loading },
    sheet: known.known ? known.value : null,
    keptUsGal: keptUsGal(of.type, f.flight, p),
    fits: ({ loading }) => fits({ ...of, loading }),
  });
  return [...otherRunways(of, short, fits), ...lighter];
}

/** The runway that is too short is tried like the others, and does not help. */
function otherRunways(of: ToFly, { airfield }: WorkedManoeuvre, fits: (changed: ToFly) => boolean): Remedy[] {
  const { flight } = of;
  return airfield.runways.flatMap(({ designator }): Remedy[] => {
    const instead = [{ airfield: airfield.code, runway: designator }];
    if (!fits({ ...of, flight: { ...flight, runways: withChoices(flight.runways, instead) } })) return [];
    return [useRunways(flight.runways, instead)];
  });
}
