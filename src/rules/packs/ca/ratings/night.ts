import { nightRatingRule } from '../../common/people/night-rating.js';
import { CA_LEVELS } from '../licence/standing.js';

/** CARs 401.26, 401.30, 401.42: a private licence needs a night rating at night; higher ones include it. */
export const nightRating = nightRatingRule({
  id: 'rating.canada.night',
  citation: {
    text: 'CARs 401.26, 401.30(1), 401.42',
    status: 'seen',
    reading:
      'Night is that of CARs 101.01, at any airfield of the route. A licence restricted to daylight (401.30(3)) carries that limitation, which is left to the pilot.',
  },
  levels: CA_LEVELS,
  included: ['commercial', 'atp'],
  never: ['student', 'recreational'],
});
