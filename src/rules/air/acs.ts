/**
 * Tolerances of the airman certification standards, against which practice is measured: FAA-S-ACS-6C (private pilot,
 * airplane) and FAA-S-ACS-7B (commercial pilot, airplane), both in effect from 2024-05-31. A later edition is a second
 * table with its own date. They say when a manoeuvre is to standard; they do not gate a booking.
 */
import type { LocalDate } from '../calendar/dates.js';

export type AcsLevel = 'private' | 'commercial';

/** What is measured on a manoeuvre. Deviations are signed; banks are as flown. */
export type AcsMeasure =
  | 'altitudeDevFt'
  | 'airspeedDevKt'
  | 'headingDevDeg'
  | 'rolloutDevDeg'
  | 'bankDeg'
  | 'bankDevDeg'
  | 'touchdownBeyondPointFt';

export type AcsTask =
  | 'steep_turn'
  | 'slow_flight'
  | 'power_off_stall_straight'
  | 'power_off_stall_turning'
  | 'power_on_stall_straight'
  | 'power_on_stall_turning'
  | 'normal_landing'
  | 'short_field_landing'
  | 'power_off_180_landing'
  | 'approach_speed'
  | 'traffic_pattern'
  | 'ground_reference';

/** Least and greatest value within standard, both included. */
export type Limits = readonly [least: number, greatest: number];

/** One task: what must be measured, and what counts where it was measured. */
export interface AcsTolerance {
  limits: Partial<Record<AcsMeasure, Limits>>;
  /** Measures without which the task is not judged; the rest are judged where given. */
  needed: readonly AcsMeasure[];
  status: 'seen' | 'from memory';
}

/** One edition. `from`: first date it holds. A task the level does not ask for is absent. */
export interface AcsEdition {
  document: string;
  from: LocalDate;
  tasks: Partial<Record<AcsTask, AcsTolerance>>;
}

const within = (limit: number): Limits => [-limit, limit];
const task = (
  limits: AcsTolerance['limits'],
  status: AcsTolerance['status'],
  optional: readonly AcsMeasure[] = [],
): AcsTolerance => ({
  limits,
  needed: (Object.keys(limits) as AcsMeasure[]).filter((measure) => !optional.includes(measure)),
  status,
});

const steepTurn = (bankDeg: number): AcsTolerance =>
  task(
    {
      altitudeDevFt: within(100),
      airspeedDevKt: within(10),
      bankDeg: [bankDeg - 5, bankDeg + 5],
      rolloutDevDeg: within(10),
    },
    'seen',
  );
// Heading is held in straight stalls; turning ones are flown at up to 20 degrees of bank, more or less.
const straightStall = task({ headingDevDeg: within(10) }, 'from memory');
const turningStall = (bankDev: number): AcsTolerance =>
  task({ bankDeg: [20 - bankDev, 20 + bankDev] }, 'from memory');
const landing = (beyondFt: number): AcsTolerance =>
  task({ touchdownBeyondPointFt: [0, beyondFt] }, 'from memory');
const levelWork = task({ altitudeDevFt: within(100), airspeedDevKt: within(10) }, 'from memory');

/** The editions known, newest last. */
export const ACS_EDITIONS: Record<AcsLevel, readonly AcsEdition[]> = {
  private: [
    {
      document: 'FAA-S-ACS-6C',
      from: '2024-05-31',
      tasks: {
        steep_turn: steepTurn(45),
        slow_flight: task(
          {
            altitudeDevFt: within(100),
            headingDevDeg: within(10),
            airspeedDevKt: [0, 10],
            bankDevDeg: within(10),
          },
          'seen',
          ['bankDevDeg'],
        ),
        power_off_stall_straight: straightStall,
        power_off_stall_turning: turningStall(10),
        power_on_stall_straight: straightStall,
        power_on_stall_turning: turningStall(10),
        normal_landing: landing(400),
        short_field_landing: landing(200),
        approach_speed: task({ airspeedDevKt: [-5, 10] }, 'from memory'),
        traffic_pattern: levelWork,
        ground_reference: levelWork,
      },
    },
  ],
  commercial: [
    {
      document: 'FAA-S-ACS-7B',
      from: '2024-05-31',
      tasks: {
        steep_turn: steepTurn(50),
        slow_flight: task(
          {
            altitudeDevFt: within(50),
            headingDevDeg: within(10),
            airspeedDevKt: [0, 5],
            bankDevDeg: within(5),
          },
          'from memory',
          ['bankDevDeg'],
        ),
        power_off_stall_straight: straightStall,
        power_off_stall_turning: turningStall(5),
        power_on_stall_straight: straightStall,
        power_on_stall_turning: turningStall(5),
        normal_landing: landing(200),
        short_field_landing: landing(100),
        power_off_180_landing: landing(200),
        approach_speed: task({ airspeedDevKt: within(5) }, 'from memory'),
        traffic_pattern: levelWork,
      },
    },
  ],
};
