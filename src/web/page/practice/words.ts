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

export const MEASURES = [
  { measure: 'altitudeDevFt', label: 'Altitude off, ft' },
  { measure: 'airspeedDevKt', label: 'Airspeed off, kt' },
  { measure: 'headingDevDeg', label: 'Heading off, °' },
  { measure: 'rolloutDevDeg', label: 'Roll-out off, °' },
  { measure: 'bankDeg', label: 'Bank, °' },
  { measure: 'touchdownBeyondPointFt', label: 'Touchdown beyond the point, ft' },
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
