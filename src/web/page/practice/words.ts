import type { PracticeRecord } from './types.js';

export const MANOEUVRES: readonly string[] = [
  'normal_landing',
  'short_field_landing',
  'soft_field_landing',
  'forward_slip_landing',
  'power_off_180_landing',
  'go_around',
  'steep_turn',
  'slow_flight',
  'power_off_stall_straight',
  'power_off_stall_turning',
  'power_on_stall_straight',
  'power_on_stall_turning',
  'ground_reference',
  'normal_takeoff_climb',
  'short_field_takeoff_climb',
  'soft_field_takeoff_climb',
  'basic_instrument',
  'chandelle',
  'lazy_eight',
  'steep_spiral',
  'holding',
  'intercept_and_track',
  'nonprecision_final',
  'precision_final',
  'missed_approach',
  'circling',
];

export const titleOf = (one: string): string => one.replaceAll('_', ' ');

/** Whose published standard it is held against. */
export const LEVELS = [
  ['', 'by certificate'],
  ['private', 'private pilot'],
  ['commercial', 'commercial pilot'],
  ['instrument', 'instrument rating'],
] as const;

/** What can be measured; the usual ones stand in the open. */
export const MEASURES = [
  { measure: 'altitudeDevFt', label: 'Altitude off, ft', usual: true },
  { measure: 'airspeedDevKt', label: 'Airspeed off, kt', usual: true },
  { measure: 'headingDevDeg', label: 'Heading off, °', usual: true },
  { measure: 'rolloutDevDeg', label: 'Roll-out off, °', usual: true },
  { measure: 'bankDeg', label: 'Bank, °', usual: true },
  { measure: 'touchdownBeyondPointFt', label: 'Touchdown beyond the point, ft', usual: true },
  { measure: 'bankDevDeg', label: 'Bank off, °', usual: false },
  { measure: 'needleShare', label: 'Needle, share of full deflection', usual: false },
  { measure: 'minimumDevFt', label: 'Over the minimum altitude, ft', usual: false },
  { measure: 'arcDevNm', label: 'Off the arc, NM', usual: false },
] as const;

/** The outcome in words. */
export function verdictSays({ verdict, toStandard, seenBy }: PracticeRecord): string {
  const document = verdict.document ?? 'a standard';
  if (verdict.within === true) return `Within ${document}.`;
  if (verdict.within === false) {
    const outside = verdict.measures.filter(({ within }) => !within).map(({ measure }) => labelOf(measure));
    return `Outside ${document}: ${outside.join(', ')}.`;
  }
  const word =
    toStandard === null
      ? ''
      : ` ${seenBy === 'instructor' ? 'The instructor' : 'The pilot'} says it was${toStandard ? '' : ' not'} to standard.`;
  if (verdict.status !== 'judged') return `No published tolerance at this level.${word}`;
  return `Not all measured that ${document} asks for.${word}`;
}

const labelOf = (measure: string): string =>
  MEASURES.find((one) => one.measure === measure)
    ?.label.split(',')[0]!
    .toLowerCase() ?? measure;
