/** 14 CFR 61.57(a) and (b), FCL.060(b) and CARs 401.05. */
import { daysBetween, type AircraftType } from '../../../rules/index.js';
import { LICENCE_RATING } from '../../../rules/workshop/records.js';
import type { NeutralFacts } from '../facts.js';
import type { Found, Mapping } from '../mapping.js';
import { Scene } from '../scene.js';
import { datesOf, landingsLog } from './log-entries.js';
import { placeWhere } from './place-for-sun.js';
import { CATEGORY, CLASS } from './words.js';

const DAY = 'recency.passengers.day';
const NIGHT = 'recency.passengers.night';

/** The aircraft of the flight; a type rating counts only where one is required. */
function aircraftOf(facts: NeutralFacts): Partial<AircraftType> {
  const aircraft = facts.object('aircraft');
  if (!aircraft) return {};
  const type = aircraft.text('type');
  const required = aircraft.flag('type_rating_required') ?? false;
  return {
    category: aircraft.choice('category', CATEGORY),
    class: aircraft.choice('class', CLASS),
    tailwheel: aircraft.flag('tailwheel'),
    typeRating: required ? aircraft.need('type', type) : null,
  };
}

function passengersOf(scene: Scene, facts: NeutralFacts, rules: readonly string[]): Found {
  const passengers = facts.number('passengers') ?? 1;
  const log = landingsLog(facts, scene);
  const asOf = scene.sheet.flight.departs;
  scene.aircraft(aircraftOf(facts)).set('member.log', log);
  const lastValid = (): string | null =>
    scene.passengers(Math.max(1, passengers)).lastValidDate(rules[0]!, datesOf(log));
  return {
    // Whether passengers may be carried is asked of a flight that carries some.
    may_carry_passengers: () => scene.passengers(Math.max(1, passengers)).allowsAll(...rules),
    may_act_as_pic: () => scene.passengers(passengers).allowsAll(...rules),
    days_elapsed: () => daysBetween(datesOf(log).sort().at(-1)!, scene.dateOf(asOf)),
    last_valid_date: lastValid,
    valid_through: lastValid,
  };
}

/** Day: the flight is at noon. */
const byDay: Mapping = {
  rules: [DAY],
  map(facts) {
    return passengersOf(new Scene(facts.need('as_of', facts.date('as_of'))), facts, [DAY]);
  },
};

/** Night: sunset, or for a morning flight sunrise, is where the entry says; both recencies are asked. */
const byNight: Mapping = {
  rules: [NIGHT],
  map(facts) {
    const asOf = facts.need('as_of', facts.date('as_of'));
    const departs = facts.need('flight_time_local', facts.clockMinutes('flight_time_local'));
    const sunset = facts.clockMinutes('sunset_local');
    const sunrise = facts.clockMinutes('sunrise_next_local');
    const ends = facts.oneOf(['flight_end_local', 'arrival_time_local', 'landing_time_local'], (key) =>
      facts.clockMinutes(key),
    );
    const scene = new Scene(asOf, departs, ends === undefined ? 0 : (ends - departs + 1440) % 1440);
    const morning = departs < 12 * 60;
    const place = morning
      ? placeWhere('sunrise', asOf, facts.need('sunrise_next_local', sunrise), scene.zone)
      : placeWhere('sunset', asOf, facts.need('sunset_local', sunset), scene.zone);
    scene.flight({ route: scene.sheet.flight.route.map((field) => ({ ...field, ...place })) });
    return passengersOf(scene, facts, [NIGHT, DAY]);
  },
};

/** The other jurisdictions' rules: by day at noon, by night at 22:00 in March, when it is dark everywhere they are asked. */
const elsewhere: Mapping = {
  rules: ['recency.easa.passengers', 'recency.canada.passengers'],
  map(facts, rule) {
    const night = facts.flag('night') ?? false;
    const scene = new Scene(facts.need('as_of', facts.date('as_of')), night ? 22 * 60 : 12 * 60);
    scene.sheet.jurisdiction = rule === 'recency.easa.passengers' ? 'EU' : 'CA';
    const rated = facts.flag('instrument_rating') ?? false;
    const { certificates } = scene.sheet.people['member-1']!;
    if (!certificates.known) throw new Error('the base sheet knows its certificates');
    scene.set(
      'member.certificates',
      certificates.value.map((one) => ({ ...one, instrument: rated ? ['airplane'] : [] })),
    );
    // The entry says that the rating is held, and not until when it is valid.
    scene.set(
      'member.ratings',
      rated ? [{ ...LICENCE_RATING, kind: 'instrument', validThrough: '2099-12-31' }] : [],
    );
    return passengersOf(scene, facts, [rule]);
  },
};

export const PASSENGER_RECENCY_MAPS: readonly Mapping[] = [byDay, byNight, elsewhere];
