import { bestRunway, type RunwayWind } from '../../../air/wind.js';
import type { Remedy } from '../../../engine/remedy.js';
import { defineRule } from '../../../engine/rule.js';
import { need, UnknownFact } from '../../../engine/unknown.js';
import type { AirfieldFact, FlightFacts } from '../../../facts/flight.js';
import { freshWeather } from '../../common/shared/fresh-weather.js';
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
  parameters: [ABOVE_KT, CONDITION_INSTRUCTORS_TOO, WEATHER_HOURS],
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
          'Gusts count, and a wind without a direction counts wholly across. The weather told is that of the field of departure; elsewhere the wind is left as a condition.',
      },
      judge(f, moment, p, take) {
        const above = p.number(ABOVE_KT);
        if (above <= 0) return take('not-asked');
        if (f.crew.instruction && !p.flag(CONDITION_INSTRUCTORS_TOO)) return take('with-instructor');
        if (!usesRunways(f.get('aircraft.type'))) return take('no-runway-needed');
        const signed = standingFor('high-crosswind', f.peek('pic.checkouts'), moment);
        if (signed) return take('signed', ...signedBy('high-crosswind', signed));
        f.get('pic.checkouts');
        const { route } = f.flight;
        const home = need(route[0], 'flight.route', 'the flight names no airfield');
        const lacks = (because: string): UnknownFact =>
          new UnknownFact('flight.weather', because, findWind(home.code, above));
        const weather = freshWeather(f.flight.weather, moment, p.number(WEATHER_HOURS));
        if (!weather || weather.windKt === null) throw lacks('no recent wind is declared for the flight');
        const across = (airfield: AirfieldFact): RunwayWind | null =>
          bestRunway(airfield.runways, {
            fromDegTrue: weather.windFromDeg,
            kt: weather.windKt!,
            gustKt: weather.gustKt,
          });
        const used = across(withChosen(home, f.flight));
        if (!used) throw lacks(`no runway to be used at ${home.code} is on record`);
        const tooMuch = (one: RunwayWind): boolean => Math.abs(one.crosswindKt) > above + ROUNDING_KT;
        const values = {
          runway: used.runway.designator,
          airfield: home.code,
          crosswind: Math.abs(used.crosswindKt).toFixed(1),
          above,
        };
        if (!tooMuch(used)) {
          const away = [...new Set(route.map(({ code }) => code))].filter((code) => code !== home.code);
          return take('within', values, { conditions: away.map((code) => findWind(code, above)) });
        }
        const better = across(home);
        return take('not-signed', values, {
          remedies: () => [
            ...(better && !tooMuch(better) ? [useRunway(f.flight, home, better)] : []),
            flyConditionCheckout('high-crosswind', moment),
          ],
        });
      },
    },
  ],
});

const findWind = (airfield: string, above: number): string =>
  `Find the wind across the runway at ${airfield}: above ${above} kt a crosswind checkout is needed, and none is on record.`;

/** The airfield with only the runway that was chosen, where one was. */
function withChosen(airfield: AirfieldFact, { runways }: Pick<FlightFacts, 'runways'>): AirfieldFact {
  const chosen = runways?.find((one) => one.airfield === airfield.code)?.runway;
  if (chosen === undefined) return airfield;
  return { ...airfield, runways: airfield.runways.filter(({ designator }) => designator === chosen) };
}

function useRunway(
  { runways }: Pick<FlightFacts, 'runways'>,
  { code }: AirfieldFact,
  { runway }: RunwayWind,
): Remedy {
  const others = (runways ?? []).filter(({ airfield }) => airfield !== code);
  return {
    act: 'choose-runway',
    title: `Use runway ${runway.designator} at ${code}.`,
    by: 'member',
    effects: [
      { op: 'flight', fields: { runways: [...others, { airfield: code, runway: runway.designator }] } },
    ],
  };
}
