/** What the demo club asks for. Its own invention, the figures of the flight standards apart, which are FAA-S-ACS-6C's. */
import type { Task } from '../../practice/tolerances/index.js';
import type { CheckoutCondition, EquipmentGroup } from '../../rules/facts/person.js';
import type { ModelKey } from '../fleet/models.js';

export interface DemoItem {
  title: string;
  standard: string;
  manoeuvre?: Task;
  /** Not asked for, shown where there is time. */
  extra?: boolean;
}

export interface Syllabus {
  key: string;
  title: string;
  model?: ModelKey;
  group?: EquipmentGroup;
  alsoCalled?: string[];
  condition?: CheckoutCondition;
  goodDays: number | null;
  quiz?: { questions: number; passPercent: number };
  /** Keys of syllabi. */
  first?: string[];
  alsoModels?: ModelKey[];
  /** Keys of people; none: every instructor. */
  instructors?: string[];
  items: DemoItem[];
}

const TURN: DemoItem = {
  title: 'Steep turns',
  standard: 'Altitude within 100 ft, speed within 10 kt, bank within 5° of 45°, roll-out within 10°',
  manoeuvre: 'steep_turn',
};
const SLOW: DemoItem = {
  title: 'Slow flight',
  standard: 'Altitude within 100 ft, heading within 10°, no stall warning',
  manoeuvre: 'slow_flight',
};
const STALL_OFF: DemoItem = {
  title: 'Stall, power off',
  standard: 'Recovers at once with little loss of height and no second stall',
  manoeuvre: 'power_off_stall_straight',
};
const STALL_ON: DemoItem = {
  title: 'Stall, power on',
  standard: 'Heading within 10°, recovers at once to a positive climb',
  manoeuvre: 'power_on_stall_straight',
};
const LANDING: DemoItem = {
  title: 'Landings',
  standard: 'Three, at or within 400 ft beyond the point meant, on the centreline',
  manoeuvre: 'normal_landing',
};
const ROUND: DemoItem = {
  title: 'Go-around',
  standard: 'Decides in time, full power, flaps in steps, no sink',
  manoeuvre: 'go_around',
};
const LOOK_ROUND: DemoItem = {
  title: 'Walk round',
  standard: 'Finds each item of the list without help and says what would keep the aircraft down',
};
const SPEEDS: DemoItem = { title: 'Speeds from memory', standard: 'Says all of the card without looking' };
const ENGINE: DemoItem = {
  title: 'Engine failure, simulated',
  standard: 'Best glide within 5 kt, chooses a field, does the memory items in order',
};

const BASIC = [LOOK_ROUND, SPEEDS, SLOW, TURN, STALL_OFF, STALL_ON, ENGINE, LANDING, ROUND];
const model = (
  key: ModelKey,
  title: string,
  more: Partial<Syllabus> & { extra?: DemoItem[] } = {},
): Syllabus => {
  const { extra = [], ...rest } = more;
  return { key, title, model: key, goodDays: null, items: [...BASIC, ...extra], ...rest };
};

const GEAR: DemoItem[] = [
  {
    title: 'Gear by hand',
    standard: 'Lowers it by the emergency system, with the list, and confirms it three ways',
  },
  { title: 'Gear check on final', standard: 'Says it aloud on every approach of the flight, unasked' },
];

export const SYLLABI: readonly Syllabus[] = [
  model('sprig', 'Sprig checkout', { quiz: { questions: 5, passPercent: 80 } }),
  model('wicket', 'Wicket checkout', {
    extra: [
      { title: 'Three-point landings', standard: 'Three, stick back, straight to the end of the roll' },
      { title: 'Wheel landings', standard: 'Two, no bounce that is not caught', extra: true },
    ],
  }),
  model('almanac', 'Almanac checkout', { quiz: { questions: 5, passPercent: 80 } }),
  model('traverse', 'Traverse checkout', { first: ['almanac'], alsoModels: ['almanac'] }),
  model('lindle', 'Lindle checkout', {
    ...{ first: ['almanac'], extra: GEAR, quiz: { questions: 5, passPercent: 80 } },
    instructors: ['iris', 'anton', 'lena'],
  }),
  model('gemel', 'Gemel checkout', {
    ...{ instructors: ['anton', 'lena'], first: ['lindle'] },
    extra: [
      ...GEAR,
      { title: 'One engine out', standard: 'Heading within 20°, blue line within 5 kt, the list done' },
    ],
  }),
  {
    ...{ key: 'glass', title: 'Electronic panel', group: 'glass-panel', alsoCalled: ['electronic panel'] },
    goodDays: null,
    items: [
      {
        title: 'Start and checks',
        standard: 'Knows what each red cross means and which of them keep the aircraft down',
      },
      {
        title: 'Speed and height at a glance',
        standard: 'Holds both within 100 ft and 10 kt in a turn, eyes half outside',
      },
      { title: 'Screen out', standard: 'Flies on by the other screen, then by the standby instruments' },
      { title: 'Backup battery', standard: 'Says how long it lasts and what it feeds' },
    ],
  },
  {
    ...{ key: 'night', title: 'Night checkout', condition: 'night', goodDays: 730 },
    items: [
      { title: 'Lights', standard: 'Aircraft and field: names each and what is done without it' },
      {
        title: 'Night landings',
        standard: 'Three to a full stop, two of them without landing light',
        manoeuvre: 'normal_landing',
      },
      {
        title: 'Go-around at night',
        standard: 'By instruments until a positive climb',
        manoeuvre: 'go_around',
      },
      { title: 'Electrical failure', standard: 'Sheds load in order and says how long is left' },
    ],
  },
  {
    ...{ key: 'short-field', title: 'Grass and short fields', condition: 'short-field', goodDays: 730 },
    items: [
      {
        title: 'Distances worked out',
        standard: 'From the tables, with grass, wind and slope, and the margin the club asks',
      },
      {
        ...{
          title: 'Short-field landings',
          standard: 'Three, at or within 200 ft beyond the point meant, braked firmly',
        },
        manoeuvre: 'short_field_landing',
      },
      {
        title: 'Short-field take-off',
        standard: 'Speed within 5 kt of the one meant until clear',
        manoeuvre: 'short_field_takeoff_climb',
      },
      {
        title: 'Soft field',
        standard: 'Weight off the nose wheel throughout',
        manoeuvre: 'soft_field_landing',
        extra: true,
      },
    ],
  },
  {
    ...{ key: 'annual-check', title: 'Annual check', goodDays: 365 },
    items: [
      { title: 'Papers and rules', standard: 'Finds in ten minutes what has changed since the last check' },
      TURN,
      STALL_OFF,
      ENGINE,
      LANDING,
    ],
  },
];
