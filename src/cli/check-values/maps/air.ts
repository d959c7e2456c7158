/** Wind, air, turns, take-off and distance: pure functions, called with the entry's numbers. */
import * as atmosphere from '../../../rules/air/atmosphere.js';
import { farthestFromOrigin } from '../../../rules/air/distance.js';
import { mustAbort, takeoffCheck } from '../../../rules/air/takeoff-check.js';
import * as turn from '../../../rules/air/turn.js';
import { windComponents } from '../../../rules/air/wind.js';
import type { NeutralFacts } from '../facts.js';
import type { Mapping } from '../mapping.js';

const numberOf = (facts: NeutralFacts, ...keys: [string, ...string[]]): number =>
  facts.need(
    keys[0],
    facts.oneOf(keys, (key) => facts.number(key)),
  );

const wind: Mapping = {
  rules: ['wind.components'],
  map(facts) {
    // The gust counts where there is one.
    const steady = facts.number('wind_kt');
    const gust = facts.oneOf(['gust_kt', 'wind_gust_kt'], (key) => facts.number(key));
    const kt = Math.max(facts.need('wind_kt', steady ?? gust), gust ?? 0);
    const variation =
      facts.oneOf(['variation_deg_east', 'variation_east_deg'], (key) => facts.number(key)) ?? 0;
    const runway = facts.oneOf(['runway_deg', 'runway_magnetic_deg', 'runway_true_deg'], (key) =>
      facts.number(key),
    );
    const from = facts.oneOf(['wind_from_deg', 'wind_from_true_deg', 'wind_from_magnetic_deg'], (key) =>
      facts.number(key),
    );
    // Magnetic plus east variation is true; only a runway given magnetic against a true wind needs it.
    const runwayDeg = facts.need('runway_deg', runway) + (facts.has('runway_magnetic_deg') ? variation : 0);
    const fromDeg = facts.need('wind_from_deg', from) + (facts.has('wind_from_magnetic_deg') ? variation : 0);
    const parts = windComponents(runwayDeg, fromDeg, kt);
    return {
      headwind_kt: () => parts.headwindKt,
      tailwind_kt: () => -parts.headwindKt,
      crosswind_from_right_kt: () => parts.crosswindKt,
      crosswind_kt: () => Math.abs(parts.crosswindKt),
    };
  },
};

const air: Mapping = {
  rules: ['atmosphere.density_altitude', 'atmosphere.pressure_altitude'],
  map(facts) {
    facts.remark('humidity', 'dry');
    const elevation = numberOf(facts, 'elevation_ft');
    const setting = numberOf(facts, 'altimeter_inhg');
    const oat = facts.oneOf(['oat_c', 'temperature_c'], (key) => facts.number(key));
    const exact = atmosphere.pressureAltitudeFt(elevation, setting);
    const rule = atmosphere.pressureAltitudeByRuleFt(elevation, setting);
    const oatC = (): number => facts.need('oat_c', oat);
    return {
      pressure_altitude_ft: () => exact,
      rule_of_thumb_pa_ft: () => rule,
      density_altitude_ft: () => atmosphere.densityAltitudeFt(exact, oatC()),
      rule_of_thumb_da_ft: () => atmosphere.densityAltitudeByRuleFt(rule, oatC()),
    };
  },
};

const turns: Mapping = {
  rules: ['turn.load_factor', 'turn.standard_rate_bank', 'turn.radius'],
  map(facts) {
    facts.remark('level', true);
    const ktas = facts.number('ktas');
    const bank = facts.number('bank_deg');
    const rate = facts.number('rate_deg_s');
    const speed = (): number => facts.need('ktas', ktas);
    const angle = (): number => facts.need('bank_deg', bank);
    return {
      load_factor: () => turn.loadFactor(angle()),
      stall_speed_factor: () => turn.stallSpeedFactor(angle()),
      bank_deg: () => turn.bankForRateDeg(speed(), rate),
      rule_of_thumb_deg: () => turn.standardRateBankByRuleDeg(speed()),
      radius_ft: () => turn.turnRadiusFt(speed(), angle()),
    };
  },
};

const takeoff: Mapping = {
  rules: ['takeoff.abort_50_70'],
  map(facts) {
    const liftOff = numberOf(facts, 'rotation_kt', 'lift_off_kt');
    const check = takeoffCheck(numberOf(facts, 'runway_ft'), liftOff);
    const speed = facts.number('speed_at_half_kt');
    return {
      check_distance_ft: () => check.checkDistanceFt,
      minimum_kt: () => check.minimumKt,
      abort: () => mustAbort(check, facts.need('speed_at_half_kt', speed)),
    };
  },
};

const straightLine: Mapping = {
  rules: ['distance.straight_line_50nm'],
  map(facts) {
    const route = facts
      .need('points', facts.points('points'))
      .map(([latitudeDeg, longitudeDeg]) => ({ latitudeDeg, longitudeDeg }));
    const farthest = farthestFromOrigin(route);
    return {
      max_from_origin_nm: () => farthest?.nm ?? null,
      more_than_50: () => farthest !== null && farthest.nm > 50,
    };
  },
};

export const AIR_MAPS: readonly Mapping[] = [wind, air, turns, takeoff, straightLine];
