import { clubParameter } from './club-parameter.js';

/** What the club asks of the weather, and for how long it lets reports speak. */
export const CLUB_WEATHER = [
  clubParameter({
    id: 'club.weather.ceiling-ft',
    title: 'Least ceiling reported or forecast for each phase of a VFR flight, above the ground',
    unit: 'ft',
    start: 1000,
    section: '6.3',
  }),
  clubParameter({
    id: 'club.weather.visibility-sm',
    title: 'Least visibility reported or forecast for each phase of a VFR flight',
    unit: 'sm',
    start: 3,
    section: '6.3',
  }),
  clubParameter({
    id: 'club.weather.report-hours',
    title: 'Hours after a weather report through which it speaks of a phase of the flight',
    unit: 'hours',
    start: 2,
    section: '6.3',
  }),
  clubParameter({
    id: 'club.weather.forecast-hours',
    title: 'Hours after the issue of a forecast after which a newer one is to be looked at before departure',
    unit: 'hours',
    start: 7,
    section: '6.3',
  }),
  clubParameter({
    id: 'club.weather.fetch-ahead-hours',
    title: 'Hours before departure from which the weather of a booked flight is fetched by itself; 0: never',
    unit: 'hours',
    start: 6,
    section: '6.4',
  }),
  clubParameter({
    id: 'club.weather.fetch-minutes',
    title: 'Minutes after which the weather of an airfield is fetched again for booked flights; 0: never',
    unit: 'minutes',
    start: 60,
    section: '6.4',
  }),
];

/** The two that say for how long reports speak. */
export const SPEAKS = ['club.weather.report-hours', 'club.weather.forecast-hours'] as const;
