/** A check that a branch's sentences do not pass, and why that is left so. */
export interface Exception {
  /** Rule and branch. */
  at: string;
  check: string;
  because: string;
}

const until = (at: string, because: string): Exception => ({ at, check: 'until', because });

const SUN =
  'it changes with the sun: within three hours of the night a condition names the clock, further off the derivation does';
const WEATHER = 'it changes when the declared observation grows old, which is not about the flight';

/** Left as they are. */
export const ACCEPTED: readonly Exception[] = [
  until('aircraft.kinds_of_operation allowed', SUN),
  until('certificate.privileges held', SUN),
  until('equipment.night_vfr by-day', SUN),
  until('fuel.reserve enough', SUN),
  until(
    'fuel.alternate_required needed',
    'it changes where the arrival moves into the time that the forecast covers',
  ),
  until('recency.passengers.night day-only', SUN),
  until('rating.canada.night by-day', SUN),
  until('rating.easa.night by-day', SUN),
  until('certificate.canada.permit_limits within', WEATHER),
  until('recreational.limits within', WEATHER),
  until('sport.limits within', WEATHER),
  until('weather.vfr_minima enough', WEATHER),
  until('wind.limits within', WEATHER),
  until('equipment.day_vfr complete', 'it changes when equipment is taken out, on a day recorded already'),
  until('equipment.transponder equipped', 'the law asked for more from 2020 on; the derivation says so'),
  until(
    'inspection.hours_100 within',
    'a booking before the flight falls away; the sentence counts its hours',
  ),
];

/** Sentences that should be changed; a change makes a new version of the rule, so they wait for one. */
export const WAITING: readonly Exception[] = [
  until('calendar.aircraft_free free', 'should say when the next booking begins'),
  until('calendar.member_free free', 'should say when the next commitment begins'),
  until('certificate.category_class rated', 'should say through which day the certificate is valid'),
  until('club.hours_promised enough', 'should give the date of the last booking'),
  until('club.pilot_standing good', 'should say from when a suspension begins'),
  until('club.standing good', 'should say from when a suspension begins'),
  until('equipment.inoperative stands', 'should give the deadline of each deferral'),
  until('student.solo.cross_country other-airport', 'should say through which day the endorsement stands'),
  until('law.parameters_checked checked', 'should say by when the next number is to be re-checked'),
  ...['law.canada.airworthiness unknown', 'law.easa.airworthiness unknown'].map((at) => ({
    ...{ at, check: 'plain' },
    because: 'the engine names a number without a value by id instead of by title',
  })),
  {
    at: 'law.parameters_checked overdue',
    check: 'plain',
    because: 'names numbers by id instead of by title',
  },
  { at: 'law.parameters_checked overdue', check: 'short', because: 'lists a whole release at once' },
  { at: 'equipment.day_vfr wanting', check: 'short', because: 'lists an empty panel line by line' },
  { at: 'equipment.ifr wanting', check: 'short', because: 'names one squawk for each line it spoils' },
  {
    at: 'permit.special_flight outside-dates',
    check: 'missing',
    because: 'should say that the permit does not cover the day',
  },
];

export const isExcepted = (at: string, check: string): boolean =>
  [...ACCEPTED, ...WAITING].some((one) => one.at === at && one.check === check);
