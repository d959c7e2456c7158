import type { Offer, State } from '../state.js';
import type { World } from '../world.js';
import { otherAircraft } from './aircraft.js';
import { instructors, withoutPassengers } from './people.js';
import { anotherTime } from './times.js';

/** Changes of the request that no rule offers. Another aircraft comes before anything else. */
export function ownRequests(world: World, state: State): readonly Offer[] {
  const key = `${world.aim} ${state.key}`;
  let own = world.own.get(key);
  if (!own) {
    own = [
      ...(state.parent === null ? otherAircraft(world, state) : []),
      ...instructors(world, state),
      ...withoutPassengers(world, state),
      ...anotherTime(world, state),
    ];
    world.own.set(key, own);
  }
  return own;
}
