import { nightRatingRule } from '../../common/people/night-rating.js';
import { EU_LEVELS } from '../licence/standing.js';

/** Part-FCL, FCL.810(a): light aircraft and private licences need a night rating at night; higher ones include it. */
export const nightRating = nightRatingRule({
  id: 'rating.easa.night',
  citation: {
    text: 'Regulation (EU) No 1178/2011, FCL.810(a), FCL.610(a)',
    status: 'seen',
    reading:
      'Night is that of FCL.010, at any airfield of the route. Under instrument flight rules at night the rating is needed too (FCL.610(a)(1)).',
  },
  levels: EU_LEVELS,
  included: ['commercial', 'atp'],
  never: ['student'],
});
