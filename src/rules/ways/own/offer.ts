import { canonicalJson } from '../../engine/digest.js';
import { partsOf } from '../acts.js';
import type { Change, Offer } from '../state.js';
import type { World } from '../world.js';

/** An act of the search's own: no rule is asked for it again. */
export const ownOffer = (
  world: World,
  act: string,
  title: string,
  change: Change,
  more: Partial<Pick<Offer, 'by' | 'person'>> = {},
): Offer => ({
  act,
  title,
  by: 'member',
  entries: partsOf(act, [], world.look),
  change,
  askers: [],
  person: null,
  notBefore: world.start,
  meaning: `${act} ${more.person ?? ''} ${change.is === 'effects' ? canonicalJson(change.effects) : title}`,
  ...more,
});
