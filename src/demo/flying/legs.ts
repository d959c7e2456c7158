import type { Draw } from '../draw.js';
import type { ModelKey } from '../fleet/models.js';
import { DUNFERN, HOME, SPARROW, TANSY, type Place } from '../places.js';
import type { Must } from '../people/story.js';
import type { Leg } from './outing.js';

/** Speed between the blocks, nautical miles an hour. */
const SPEED: Record<ModelKey, number> = {
  sprig: 88,
  wicket: 84,
  almanac: 108,
  traverse: 134,
  lindle: 130,
  gemel: 146,
};

/** What a flight is about; `lesson` is any other dual flight. */
export type FlightKind = Must['what'] | 'local' | 'lesson';

/** The legs of a flight without their start: `startMinute` counts from the start of the first. */
export function legsFor(
  draw: Draw,
  kind: FlightKind,
  model: ModelKey,
  counts: { landings?: number; approaches?: number } = {},
): Leg[] {
  const at = (fields: Partial<Leg>): Leg => ({
    from: HOME,
    to: HOME,
    startMinute: 0,
    tenths: 10,
    takeoffs: 1,
    landings: 1,
    fullStops: 1,
    approaches: 0,
    holding: false,
    ...fields,
  });
  if (kind === 'trip') {
    const away = destination(draw, model);
    const tenths = Math.ceil((distanceNm(HOME, away) / SPEED[model]) * 10) + draw.int(2, 4);
    const stay = draw.int(4, 14) * 10;
    return [
      at({ to: away, tenths }),
      at({ from: away, tenths: tenths + draw.int(-1, 1), startMinute: tenths * 6 + stay }),
    ];
  }
  if (kind === 'approaches') {
    const approaches = counts.approaches ?? draw.int(1, 3);
    return [
      at({
        tenths: 9 + approaches * 2,
        approaches,
        holding: counts.approaches !== undefined || draw.chance(0.5),
      }),
    ];
  }
  const landings = counts.landings ?? (kind === 'lesson' ? draw.int(3, 7) : draw.int(1, 4));
  const tenths = Math.max(kind === 'lesson' ? draw.int(9, 13) : draw.int(8, 14), landings * 2 + 1);
  const fullStops =
    kind === 'night' || model === 'wicket' ? landings : draw.int(1, Math.max(1, landings - 1));
  return [at({ tenths, takeoffs: landings, landings, fullStops })];
}

function destination(draw: Draw, model: ModelKey): Place {
  if (model === 'wicket') return TANSY;
  if (model === 'sprig') return draw.pick([DUNFERN, DUNFERN, TANSY]);
  return draw.pick([DUNFERN, SPARROW]);
}

/** Distance on the sphere; good enough to give a flight its length. */
export function distanceNm(a: Place, b: Place): number {
  const radians = Math.PI / 180;
  const [lat1, lat2] = [a.latitudeDeg * radians, b.latitudeDeg * radians];
  const dLon = (b.longitudeDeg - a.longitudeDeg) * radians;
  const half = Math.sin((lat2 - lat1) / 2) ** 2 + Math.cos(lat1) * Math.cos(lat2) * Math.sin(dLon / 2) ** 2;
  return 2 * 3440.065 * Math.asin(Math.sqrt(half));
}
