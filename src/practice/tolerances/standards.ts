/**
 * Published tolerances of manoeuvres by certificate level: the airman certification standards of the FAA, as editions
 * with the date each came into effect. What `rules/air/acs` holds for private and commercial pilots is taken from there;
 * here are the tasks it leaves out, and the instrument rating. They say when a manoeuvre is to standard and gate nothing.
 */
import { ACS_EDITIONS, type AcsEdition, type AcsTask } from '../../rules/air/acs.js';
import type { LocalDate } from '../../rules/calendar/dates.js';

export type Level = 'private' | 'commercial' | 'instrument';

/** What is measured. Deviations are signed, what was flown less what was meant; banks are as flown. */
export type Measure =
  | 'altitudeDevFt'
  | 'airspeedDevKt'
  | 'headingDevDeg'
  | 'rolloutDevDeg'
  | 'bankDeg'
  | 'bankDevDeg'
  | 'touchdownBeyondPointFt'
  /** Share of full-scale deflection of the course or glidepath needle. */
  | 'needleShare'
  | 'minimumDevFt'
  | 'arcDevNm';

export type Task =
  | AcsTask
  | 'soft_field_landing'
  | 'forward_slip_landing'
  | 'normal_takeoff_climb'
  | 'short_field_takeoff_climb'
  | 'soft_field_takeoff_climb'
  | 'go_around'
  | 'basic_instrument'
  | 'chandelle'
  | 'lazy_eight'
  | 'steep_spiral'
  | 'holding'
  | 'instrument_flight'
  | 'intercept_and_track'
  | 'dme_arc'
  | 'nonprecision_final'
  | 'precision_final'
  | 'approach_before_final'
  | 'missed_approach'
  | 'circling';

/** Least and greatest value within standard, both included. */
export type Limits = readonly [least: number, most: number];

/** How a figure is known: `seen` where its text was looked up, whole or as republished. */
export type Known = 'seen' | 'from memory';

export interface Standard {
  limits: Partial<Record<Measure, Limits>>;
  /** Measures without which the task is not judged. */
  needed: readonly Measure[];
  known: Known;
}

export interface Edition {
  document: string;
  /** First day in effect. */
  from: LocalDate;
  /** How that day is known. */
  fromKnown: Known;
  tasks: Partial<Record<Task, Standard>>;
}

const either = (limit: number): Limits => [-limit, limit];
const standard = (
  limits: Standard['limits'],
  known: Known = 'from memory',
  optional: readonly Measure[] = [],
): Standard => ({
  limits,
  needed: (Object.keys(limits) as Measure[]).filter((measure) => !optional.includes(measure)),
  known,
});

/** The tasks of `rules/air/acs`, in the words used here. */
function sharedTasks(edition: AcsEdition): Edition['tasks'] {
  return Object.fromEntries(
    Object.entries(edition.tasks).map(([task, { limits, needed, status }]) => [
      task,
      { limits, needed, known: status },
    ]),
  );
}

const climb = (least: number, most: number): Standard => standard({ airspeedDevKt: [least, most] });
const slip = standard({ touchdownBeyondPointFt: [0, 400] });

/** Private pilot, airplane: tasks that `rules/air/acs` has no need of. */
const PRIVATE: Edition['tasks'] = {
  soft_field_landing: standard({ airspeedDevKt: [-5, 10] }),
  forward_slip_landing: slip,
  normal_takeoff_climb: climb(-5, 10),
  short_field_takeoff_climb: climb(-5, 10),
  soft_field_takeoff_climb: climb(-5, 10),
  go_around: climb(-5, 10),
  basic_instrument: standard({
    altitudeDevFt: either(200),
    headingDevDeg: either(20),
    airspeedDevKt: either(10),
  }),
};

/** Commercial pilot, airplane. */
const COMMERCIAL: Edition['tasks'] = {
  soft_field_landing: standard({ airspeedDevKt: either(5) }),
  normal_takeoff_climb: climb(-5, 5),
  short_field_takeoff_climb: climb(-5, 5),
  soft_field_takeoff_climb: climb(-5, 5),
  go_around: climb(-5, 5),
  // Rolled out at the 180-degree point.
  chandelle: standard({ rolloutDevDeg: either(10) }),
  // At the 180-degree points, against the entry.
  lazy_eight: standard({
    altitudeDevFt: either(100),
    airspeedDevKt: either(10),
    headingDevDeg: either(10),
  }),
  // Bank is not to exceed 60 degrees at the steepest point.
  steep_spiral: standard(
    { airspeedDevKt: either(10), rolloutDevDeg: either(10), bankDeg: [0, 60] },
    'from memory',
    ['bankDeg'],
  ),
};

const byInstruments: Standard['limits'] = {
  altitudeDevFt: either(100),
  airspeedDevKt: either(10),
  headingDevDeg: either(10),
};

/** Instrument rating, airplane. */
const INSTRUMENT: Edition['tasks'] = {
  instrument_flight: standard({ ...byInstruments, bankDevDeg: either(5) }, 'from memory', ['bankDevDeg']),
  holding: standard({ ...byInstruments, needleShare: either(0.75) }, 'seen', ['needleShare']),
  intercept_and_track: standard({ ...byInstruments, needleShare: either(0.75) }),
  dme_arc: standard({ altitudeDevFt: either(100), airspeedDevKt: either(10), arcDevNm: either(1) }),
  approach_before_final: standard(byInstruments, 'seen'),
  nonprecision_final: standard({
    airspeedDevKt: either(10),
    needleShare: either(0.75),
    minimumDevFt: [0, 100],
  }),
  precision_final: standard({ airspeedDevKt: either(10), needleShare: either(0.75) }),
  missed_approach: standard(byInstruments),
  circling: standard({ minimumDevFt: [0, 100], airspeedDevKt: either(10), headingDevDeg: either(10) }),
};

const PREVIOUS = '2018-06-11';
const CURRENT = '2024-05-31';

/** The edition before: the same figures, as far as remembered; all of it from memory but the date of the private one. */
const before = (document: string, fromKnown: Known, tasks: Edition['tasks']): Edition => ({
  document,
  from: PREVIOUS,
  fromKnown,
  tasks: Object.fromEntries(
    Object.entries(tasks).map(([task, one]) => [task, { ...one, known: 'from memory' as const }]),
  ),
});

const privateTasks = { ...sharedTasks(ACS_EDITIONS.private.at(-1)!), ...PRIVATE };
const commercialTasks = { ...sharedTasks(ACS_EDITIONS.commercial.at(-1)!), ...COMMERCIAL };

/** Editions by level, newest last. */
export const STANDARDS: Record<Level, readonly Edition[]> = {
  private: [
    before('FAA-S-ACS-6B', 'seen', privateTasks),
    { document: 'FAA-S-ACS-6C', from: CURRENT, fromKnown: 'from memory', tasks: privateTasks },
  ],
  commercial: [
    before('FAA-S-ACS-7A', 'from memory', commercialTasks),
    { document: 'FAA-S-ACS-7B', from: CURRENT, fromKnown: 'from memory', tasks: commercialTasks },
  ],
  instrument: [
    before('FAA-S-ACS-8B', 'from memory', INSTRUMENT),
    { document: 'FAA-S-ACS-8C', from: CURRENT, fromKnown: 'from memory', tasks: INSTRUMENT },
  ],
};
