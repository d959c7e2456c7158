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

const REPORTS =
  'it changes when reports grow old or another part of a forecast begins; the weather block tells both';

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
  until('club.night_checkout by-day', SUN),
  until('certificate.canada.permit_limits within', WEATHER),
  until('recreational.limits within', WEATHER),
  until('sport.limits within', WEATHER),
  until('weather.vfr_minima enough', WEATHER),
  until('wind.limits within', WEATHER),
  until('preflight.weather known', REPORTS),
  until('club.weather_minima enough', REPORTS),
  until('club.crosswind_checkout within', WEATHER),
  until('club.runway_length long-enough', WEATHER),
  until('club.runway_margin enough', WEATHER),
  until('preflight.runways worked-out', WEATHER),
  until('takeoff.half_way expected', WEATHER),
  until('equipment.day_vfr complete', 'it changes when equipment is taken out, on a day recorded already'),
  until('equipment.transponder equipped', 'the law asked for more from 2020 on; the derivation says so'),
  until(
    'inspection.hours_100 within',
    'a booking before the flight falls away; the sentence counts its hours',
  ),
  until('equipment.inoperative stands', SUN),
  until(
    'calendar.instructor_hours to-agree',
    'it changes with the day of the flight: hours are kept by weekday',
  ),
  until(
    'club.fair_use.weekend_bookings within',
    'it changes with the day of the flight, from a weekday to a weekend',
  ),
];

export const isExcepted = (at: string, check: string): boolean =>
  ACCEPTED.some((one) => one.at === at && one.check === check);
