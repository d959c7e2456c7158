/** Routes of a given reach. */
import { distanceNm } from '../../../rules/air/distance.js';
import type { AirfieldFact } from '../../../rules/index.js';
import type { Scene } from '../scene.js';

/**
 * Out to an airfield so many nautical miles due north of the first, and back; for no distance, a flight that stays home.
 * The distance is met from below, to a ten-thousandth of a mile.
 */
export function fieldAt(scene: Scene, miles: number): AirfieldFact[] {
  const home = scene.sheet.flight.route[0]!;
  if (miles === 0) return [home, home];
  let near = home.latitudeDeg;
  let far = home.latitudeDeg + miles / 50;
  for (let turn = 0; turn < 60; turn += 1) {
    const latitudeDeg = (near + far) / 2;
    if (distanceNm(home, { ...home, latitudeDeg }) > miles) far = latitudeDeg;
    else near = latitudeDeg;
  }
  const away: AirfieldFact = { ...home, id: AWAY, code: 'XQAW', name: 'Awayfield', latitudeDeg: near };
  return [home, away, home];
}

export const AWAY = 'airfield-away';
export const AWAY_CODE = 'XQAW';
