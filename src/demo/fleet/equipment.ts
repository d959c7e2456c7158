import type { EquipmentKind, Instant, LocalDate } from '../../rules/index.js';
import { DEMO_CLUB_ID, demoId } from '../ids.js';
import type { EquipmentRow } from '../rows.js';
import { at, clock, type When } from '../when.js';
import { aircraftBy, CONVERSION, FLEET, type Aircraft, type AircraftKey } from './aircraft.js';
import { MODELS } from './models.js';

/** In service with the club since long before the records begin. */
const FITTED_ON: LocalDate = '2012-05-07';

type Kit = Partial<Record<EquipmentKind, string>>;

/** By day: 14 CFR 91.205(b), and what the type design asks for. */
const DAY: Kit = {
  'airspeed-indicator': 'Airspeed indicator',
  'sensitive-altimeter': 'Altimeter',
  'magnetic-direction': 'Magnetic compass',
  tachometer: 'Tachometer',
  'oil-pressure': 'Oil pressure gauge',
  'oil-temperature': 'Oil temperature gauge',
  'manifold-pressure': 'Manifold pressure gauge',
  'fuel-quantity': 'Fuel gauges',
  'safety-belts': 'Safety belts',
  'shoulder-harness': 'Shoulder harnesses',
  elt: 'Emergency locator transmitter',
  'anti-collision-lights': 'Strobe lights',
  generator: 'Alternator',
  'electrical-source': 'Main battery',
  'two-way-radio': 'Radio',
  transponder: 'Transponder',
  'ads-b-out': 'Position transmitter (ADS-B Out)',
  'slip-skid': 'Slip-skid ball',
};
/** By night: 14 CFR 91.205(c). */
const NIGHT: Kit = {
  'position-lights': 'Position lights',
  'landing-light': 'Landing light',
  'spare-fuses': 'Spare fuses',
  clock: 'Panel clock',
  'rate-of-turn': 'Turn coordinator',
  'vertical-speed': 'Vertical speed indicator',
};
/** The round-dial instruments that air from a pump drives. */
const GYROS: Kit = {
  'air-pump': 'Vacuum pump',
  'attitude-indicator': 'Attitude gyro',
  'heading-indicator': 'Heading gyro',
};
const INSTRUMENT: Kit = {
  'nav-receiver': 'Navigation receiver',
  'vor-receiver': 'VOR receiver',
  'gps-navigator': 'Satellite navigator',
  'pitot-heat': 'Heated pitot',
};

/** What each aircraft carries besides the day list; the converted one is below. */
const KITS: Record<AircraftKey, Kit> = {
  'sprig-1': { ...NIGHT, ...GYROS },
  'sprig-2': { ...NIGHT, ...GYROS },
  wicket: {},
  almanac: { ...NIGHT, ...INSTRUMENT },
  traverse: {
    ...NIGHT,
    ...GYROS,
    ...INSTRUMENT,
    autopilot: 'Two-axis autopilot',
    'engine-monitor': 'Engine monitor',
  },
  lindle: { ...NIGHT, ...GYROS, ...INSTRUMENT, 'gear-position': 'Gear position lights' },
  gemel: {
    ...NIGHT,
    ...GYROS,
    ...INSTRUMENT,
    'gear-position': 'Gear position lights',
    autopilot: 'Two-axis autopilot',
    dme: 'Distance measuring equipment',
  },
};

/** One gauge an engine. */
const PER_ENGINE: readonly string[] = [
  'tachometer',
  'oil-pressure',
  'oil-temperature',
  'manifold-pressure',
  'generator',
];
const BY_TYPE_DESIGN: readonly string[] = [
  'airspeed-indicator',
  'sensitive-altimeter',
  'magnetic-direction',
  'tachometer',
  'oil-pressure',
  'oil-temperature',
  'fuel-quantity',
  'safety-belts',
  'gear-position',
];

/** Id of a piece of equipment, for squawks and items that name it. */
export const equipmentId = (aircraft: AircraftKey, kind: string, which = ''): string =>
  demoId('equipment', aircraft, kind, which);

/** The panel of every aircraft, and what the conversion took out and put in. */
export function equipmentRows(when: When, recordedAt: Instant): EquipmentRow[] {
  return [
    ...FLEET.flatMap((one) => kitOf(one).flatMap(([kind, name]) => fitted(one, kind, name, recordedAt))),
    ...conversion(when, recordedAt),
    {
      ...row('wicket', 'gps-navigator', 'Tablet with a moving map', recordedAt, 'tablet'),
      portable: true,
      basis: 'portable',
    },
  ];
}

const kitOf = (one: Aircraft): [string, string][] => Object.entries({ ...DAY, ...KITS[one.key] });

function fitted(one: Aircraft, kind: string, name: string, recordedAt: Instant): EquipmentRow[] {
  if (MODELS[one.model].row.engines === 1 || !PER_ENGINE.includes(kind))
    return [row(one.key, kind, name, recordedAt)];
  return ['left', 'right'].map((side) => row(one.key, kind, `${name}, ${side} engine`, recordedAt, side));
}

function row(key: AircraftKey, kind: string, name: string, recordedAt: Instant, which = ''): EquipmentRow {
  return {
    club_id: DEMO_CLUB_ID,
    id: equipmentId(key, kind, which),
    aircraft_id: aircraftBy(key).id,
    kind,
    name,
    installed_on: FITTED_ON,
    removed_on: null,
    portable: false,
    required_by_type_design: BY_TYPE_DESIGN.includes(kind),
    satisfies: [],
    basis: 'type-design',
    recorded_at: recordedAt,
  };
}

/** The converted aircraft: pump and gyros out, electronic displays with a battery of their own in. */
function conversion(when: When, recordedAt: Instant): EquipmentRow[] {
  const on = when.daysAgo(CONVERSION.finishedDaysAgo);
  const written = at(on, clock(16));
  const out = Object.entries(GYROS).map(([kind, name]): EquipmentRow => ({
    ...row('almanac', kind, name, recordedAt, 'old'),
    removed_on: on,
  }));
  const put = (kind: EquipmentKind, name: string, satisfies: EquipmentKind[] = []): EquipmentRow => ({
    ...row('almanac', kind, name, written, 'new'),
    installed_on: on,
    basis: 'stc',
    satisfies,
  });
  return [
    ...out,
    put('attitude-indicator', 'Electronic attitude display', ['rate-of-turn']),
    put('heading-indicator', 'Electronic heading display'),
    put('backup-battery', 'Backup battery of the displays'),
    put('engine-monitor', 'Engine monitor'),
  ];
}
