import { clubParameter } from './club-parameter.js';

/** Under which paper the airworthiness is kept, where the pack does not hold the law of it. */
export const KEPT_UNDER = 'club.airworthiness.kept-under';

/** Airworthiness of aircraft under law that is not held here (Europe, Canada). */
export const CLUB_AIRWORTHINESS = [
  clubParameter({
    id: KEPT_UNDER,
    title:
      'Paper under which airworthiness, maintenance and equipment of the aircraft are kept, where the law is not held here; none blocks every flight',
    unit: 'text',
    start: '',
    section: '7.1',
  }),
];
