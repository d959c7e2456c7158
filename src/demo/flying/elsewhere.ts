import { addDays, type LocalDate } from '../../rules/index.js';
import { DEMO_CLUB_ID, demoId } from '../ids.js';
import { byKey, type Person } from '../people/person.js';
import { HOME } from '../places.js';
import type { LogEntryRow } from '../rows.js';
import { at, clock, type When } from '../when.js';

/** Whose log holds flights in somebody else's aircraft, and some slips of the pen. */
const WRITER = 'luis';
/** Long enough ago to count for no recency. */
const NEWEST_DAYS_AGO = 200;

interface Slip {
  to: string;
  nightTenths: number;
  crossCountryTenths: number;
  remarks: string;
}

const SLIPS: readonly Slip[] = [
  { to: HOME.code, nightTenths: 8, crossCountryTenths: 0, remarks: 'Circuits in a friend’s aircraft' },
  { to: HOME.code, nightTenths: 0, crossCountryTenths: 12, remarks: 'Round the mesa and home' },
  { to: 'Cold Fork strip', nightTenths: 0, crossCountryTenths: 12, remarks: 'Lunch at the farm' },
];

/** Flights by day that the log says something of which cannot be, or which nobody can check. */
export function elsewhereEntries(
  seed: string,
  people: readonly Person[],
  flown: readonly LogEntryRow[],
  when: When,
): LogEntryRow[] {
  const writer = byKey(people, WRITER);
  const busy = new Set(flown.filter((one) => one.member_id === writer.id).map((one) => one.flown_on));
  let on = when.daysAgo(NEWEST_DAYS_AGO);
  return SLIPS.map((slip) => {
    while (busy.has(on)) on = addDays(on, -1);
    const row = entry(seed, writer, on, slip);
    on = addDays(on, -1);
    return row;
  });
}

function entry(seed: string, writer: Person, on: LocalDate, slip: Slip): LogEntryRow {
  const [off, tenths] = [clock(11), 12];
  return {
    ...{
      club_id: DEMO_CLUB_ID,
      id: demoId(seed, 'log', on, 'elsewhere', writer.story.key),
      member_id: writer.id,
    },
    ...{ aircraft_id: null, model_id: null, aircraft_words: 'Plover 2, a friend’s' },
    ...{ category: 'airplane', class: 'single-engine-land', type_rating: null, tailwheel: false },
    ...{ departed_at: at(on, off), arrived_at: at(on, off + tenths * 6), flown_on: on },
    ...{ from_airfield: HOME.code, to_airfield: slip.to, role: 'pilot-in-command', sole_manipulator: true },
    ...{ takeoffs: 1, landings: 1, full_stop_landings: 1, night_takeoffs: 0, night_full_stop_landings: 0 },
    ...{ approaches: 0, holding: false, intercept_track: false, device: null },
    ...{ total_tenths: tenths, night_tenths: slip.nightTenths, dual_given_tenths: 0 },
    ...{ cross_country_tenths: slip.crossCountryTenths, actual_instrument_tenths: 0 },
    ...{ simulated_instrument_tenths: 0, remarks: slip.remarks, recorded_at: at(on, off + 120) },
  };
}
