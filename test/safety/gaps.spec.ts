/** Practice gaps are counted by the model of rust, and nobody can be told from them. */
import { DECAY_EXAMPLE, type Flown } from '../../src/practice/rust/index.js';
import { FEWEST_TOLD, gapsOf, type Practised } from '../../src/safety/practice-gaps/gaps.js';

const BY = {
  ...{ decay: DECAY_EXAMPLE, limits: { crosswindKt: 8, gustKt: 8, shortRunwayFt: 2500 } },
  ...{ rustFrom: 0.5, on: '2026-03-10' },
};
const turn = (on: string, good: boolean | null = true): Flown => ({
  ...{ id: on, manoeuvre: 'steep_turn', on, good, crosswindKt: null, gustSpreadKt: null },
  ...{ night: null, runwayFt: null, equipment: null },
});
const pilot = (...flown: Flown[]): Practised => ({ levels: ['private'], flown });
const turns = (everybody: Practised[]) => gapsOf(everybody, BY).find(({ key }) => key === 'steep_turn|any')!;

test('one halving time is the edge: half is lost after thirty days, a day before it is not', () => {
  // 2026-02-08 is thirty days before 10 March: 1 − 2^(−30/30) = 0.5, which is as rusty as the club asks for.
  const found = turns([
    ...[pilot(turn('2026-02-08')), pilot(turn('2026-02-09')), pilot(turn('2026-03-10'))],
    ...[pilot(), pilot(turn('2026-03-01', false)), pilot(turn('2026-03-01', null))],
  ]);
  expect(found.members).toBe(6);
  // Outside the standard, or not judged, is not on record as done to it.
  expect(found.counts).toMatchObject({ never: 3, rusty: 1, fresh: 2 });
});

test('what is dated later is not yet known', () => {
  const found = turns(Array.from({ length: 5 }, () => pilot(turn('2026-03-11'))));
  expect(found.counts).toMatchObject({ never: 5, rusty: 0, fresh: 0 });
});

test(`of fewer than ${FEWEST_TOLD} nothing is told, and no middle of fewer either`, () => {
  const four = Array.from({ length: FEWEST_TOLD - 1 }, () => pilot(turn('2026-02-01')));
  expect(turns(four).counts).toBeNull();
  expect(turns(four).members).toBe(FEWEST_TOLD - 1);
  expect(turns([...four, pilot()]).counts).toMatchObject({
    rusty: FEWEST_TOLD - 1,
    never: 1,
    middleDays: null,
  });
  expect(turns([...four, pilot(turn('2026-03-09'))]).counts).toMatchObject({ middleDays: 37 });
});

test('a piece of equipment that few fly with tells of none of them', () => {
  const everybody = Array.from({ length: 9 }, (_none, index) =>
    pilot(index < 4 ? { ...turn('2026-02-01'), equipment: ['autopilot'] } : turn('2026-02-01')),
  );
  const found = gapsOf(everybody, BY);
  expect(found.at(-1)).toMatchObject({ key: 'steep_turn|equipment|autopilot', members: 4, counts: null });
});
