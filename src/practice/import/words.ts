/** The sentences of a track's reading. */
import type { Caveat } from '../track/propose.js';
import type { Unseen } from '../track/reading.js';

export const CAVEATS: Record<Caveat, string> = {
  'recording-begins-moving':
    'The recording begins while the aircraft moves, so when it set off is not known.',
  'recording-ends-moving':
    'The recording ends while the aircraft moves, so when it came to rest is not known.',
  'may-be-more': 'Part of the flight was not recorded or not recognised: there may be more.',
  'go-arounds-seen': 'A go-around seen may have touched the runway; the two look alike.',
  'unsettled-left-out': 'A landing whose stop the track does not show is not counted as a full stop.',
  'instrument-conditions-not-seen': 'Whether it was flown by instruments a track does not show.',
  'airspeed-about-its-mean': 'Speed is true airspeed about its own mean, not against the speed meant.',
  'manipulator-not-seen': 'Who was at the controls a track does not show.',
};

const minute = (seconds: number): string => `${Math.max(1, Math.round(seconds / 60))} min`;

export function unseenSays(one: Unseen): string {
  switch (one.because) {
    case 'points-too-far-apart':
      return `Steep turns were not looked for: a point every ${Math.round(one.medianSeconds * 10) / 10} s is too few.`;
    case 'no-elevation':
      return 'Touch-and-goes were not looked for: the track has points without an elevation.';
    case 'elevation-unchecked':
      return 'Heights could not be checked against an airfield, so landings are less sure.';
    case 'gap':
      return `Nothing was recorded for ${minute(one.toSeconds - one.fromSeconds)}; what was flown then is not in it.`;
    case 'many-gaps':
      return `The recording has ${one.count} gaps; what was flown in them is not in it.`;
    case 'stop-at-no-known-airfield':
      return 'The aircraft stood still where the club knows no airfield; a landing there is not counted.';
  }
}
