/** VFR minima (14 CFR 91.155) and fuel (91.151, 91.167): the functions the rules use, with the figures in force. */
import { alternateRequired, fuelForUsGal, fuelMinutes, hasFuelFor } from '../../../rules/air/fuel.js';
import { vfrMinima } from '../../../rules/air/vfr-minima.js';
import type { AirspaceClass } from '../../../rules/index.js';
import { VFR_FIGURE_IDS, vfrFigures } from '../../../rules/parameters/us/weather.js';
import type { Mapping } from '../mapping.js';
import { Scene } from '../scene.js';
import { flightRulesOf } from './inspections.js';
import { CATEGORY } from './words.js';

const AIRSPACE: Record<string, AirspaceClass> = { A: 'A', B: 'B', C: 'C', D: 'D', E: 'E', G: 'G' };
const ON = '2027-03-01';

const minima: Mapping = {
  rules: ['weather.vfr_minima'],
  map(facts) {
    const scene = new Scene(facts.date('as_of') ?? ON);
    const read = scene.parameters(VFR_FIGURE_IDS);
    const found = vfrMinima(
      {
        airspace: facts.need('airspace', facts.choice('airspace', AIRSPACE)),
        altitudeFtMsl: facts.oneOf(['altitude_msl', 'altitude_ft_msl'], (key) => facts.number(key)) ?? null,
        altitudeFtAgl: facts.oneOf(['altitude_agl', 'altitude_ft_agl'], (key) => facts.number(key)) ?? null,
        night: facts.flag('night') ?? false,
      },
      vfrFigures((id) => read.number(id)),
    );
    const visibility = facts.oneOf(['visibility_sm', 'flight_visibility_sm'], (key) => facts.number(key));
    return {
      vfr_allowed: () => found !== null,
      visibility_sm: () => found?.visibilitySm ?? null,
      clear_of_clouds: () => found?.clearOfClouds ?? null,
      below_ft: () => found?.belowFt ?? null,
      above_ft: () => found?.aboveFt ?? null,
      horizontal_ft: () => found?.horizontalFt ?? null,
      horizontal_sm: () => found?.horizontalSm ?? null,
      allowed: () => found !== null && facts.need('visibility_sm', visibility) >= found.visibilitySm,
    };
  },
};

const FUEL = 'fuel.reserve';

/** The flight is laid where its light is as the entry says, so that the rule itself chooses the reserve. */
const reserve: Mapping = {
  rules: [FUEL],
  map(facts) {
    const night = facts.flag('night') ?? false;
    const rules = flightRulesOf(facts);
    const category =
      facts.oneOf(['aircraft', 'category'], (key) => facts.choice(key, CATEGORY)) ?? 'airplane';
    const enroute = facts.oneOf(['enroute_min', 'to_destination_min'], (key) => facts.number(key)) ?? 60;
    const toAlternate = facts.number('to_alternate_min') ?? 0;
    const alternate = facts.flag('alternate_required') ?? toAlternate > 0;
    const usable = facts.oneOf(['usable_gal', 'fuel_gal'], (key) => facts.number(key));
    const burn = facts.need('burn_gph', facts.number('burn_gph'));
    const scene = new Scene(facts.date('as_of') ?? ON, night ? 22 * 60 : 12 * 60, enroute);
    const extra = alternate ? toAlternate : 0;
    // Flights are planned in tenths of an hour, so the rule is asked with the whole time up to the reserve in one piece.
    scene.aircraft({
      category,
      class: category === 'rotorcraft' ? 'helicopter' : 'single-engine-land',
      fuelBurnUsGalPerHour: burn,
      usableFuelUsGal: 10_000,
    });
    scene.flight({ flightRules: rules, plannedTenths: (enroute + extra) / 6 });
    const withFuel = (fuelUsGal: number): boolean | string => {
      scene.flight({ loading: { occupantsLb: 170, baggageLb: 10, fuelUsGal } });
      return scene.allows(FUEL);
    };
    // The least whole minutes of fuel with which the rule lets the flight go.
    const required = (): number => {
      for (let minutes = enroute; minutes <= enroute + extra + 240; minutes += 1) {
        if (withFuel((minutes * burn) / 60) === true) return minutes;
      }
      throw new Error('the rule never lets the flight go');
    };
    return {
      required_min: required,
      reserve_min: () => required() - enroute - extra,
      required_gal: () => fuelForUsGal(required(), burn),
      allowed: () => {
        const fuel = facts.need('usable_gal', usable);
        const need = fuelMinutes({
          enrouteMinutes: enroute,
          toAlternateMinutes: extra,
          reserveMinutes: required() - enroute - extra,
        });
        const answer = withFuel(fuel);
        // Rule and function must agree before either is believed.
        return answer === hasFuelFor(need, fuel, burn)
          ? answer
          : `the rule says ${String(answer)}, its arithmetic otherwise`;
      },
    };
  },
};

const alternate: Mapping = {
  rules: ['fuel.alternate_required'],
  map(facts) {
    const [before, after] = facts.pair('eta_window_h') ?? [-1, 1];
    const aircraft =
      facts.oneOf(['aircraft', 'category'], (key) => facts.choice(key, CATEGORY)) ?? 'airplane';
    if (aircraft !== 'airplane') throw facts.bad('aircraft', 'the rules know this for airplanes only');
    const read = new Scene(facts.date('as_of') ?? ON).parameters([
      'us.alternate.ceiling',
      'us.alternate.visibility',
      'us.alternate.window',
    ]);
    const forecast = {
      approachPublished: facts.flag('approach_published') ?? null,
      ceilingFtAgl: facts.number('ceiling_ft') ?? null,
      visibilitySm: facts.number('visibility_sm') ?? null,
      coversHoursBefore: -before,
      coversHoursAfter: after,
    };
    return {
      alternate_required: () =>
        alternateRequired(forecast, {
          ceilingFt: read.number('us.alternate.ceiling'),
          visibilitySm: read.number('us.alternate.visibility'),
          windowHours: read.number('us.alternate.window'),
        }),
    };
  },
};

export const WEATHER_AND_FUEL_MAPS: readonly Mapping[] = [minima, reserve, alternate];
