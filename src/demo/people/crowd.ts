/** The rest of the club: members who are there so that the club looks like one. */
import { Draw } from '../draw.js';
import type { ModelKey } from '../fleet/models.js';
import type { ModelCheckout, Must, Story } from './story.js';

const NAMES: readonly [string, number][] = [
  ['Abel Thornquist', 22], ['Bianca Reyes-Holt', 28], ['Caleb Ostby', 17], ['Daria Munk', 31], ['Elias Farnham', 26],
  ['Freya Nakagawa', 41], ['Goran Petty', 35], ['Helene Abara', 20], ['Ivo Castleman', 48], ['Jolene Stavely', 39],
  ['Kofi Lundgren', 33], ['Livia Harrow', 57], ['Milo Dessaline', 45], ['Noor Whitcombe', 29], ['Oren Blackwood', 62],
  ['Petra Okonjo', 37], ['Quentin Sayle', 53], ['Rosalind Bekker', 44], ['Silas Montrose', 66], ['Tamsin Grell', 27],
  ['Ulrich Pascoe', 58], ['Vera Lindholm', 34], ['Wendell Achebe', 40], ['Ximena Hartley', 32], ['York Delacroix', 51],
  ['Zelda Fairweather', 47], ['Amos Kettleby', 55],
]; // prettier-ignore

/** The first students, then private pilots, instrument pilots, commercial pilots. */
const STUDENTS = 8;
const PRIVATE = 19;
const INSTRUMENT = 24;

/** The crowd, from the club's seed. */
export function crowd(seed: string): Story[] {
  return NAMES.map(([name, age], index) => {
    const draw = new Draw(`${seed}/crowd/${name}`);
    const key = name.toLowerCase().replace(/[^a-z]+/g, '-');
    const base = { key, name, age, reviewMonthsAgo: draw.int(2, 19), medical: medicalOf(draw, age) };
    if (index < STUDENTS) return student(draw, base);
    return rated(draw, base, index);
  });
}

type Base = Pick<Story, 'key' | 'name' | 'age' | 'reviewMonthsAgo' | 'medical'>;

/** Good for as long as the shorter of the two durations of a third class, in most cases. */
function medicalOf(draw: Draw, age: number): Story['medical'] {
  return { class: 3, monthsAgo: draw.int(2, age < 38 ? 40 : 20) };
}

function student(draw: Draw, base: Base): Story {
  const solo = draw.chance(0.5);
  return {
    ...base,
    reviewMonthsAgo: undefined,
    joinedMonthsAgo: draw.int(3, 14),
    level: 'student',
    certificateMonthsAgo: 3,
    medical: { class: 3, monthsAgo: draw.int(3, 14) },
    models: [],
    ...(solo ? { soloDaysAgo: draw.int(12, 78) } : {}),
    rate: draw.int(3, 6),
  };
}

function rated(draw: Draw, base: Base, index: number): Story {
  const instrument = index >= PRIVATE;
  const commercial = index >= INSTRUMENT;
  const models = modelsOf(draw, index);
  const checkDaysAgo = draw.int(20, 330);
  const flown: Must[] = models.slice(0, 2).map(({ model }, order): Must => ({
    daysAgo: draw.int(12, 40) + order,
    model,
    what: instrument && order === 0 && model !== 'wicket' ? 'approaches' : 'landings',
    landings: draw.int(3, 5),
    approaches: 6,
  }));
  return {
    ...base,
    joinedMonthsAgo: draw.int(20, 120),
    level: commercial ? 'commercial' : 'private',
    certificateMonthsAgo: draw.int(30, 160),
    instrument,
    multiEngine: models.some(({ model }) => model === 'gemel'),
    ...(commercial ? { medical: { class: 2 as const, monthsAgo: draw.int(2, 11) } } : {}),
    checkDaysAgo,
    models,
    ...(models.some(({ model }) => model === 'almanac') ? { differencesDaysAgo: draw.int(40, 130) } : {}),
    rate: draw.int(2, 5) / 2,
    night: instrument || draw.chance(0.3),
    trips: draw.chance(0.6),
    approaches: instrument,
    musts: flown,
  };
}

function modelsOf(draw: Draw, index: number): ModelCheckout[] {
  const older = (model: ModelKey): ModelCheckout => ({ model, daysAgo: draw.int(600, 1500) });
  const lately = (model: ModelKey): ModelCheckout => ({ model, daysAgo: draw.int(150, 480) });
  if (index >= INSTRUMENT)
    return draw.pick([
      [older('traverse'), older('gemel')],
      [older('lindle'), older('traverse'), lately('gemel')],
      [older('almanac'), older('lindle')],
    ]);
  if (index >= PRIVATE)
    return draw.pick([
      [older('traverse'), older('almanac')],
      [older('almanac'), older('sprig')],
      [older('lindle'), older('traverse')],
    ]);
  return draw.pick([
    [older('sprig')],
    [older('sprig'), older('almanac')],
    [older('almanac'), older('sprig'), lately('lindle')],
    [older('sprig'), lately('wicket')],
    [older('wicket'), older('sprig')],
  ]);
}
