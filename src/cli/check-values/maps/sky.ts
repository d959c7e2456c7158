/** The sun, and the three nights. */
import { toInstant, type EpochSeconds } from '../../../rules/index.js';
import { isNight } from '../../../rules/sky/nights.js';
import { sunTimes, type Place } from '../../../rules/sky/sun.js';
import type { NeutralFacts } from '../facts.js';
import type { Mapping } from '../mapping.js';
import { placeWithTwilight } from './place-for-sun.js';

const times: Mapping = {
  rules: ['sun.times'],
  map(facts) {
    facts.remark('date_is', 'local date at the place');
    const place = {
      latitudeDeg: facts.need('latitude', facts.number('latitude')),
      longitudeDeg: facts.need('longitude', facts.number('longitude')),
    };
    const zone = facts.oneOf(['zone', 'time_zone'], (key) => facts.text(key));
    const found = sunTimes(facts.need('date', facts.date('date')), place, zone);
    const at = (seconds: EpochSeconds | null) => (): string | null =>
      seconds === null ? null : toInstant(seconds);
    return {
      sunrise: at(found.sunrise),
      sunset: at(found.sunset),
      civil_dawn: at(found.civilDawn),
      civil_dusk: at(found.civilDusk),
    };
  },
};

/** An equinox: the nights are long, and twilight lasts by latitude from 21 minutes up. */
const EQUINOX = '2026-09-22';
/** Midsummer at 64 degrees north: the sun sets, and does not sink six degrees. */
const MIDSUMMER = { date: '2026-06-21', place: { latitudeDeg: 64, longitudeDeg: 0 } };

const nights: Mapping = {
  rules: ['night.classify'],
  map(facts) {
    const { place, date } = twilightPlace(facts);
    const after = facts.oneOf(['minutes_after_sunset', 'landing_minutes_after_sunset'], (key) =>
      facts.number(key),
    );
    const before = facts.oneOf(['minutes_before_sunrise', 'landing_minutes_before_sunrise'], (key) =>
      facts.number(key),
    );
    if ((after === undefined) === (before === undefined))
      throw facts.bad('minutes_after_sunset', 'or minutes_before_sunrise is needed, and not both');
    const { sunset, sunrise } = sunTimes(date, place);
    const edge = after === undefined ? sunrise : sunset;
    if (edge === null) throw new Error('the sun does not set there');
    const at = Math.round(edge + (after ?? -before!) * 60);
    return {
      night_14cfr_1_1: () => isNight('civil', place, at),
      counts_for_61_57b: () => isNight('passenger', place, at),
      position_lights_required: () => isNight('lights', place, at),
    };
  },
};

/** Where civil twilight lasts as long as the entry says; null says that it never ends. */
function twilightPlace(facts: NeutralFacts): { date: string; place: Place } {
  const keys = ['civil_twilight_end_minutes_after_sunset', 'civil_twilight_begin_minutes_before_sunrise'];
  const minutes = facts.oneOf(keys, (key) => facts.number(key));
  if (minutes === undefined && keys.some((key) => facts.has(key))) return MIDSUMMER;
  return { date: EQUINOX, place: placeWithTwilight(EQUINOX, facts.need(keys[0]!, minutes)) };
}

export const SKY_MAPS: readonly Mapping[] = [times, nights];
