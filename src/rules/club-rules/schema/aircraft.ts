/** The aircraft asked for. */
import { addDays } from '../../calendar/dates.js';
import { need } from '../../engine/unknown.js';
import type { AircraftType, MeterKind, SquawkFact } from '../../facts/aircraft.js';
import type { Entry, Reading } from './entry.js';

const ofType = (
  name: string,
  of: Pick<Entry, 'type' | 'says' | 'unit' | 'range' | 'words'>,
  get: (type: AircraftType) => boolean | number | string | null,
  missing = `the aircraft's ${name} is not on record`,
): Entry => ({
  name,
  ...of,
  aircraft: ['type'],
  get: (r) => need(get(r.aircraft('type')), `aircraft.${name}`, missing),
});

export const AIRCRAFT: readonly Entry[] = [
  ofType('registration', { type: 'string', says: 'Registration.' }, (type) => type.registration),
  ofType('makeModel', { type: 'string', says: 'Make and model in words.' }, (type) => type.makeModel),
  ofType('typeDesignator', { type: 'string', says: 'Type designator.' }, (type) => type.typeDesignator),
  ofType(
    'category',
    {
      type: 'string',
      says: 'Category.',
      words: ['airplane', 'rotorcraft', 'glider', 'lighter-than-air', 'powered-lift'],
    },
    (type) => type.category,
  ),
  ofType(
    'class',
    {
      type: 'string',
      says: 'Class.',
      words: [
        'single-engine-land',
        'single-engine-sea',
        'multi-engine-land',
        'multi-engine-sea',
        'helicopter',
        'gyroplane',
        'none',
      ],
    },
    (type) => type.class,
  ),
  ofType(
    'seats',
    { type: 'int', range: [0, 1000], says: "Seats fitted, pilots' included." },
    (type) => type.seats,
  ),
  ofType('engines', { type: 'int', range: [0, 20], says: 'Engines.' }, (type) => type.engines),
  ofType(
    'powerPerEngineHp',
    { type: 'double', unit: 'hp', range: [0, 100_000], says: 'Rated power of one engine.' },
    (type) => type.powerPerEngineHp,
    "the engine's power is not on record",
  ),
  ofType('tailwheel', { type: 'bool', says: 'Tailwheel undercarriage.' }, (type) => type.tailwheel),
  ofType(
    'retractableGear',
    { type: 'bool', says: 'Retractable undercarriage.' },
    (type) => type.retractableGear,
  ),
  ofType(
    'controllablePropeller',
    { type: 'bool', says: 'Controllable propeller.' },
    (type) => type.controllablePropeller,
  ),
  ofType('pressurised', { type: 'bool', says: 'Pressurised cabin.' }, (type) => type.pressurised),
  ofType(
    'usableFuelUsGal',
    { type: 'double', unit: 'US gal', range: [0, 100_000], says: 'Usable fuel when full.' },
    (type) => type.usableFuelUsGal,
    'the usable fuel is not on record',
  ),
  ofType(
    'demonstratedCrosswindKt',
    { type: 'double', unit: 'kt', range: [0, 200], says: 'Crosswind demonstrated at certification.' },
    (type) => type.demonstratedCrosswindKt,
    'the demonstrated crosswind is not on record',
  ),
  {
    name: 'inService',
    type: 'bool',
    aircraft: ['use'],
    says: 'The club has it in service.',
    get: (r) => r.aircraft('use').status === 'in-service',
  },
  {
    name: 'openSquawks',
    type: 'int',
    range: [0, 10_000],
    aircraft: ['squawks'],
    overTime: true,
    says: 'Squawks not yet settled, deferred ones included.',
    get: (r) => count(r, () => true),
  },
  {
    name: 'deferredSquawks',
    type: 'int',
    range: [0, 10_000],
    aircraft: ['squawks'],
    overTime: true,
    says: 'Squawks that are deferred.',
    get: (r) => count(r, (one) => one.state === 'deferred'),
  },
  {
    name: 'equipment',
    type: 'list<string>',
    aircraft: ['equipment'],
    overTime: true,
    says: "Kinds of equipment fitted for the whole flight, whether or not they work: 'autopilot', 'gps-navigator', ... Portable things are left out.",
    get: (r) =>
      [
        ...new Set(
          r
            .aircraft('equipment')
            .filter((one) => !one.portable && r.moment.startsOnOrAfter(one.installedOn))
            .filter((one) => one.removedOn === null || r.moment.endsOnOrBefore(addDays(one.removedOn, -1)))
            .map((one) => one.kind as string),
        ),
      ].sort(),
  },
  meter('tachometerHours', 'tachometer', 'tachometer'),
  meter('hobbsHours', 'hobbs', 'Hobbs meter'),
  meter('airframeHours', 'airframe', 'airframe time'),
];

function meter(name: string, kind: MeterKind, called: string): Entry {
  return {
    name,
    type: 'double',
    unit: 'h',
    range: [0, 1_000_000],
    aircraft: ['meters'],
    says: `Newest reading of the ${called}, when the flight is asked for.`,
    get: (r) => {
      const found = r.aircraft('meters').find((one) => one.kind === kind);
      return need(found, `aircraft.${name}`, `no reading of the ${kind} is on record`).tenths / 10;
    },
  };
}

function count(r: Reading, serves: (squawk: SquawkFact) => boolean): number {
  const open = r.aircraft('squawks').filter((one) => serves(one) && isOpen(one, r));
  r.spend(open.length);
  r.counted(open.map((one) => ({ id: one.id, on: null, what: one.title })));
  return open.length;
}

/** A squawk stands unless it is settled by the time of the flight. */
function isOpen(squawk: SquawkFact, { moment }: Reading): boolean {
  if (squawk.state !== 'fixed' && squawk.state !== 'no-fault-found') return true;
  return squawk.closedAt !== null && !moment.departsAtOrAfter(squawk.closedAt);
}
