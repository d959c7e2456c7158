/** The checker finds what it is there for: each fault planted in a sound history is told, and nothing in the sound one. */
import { faultsOf, type Done, type Kept, type State } from './history-checker.js';

const state = (more: Partial<State> = {}): State => ({
  ...{ aircraftId: 'A', people: ['p'], from: 0, to: 100, status: 'booked' },
  ...more,
});
const book = (id: string, at: [number, number], of: State): Done => ({
  ...{
    kind: 'book',
    bookingId: id,
    calledAt: at[0],
    answeredAt: at[1],
    onVersion: null,
    version: 1,
    state: of,
  },
});
/** Booked, moved away, and the first slot taken by somebody else after that. */
const sound = (): { done: Done[]; kept: Kept[] } => {
  const moved = state({ from: 200, to: 300 });
  const other = state({ people: ['q'] });
  return {
    done: [
      book('one', [1, 2], state()),
      { ...book('one', [3, 6], moved), kind: 'edit', onVersion: 1, version: 2 },
      book('two', [4, 5], other),
    ],
    kept: [
      { bookingId: 'one', version: 2, state: moved, changes: 1 },
      { bookingId: 'two', version: 1, state: other, changes: 0 },
    ],
  };
};

test('nothing is found in a history that may have happened', () => {
  const { done, kept } = sound();
  expect(faultsOf(done, kept)).toEqual([]);
});

const PLANTED: [what: string, plant: (of: ReturnType<typeof sound>) => void, says: RegExp][] = [
  ['a lost booking', ({ kept }) => void kept.splice(1, 1), /two: acknowledged and lost/],
  ['a booking out of nothing', ({ done }) => void done.splice(2, 1), /two: there, and never acknowledged/],
  ['a lost edit', ({ kept }) => void (kept[0]!.state = state()), /one: stands as/],
  [
    'an edit without its entry in the history',
    ({ kept }) => void (kept[0]!.changes = 0),
    /0 entries, 1 were/,
  ],
  [
    'two edits of one version',
    ({ done }) => void done.push({ ...done[1]!, version: 3 }),
    /made on 1, not on 2/,
  ],
  ['one version given twice', ({ done }) => void done.push({ ...done[1]! }), /version 2 was given twice/],
  [
    'an answer before what it follows was called',
    ({ done }) => void Object.assign(done[0]!, { calledAt: 7, answeredAt: 8 }),
    /answered before 1 was called/,
  ],
  [
    'the slot given away before it was free',
    ({ done }) => {
      Object.assign(done[2]!, { calledAt: 2.1, answeredAt: 2.2 });
      done.push({ ...done[2]!, kind: 'edit', calledAt: 9, answeredAt: 10, onVersion: 1, version: 2 });
    },
    /one and two: both in force/,
  ],
  [
    'one person in two aircraft in the end',
    ({ done, kept }) => {
      const busy = state({ aircraftId: 'B', people: ['p'], from: 250, to: 280 });
      kept[1]!.state = busy;
      done[2]!.state = busy;
    },
    /one and two: both in force/,
  ],
];

test.each(PLANTED)('%s is found', (_what, plant, says) => {
  const history = sound();
  plant(history);
  expect(faultsOf(history.done, history.kept).join('\n')).toMatch(says);
});
