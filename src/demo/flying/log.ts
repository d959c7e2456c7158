import { toSeconds, type EpochSeconds } from '../../rules/index.js';
import { isNight, nightSpans } from '../../rules/sky/nights.js';
import { MODELS } from '../fleet/models.js';
import { DEMO_CLUB_ID, demoId } from '../ids.js';
import type { Person } from '../people/person.js';
import type { Place } from '../places.js';
import type { LogEntryRow } from '../rows.js';
import { at } from '../when.js';
import type { Leg, Outing } from './outing.js';

/** Seconds from blocks to the first take-off, and from the last landing to the blocks. */
const TAXI_OUT = 360;
const TAXI_IN = 240;
const WRITTEN_AFTER_MINUTES = 20;

/** The log entries of an outing: each leg in the log of everyone at the controls or teaching. */
export function logEntries(seed: string, outing: Outing): LogEntryRow[] {
  return outing.legs.flatMap((leg) => {
    const flown = entry(seed, outing, leg, outing.pilot, outing.role);
    if (!outing.teacher) return [flown];
    const taught = entry(seed, outing, leg, outing.teacher, 'instructor');
    return [flown, taught];
  });
}

function entry(
  seed: string,
  outing: Outing,
  leg: Leg,
  person: Person,
  role: LogEntryRow['role'],
): LogEntryRow {
  const { aircraft, date } = outing;
  const model = MODELS[aircraft.model];
  const end = leg.startMinute + leg.tenths * 6;
  const [departed, arrived] = [at(date, leg.startMinute), at(date, end)];
  // The instructor's hands are off the controls: the landings are the learner's.
  const flies = role !== 'instructor';
  const night = flies
    ? nightCounts(leg, toSeconds(departed), toSeconds(arrived))
    : { takeoffs: 0, landings: 0 };
  return {
    club_id: DEMO_CLUB_ID,
    id: demoId(seed, 'log', date, aircraft.key, leg.startMinute, person.story.key),
    member_id: person.id,
    aircraft_id: aircraft.id,
    model_id: model.id,
    aircraft_words: `${aircraft.registration} ${model.makeModel}`,
    category: 'airplane',
    class: model.row.class,
    type_rating: null,
    tailwheel: model.tailwheel,
    departed_at: departed,
    arrived_at: arrived,
    flown_on: date,
    from_airfield: leg.from.code,
    to_airfield: leg.to.code,
    role,
    sole_manipulator: flies,
    takeoffs: flies ? leg.takeoffs : 0,
    landings: flies ? leg.landings : 0,
    full_stop_landings: flies ? leg.fullStops : 0,
    night_takeoffs: night.takeoffs,
    night_full_stop_landings: night.landings,
    approaches: flies ? leg.approaches : 0,
    holding: flies && leg.holding,
    intercept_track: flies && leg.approaches > 0,
    device: null,
    total_tenths: leg.tenths,
    night_tenths: nightTenths(leg.from, toSeconds(departed), toSeconds(arrived), leg.tenths),
    dual_given_tenths: flies ? 0 : leg.tenths,
    cross_country_tenths: leg.from === leg.to ? 0 : leg.tenths,
    actual_instrument_tenths: 0,
    // Approaches are flown under a view-limiting device, here half of the way.
    simulated_instrument_tenths: flies && leg.approaches > 0 ? Math.floor(leg.tenths / 2) : 0,
    remarks: outing.remarks,
    recorded_at: at(date, end + WRITTEN_AFTER_MINUTES),
  };
}

/**
 * Take-offs, and landings to a full stop, between an hour after sunset and an hour before sunrise at the place of each.
 * They lie evenly between the first take-off and the last landing; the full stops are the last of the landings.
 */
export function nightCounts(
  leg: Leg,
  departed: EpochSeconds,
  arrived: EpochSeconds,
): { takeoffs: number; landings: number } {
  const first = departed + TAXI_OUT;
  const circuit = (arrived - TAXI_IN - first) / leg.landings;
  let [takeoffs, landings] = [0, 0];
  for (let index = 0; index < leg.landings; index += 1) {
    const lastOne = index === leg.landings - 1;
    const touches = Math.round(first + (index + 1) * circuit);
    if (index < leg.takeoffs && isNight('passenger', leg.from, Math.round(first + index * circuit)))
      takeoffs += 1;
    const full = index >= leg.landings - leg.fullStops;
    if (full && isNight('passenger', lastOne ? leg.to : leg.from, touches)) landings += 1;
  }
  return { takeoffs, landings };
}

/** Tenths of an hour between the end of evening and the beginning of morning civil twilight (14 CFR 1.1). */
function nightTenths(place: Place, from: EpochSeconds, to: EpochSeconds, most: number): number {
  const seconds = nightSpans('civil', place, from, to).reduce((sum, span) => sum + span.to - span.from, 0);
  return Math.min(most, Math.round(seconds / 360));
}
