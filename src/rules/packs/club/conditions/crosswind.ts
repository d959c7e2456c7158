import { bestRunway, type RunwayWind, type Wind } from '../../../air/wind.js';
import type { Remedy } from '../../../engine/remedy.js';
import { defineRule } from '../../../engine/rule.js';
import { need, UnknownFact } from '../../../engine/unknown.js';
import type { FlightFacts, RunwayFact } from '../../../facts/flight.js';
import { SPEAKS } from '../../../parameters/club/weather.js';
import { runwaysToUse, useRunways } from '../../choose-runway.js';
import { openFields, windsOf, type WindsAt } from '../../common/shared/winds.js';
import {
  CONDITION_BRANCHES,
  CONDITION_INSTRUCTORS_TOO,
  flyConditionCheckout,
  signedBy,
  standingFor,
  usesRunways,
} from './condition-sign-off.js';

const ABOVE_KT = 'club.condition-checkout.crosswind-kt';
const WEATHER_HOURS = 'club.runway.weather-hours';
/** Differences below rounding are none. */
const ROUNDING_KT = 1e-9;

/** Club rule: whoever flies with more wind across the runway than the club says has been checked out in crosswind. */
export const crosswindCheckout = defineRule({
  id: 'club.crosswind_checkout',
  title: 'Crosswind checkout',
  weight: 'club',
  binds: 'pilot',
  reads: ['pic.checkouts', 'aircraft.type'],
  parameters: [ABOVE_KT, CONDITION_INSTRUCTORS_TOO, WEATHER_HOURS, ...SPEAKS],
  branches: {
    ...CONDITION_BRANCHES,
    'not-asked': { status: 'not-applicable', says: 'The club asks for no crosswind checkout.' },
    'no-runway-needed': {
      status: 'not-applicable',
      says: 'The aircraft is not held against runways, so no crosswind checkout is needed.',
    },
    within: {
      status: 'met',
      says: 'Runway {runway} at {airfield}: {crosswind} kt across; above {above} kt the club asks for a crosswind checkout.',
    },
    'not-signed': {
      status: 'short',
      says: 'Runway {runway} at {airfield}: {crosswind} kt across, more than {above} kt, and no crosswind checkout that covers the whole flight is on record.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Club handbook, section 3.6',
        status: 'club paper',
        reading:
          'Gusts count, and a wind without a direction counts wholly across. The wind counts at the departure, as told, reported or forecast, and at the arrival, as reported or forecast; what nothing speaks of, and landings on the way, are left as a condition.',
      },
      judge(f, moment, p, take) {
        const above = p.number(ABOVE_KT);
        if (above <= 0) return take('not-asked');
        if (f.crew.instruction && !p.flag(CONDITION_INSTRUCTORS_TOO)) return take('with-instructor');
        if (!usesRunways(f.get('aircraft.type'))) return take('no-runway-needed');
        const signed = standingFor('high-crosswind', f.peek('pic.checkouts'), moment);
        if (signed) return take('signed', ...signedBy('high-crosswind', signed));
        f.get('pic.checkouts');
        const { flight } = f;
        const told = windsOf(flight, moment, p, p.number(WEATHER_HOURS));
        const ends = need(told, 'flight.route', 'the flight names no airfield');
        const used = ends.flatMap((at): Used[] => {
          const across = strongest(runwaysToUse(at.airfield, flight.runways), at.winds);
          return across ? [{ at, across }] : [];
        });
        const short = used.filter(({ across }) => isOver(across, above));
        if (short.length > 0)
          return take('not-signed', wordsOf(most(short), above), {
            remedies: () => [
              ...short.flatMap(({ at }) => betterRunway(flight, at, above)),
              flyConditionCheckout('high-crosswind', moment),
            ],
          });
        const [departure] = ends;
        const home = departure.airfield.code;
        const lacks = (because: string): UnknownFact =>
          new UnknownFact('flight.weather', because, findWind(home, above));
        if (!departure.known) throw lacks('no recent wind is declared for the flight');
        const known = used.filter(({ at }) => at.known);
        if (known[0]?.at !== departure) throw lacks(`no runway to be used at ${home} is on record`);
        const conditions = [
          ...openFields(flight.route, ends, (end) => known.some(({ at }) => at === end)).map((code) =>
            findWind(code, above),
          ),
          ...new Set(ends.flatMap((at) => allowances(flight, at, above))),
        ];
        return take('within', wordsOf(most(known), above), { conditions });
      },
    },
  ],
});

const findWind = (airfield: string, above: number): string =>
  `Find the wind across the runway at ${airfield}: above ${above} kt a crosswind checkout is needed, and none is on record.`;

/** The wind across the runway used at one end of the flight. */
interface Used {
  at: WindsAt;
  across: RunwayWind;
}

const isOver = ({ crosswindKt }: RunwayWind, above: number): boolean =>
  Math.abs(crosswindKt) > above + ROUNDING_KT;

/** Of the winds that may blow the one most across its best runway. */
function strongest(runways: readonly RunwayFact[], winds: readonly Wind[]): RunwayWind | null {
  const found = winds.flatMap((wind) => bestRunway(runways, wind) ?? []);
  return found.sort((a, b) => Math.abs(b.crosswindKt) - Math.abs(a.crosswindKt))[0] ?? null;
}

/** The end with most across; of equals the departure. */
const most = (all: readonly Used[]): Used =>
  all.reduce((worst, one) =>
    Math.abs(one.across.crosswindKt) > Math.abs(worst.across.crosswindKt) + ROUNDING_KT ? one : worst,
  );

const wordsOf = ({ at, across }: Used, above: number) => ({
  ...{ runway: across.runway.designator, airfield: at.where, above },
  crosswind: Math.abs(across.crosswindKt).toFixed(1),
});

/** What may pass through and would be too much across the runway. */
function allowances(
  flight: Pick<FlightFacts, 'runways'>,
  { airfield, passing }: WindsAt,
  above: number,
): string[] {
  return passing.flatMap(({ wind, text }) => {
    const across = strongest(runwaysToUse(airfield, flight.runways), [wind]);
    if (!across || !isOver(across, above)) return [];
    return [
      `Allow at ${airfield.code} for ${Math.abs(across.crosswindKt).toFixed(1)} kt across runway ${across.runway.designator}, for which no crosswind checkout is on record: the forecast says ${text}.`,
    ];
  });
}

/** The runway that lies best to the strongest wind, where it does for all that may blow. */
function betterRunway(
  { runways }: Pick<FlightFacts, 'runways'>,
  { airfield, winds }: WindsAt,
  above: number,
): Remedy[] {
  // Too much was found across a runway of it, so there are some.
  const better = strongest(airfield.runways, winds)!.runway;
  if (isOver(strongest([better], winds)!, above)) return [];
  return [useRunways(runways, [{ airfield: airfield.code, runway: better.designator }])];
}
