import type { Instant, LocalDate } from '../../rules/index.js';
import { type AircraftKey, FLEET } from '../fleet/aircraft.js';
import { DEMO_CLUB_ID, demoId } from '../ids.js';
import type { Person } from '../people/person.js';
import type { ChargeRateRow } from '../rows/accounts.js';
import type { When } from '../when.js';

/** Invented rates in cents: of an hour, and of a gallon. One is raised within the months on show, one aircraft is rented dry. */
const RATES: Record<
  AircraftKey,
  { perHour: number; basis: ChargeRateRow['basis']; fuel: ChargeRateRow['fuel'] }
> = {
  'sprig-1': { perHour: 13_800, basis: 'tachometer', fuel: 'wet' },
  'sprig-2': { perHour: 13_800, basis: 'tachometer', fuel: 'wet' },
  wicket: { perHour: 9650, basis: 'tachometer', fuel: 'dry' },
  almanac: { perHour: 17_250, basis: 'hobbs', fuel: 'wet' },
  traverse: { perHour: 18_900, basis: 'hobbs', fuel: 'wet' },
  lindle: { perHour: 21_425, basis: 'hobbs', fuel: 'wet' },
  gemel: { perHour: 33_500, basis: 'hobbs', fuel: 'wet' },
};
const GALLON = 645;
const INSTRUCTION = 6200;

/** What an hour of each aircraft and instructor costs. */
export function rateRows(people: readonly Person[], when: When, recordedAt: Instant): ChargeRateRow[] {
  const treasurer = people.find(({ story }) => story.roles?.includes('administrator'))!;
  const row = (id: string, from: LocalDate, more: Partial<ChargeRateRow>): ChargeRateRow => ({
    ...{ club_id: DEMO_CLUB_ID, id: demoId('rate', id, from === when.firstDay ? 'first' : 'later') },
    ...{ aircraft_id: null, instructor_id: null, valid_from: from, currency: 'USD' },
    ...{ per_hour_minor: 0, basis: null, fuel: null, fuel_per_us_gal_minor: null },
    ...{ set_by: treasurer.id, recorded_at: recordedAt, ...more },
  });
  const fleet = FLEET.flatMap(({ key, id }) => {
    const { perHour, basis, fuel } = RATES[key];
    const of = { aircraft_id: id, basis, fuel, fuel_per_us_gal_minor: GALLON };
    const now = row(key, when.firstDay, { ...of, per_hour_minor: perHour });
    if (key !== 'almanac') return [now];
    return [
      { ...now, per_hour_minor: perHour - 650 },
      row(key, when.daysAgo(40), { ...of, per_hour_minor: perHour }),
    ];
  });
  const teachers = people
    .filter(({ story }) => story.instructor)
    .map(({ id }) => row(id, when.firstDay, { instructor_id: id, per_hour_minor: INSTRUCTION }));
  return [...fleet, ...teachers];
}
