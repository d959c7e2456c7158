/** Words of the trade that sheets use for what the log names otherwise (common practice, no source). Pure. */
import type { AircraftCategory, AircraftClass, LogFact } from '../../rules/facts/person.js';
import { AIRCRAFT_CATEGORIES, AIRCRAFT_CLASSES } from '../../members/vocabulary.js';
import { DEVICES, LOG_ROLES } from '../words.js';
import type { Read } from './cells.js';

const own = <T extends string>(words: readonly T[]): Record<string, T> =>
  Object.fromEntries(words.map((word) => [word, word]));

export const ROLE_WORDS: Record<string, LogFact['role']> = {
  ...own(LOG_ROLES),
  ...{ pic: 'pilot-in-command', p1: 'pilot-in-command', command: 'pilot-in-command' },
  ...{
    sic: 'second-in-command',
    p2: 'second-in-command',
    'co-pilot': 'second-in-command',
    copilot: 'second-in-command',
  },
  ...{
    dual: 'dual-received',
    student: 'dual-received',
    put: 'dual-received',
    'pilot-under-training': 'dual-received',
  },
  ...{ cfi: 'instructor', fi: 'instructor', 'flight-instructor': 'instructor', 'dual-given': 'instructor' },
};

export const DEVICE_WORDS: Record<string, NonNullable<LogFact['device']>> = {
  ...own(DEVICES),
  ...{ ffs: 'full-flight-simulator', ftd: 'flight-training-device', atd: 'aviation-training-device' },
  ...{ aatd: 'aviation-training-device', batd: 'aviation-training-device' },
};

export const CATEGORY_WORDS: Record<string, AircraftCategory> = {
  ...own(AIRCRAFT_CATEGORIES),
  ...{ aeroplane: 'airplane', helicopter: 'rotorcraft', gyroplane: 'rotorcraft', sailplane: 'glider' },
};

export const CLASS_WORDS: Record<string, AircraftClass> = {
  ...own(AIRCRAFT_CLASSES),
  ...{
    sel: 'single-engine-land',
    asel: 'single-engine-land',
    'airplane-single-engine-land': 'single-engine-land',
  },
  ...{
    ses: 'single-engine-sea',
    ases: 'single-engine-sea',
    'airplane-single-engine-sea': 'single-engine-sea',
  },
  ...{
    mel: 'multi-engine-land',
    amel: 'multi-engine-land',
    'airplane-multi-engine-land': 'multi-engine-land',
  },
  ...{ mes: 'multi-engine-sea', ames: 'multi-engine-sea', 'airplane-multi-engine-sea': 'multi-engine-sea' },
  ...{ 'multiengine-land': 'multi-engine-land', 'multiengine-sea': 'multi-engine-sea' },
};

/** The category a class is of where only one has it. */
export const categoryOf = (name: AircraftClass): AircraftCategory | null =>
  name === 'none' ? null : name === 'helicopter' || name === 'gyroplane' ? 'rotorcraft' : 'airplane';

/** 'Single-engine land' → 'single-engine-land'. */
const hyphened = (cell: string): string =>
  cell
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');

export function readWord<T extends string>(cell: string, words: Record<string, T>): Read<T> {
  const word = hyphened(cell);
  if (Object.hasOwn(words, word)) return { value: words[word]! };
  return { refused: `is none of the words known here: ${[...new Set(Object.values(words))].join(', ')}.` };
}
