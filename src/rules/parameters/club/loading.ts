import { clubParameter } from './club-parameter.js';

/** What the club asks of loading and runways beyond the law. */
export const CLUB_LOADING = [
  clubParameter({
    id: 'club.loading.kept-minutes',
    title: 'Minutes of fuel beyond the planned time that no advice to take less fuel touches',
    unit: 'minutes',
    start: 60,
    section: '6.1',
  }),
  clubParameter({
    id: 'club.runway.margin-factor',
    title:
      'Factor by which the handbook’s distances over 50 ft are multiplied before they are held against a runway',
    unit: 'factor',
    start: 1.33,
    section: '6.2',
  }),
  clubParameter({
    id: 'club.runway.weather-hours',
    title: 'Hours before departure within which weather must be observed to work out distances with it',
    unit: 'hours',
    start: 2,
    section: '6.2',
  }),
];
