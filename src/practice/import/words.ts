/** The sentences of a track's reading. */
import type { ConfidenceReason } from '../track/confidence.js';
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

/** What each factor of a confidence is about. */
export const FACTORS: Record<ConfidenceReason, string> = {
  sampling: 'Points far apart show less',
  'circle-fit': 'How well the ground speeds of the turn lie on one circle',
  'clear-of-limit': 'How far the bank is from the least that counts, against its own scatter',
  'whole-turns': 'How near to whole turns',
  level: 'How level it was flown',
  'no-elevation': 'No elevation was recorded',
  'elevation-unchecked': 'The recorder’s height was not checked at rest on an airfield',
  'no-runway-along': 'The motion is not along a runway on record',
  'by-speed-alone': 'Only the speed says that the wheels were down',
  'time-on-ground': 'Time and height near the ground, against what a landing takes',
  'speed-between': 'The speed lies between a stop and a roll',
  'recording-ends': 'The recording ends there',
  circuits: 'How many times round',
  'return-to-fix': 'How near it came back to the fix',
  'reciprocal-legs': 'How well the legs lie opposite each other',
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
