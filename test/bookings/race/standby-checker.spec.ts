/** The checker finds what it is there for: each fault planted in a sound history of standby is told, and nothing in the sound one. */
import { faultsOf, type Done } from './history-checker.js';
import {
  standbyFaultsOf,
  type Answered,
  type Joined,
  type KeptEntry,
  type Shown,
} from './standby-checker.js';

const SLOT = { from: 0, to: 100 };
const booked = (memberId: string) => ({ aircraftId: 'A', people: [memberId], ...SLOT, status: 'booked' });

interface History {
  joined: Joined[];
  shown: Shown[];
  answered: Answered[];
  kept: KeptEntry[];
  ends: Record<string, number>;
  done: Done[];
}

/** First declines, second lets it run out, third takes it; fourth waits for another aircraft and takes it back. */
const sound = (): History => ({
  joined: [
    ...['first', 'second', 'third'].map((memberId) => ({
      entryId: memberId,
      memberId,
      aircraftId: 'A',
      ...SLOT,
    })),
    { entryId: 'fourth', memberId: 'fourth', aircraftId: null, ...SLOT },
  ],
  shown: ['first', 'second', 'third'].map((entryId, index) => ({
    ...{ offerId: `to ${entryId}`, entryId, aircraftId: 'A', holds: true, seenAt: 10 * (index + 1) },
  })),
  answered: [
    { kind: 'decline', entryId: 'first', offerId: 'to first', bookingId: null, calledAt: 11, answeredAt: 12 },
    { kind: 'take', entryId: 'third', offerId: 'to third', bookingId: 'made', calledAt: 31, answeredAt: 32 },
    { kind: 'withdraw', entryId: 'fourth', offerId: null, bookingId: null, calledAt: 33, answeredAt: 34 },
  ],
  kept: [
    { entryId: 'first', state: 'waiting', offers: [offer('first', 'declined')] },
    { entryId: 'second', state: 'over', offers: [offer('second', 'expired')] },
    { entryId: 'third', state: 'booked', offers: [{ ...offer('third', 'accepted'), bookingId: 'made' }] },
    { entryId: 'fourth', state: 'withdrawn', offers: [] },
  ],
  ends: { 'to second': 25 },
  done: [taken()],
});
const offer = (to: string, state: string) => ({
  offerId: `to ${to}`,
  state,
  bookingId: null,
  aircraftId: 'A',
});
const taken = (): Done => ({
  ...{ kind: 'take', bookingId: 'made', calledAt: 31, answeredAt: 32, onVersion: null, version: 1 },
  state: booked('third'),
});
const faults = ({ ends, done, ...history }: History): string[] =>
  standbyFaultsOf({ ...history, overAt: (id) => ends[id] ?? Infinity }, done);

test('nothing is found in a history that may have happened', () => {
  expect(faults(sound())).toEqual([]);
});

test('taken twice, it is one booking, and whoever comes second is told of it as it is by then', () => {
  const history = sound();
  const { answered, done } = history;
  const end = { ...booked('third'), to: 90 };
  answered.push({ ...answered[1]!, calledAt: 40, answeredAt: 41 });
  done.push(
    { ...taken(), kind: 'edit', calledAt: 35, answeredAt: 36, onVersion: 1, version: 2, state: end },
    { ...taken(), calledAt: 40, answeredAt: 41, version: 2, state: end },
  );
  expect(faults(history)).toEqual([]);
  const kept = [{ bookingId: 'made', version: 2, state: end, changes: 1 }];
  expect(faultsOf(done, kept)).toEqual([]);
  done.at(-1)!.state = booked('third');
  expect(faultsOf(done, kept).join()).toMatch(/made: taken as .* told as/);
  done.at(-1)!.version = 7;
  expect(faultsOf(done, kept).join()).toMatch(/taken at version 7, which nobody was told/);
});

test('a taking that is acknowledged and lost is found, as any booking is', () => {
  expect(faultsOf([taken()], [])).toEqual(['made: acknowledged and lost']);
});

const other = (calledAt: number, answeredAt: number): Done => ({
  ...{ kind: 'book', bookingId: 'other', calledAt, answeredAt, onVersion: null, version: 1 },
  state: booked('somebody'),
});

const PLANTED: [what: string, plant: (of: History) => void, says: RegExp][] = [
  ['a lost entry', ({ kept }) => void kept.shift(), /entry first: acknowledged and lost/],
  [
    'an entry out of nothing',
    ({ joined }) => void joined.pop(),
    /entry fourth: there, and never acknowledged/,
  ],
  [
    'an entry that waits on though it was taken',
    ({ kept }) => void (kept[2]!.state = 'waiting'),
    /entry third: stands as waiting/,
  ],
  [
    'an entry that waits on though it was taken back',
    ({ kept }) => void (kept[3]!.state = 'waiting'),
    /entry fourth: stands as/,
  ],
  [
    'an entry booked that nobody took',
    ({ kept }) => void (kept[1]!.state = 'booked'),
    /entry second: stands as booked/,
  ],
  [
    'an entry taken and withdrawn',
    ({ answered }) => void answered.push({ ...answered[2]!, entryId: 'third' }),
    /entry third: taken and withdrawn/,
  ],
  [
    'two offers of one entry accepted',
    ({ kept }) => void kept[2]!.offers.push({ ...kept[2]!.offers[0]!, offerId: 'another' }),
    /two of its offers are accepted/,
  ],
  [
    'an offer accepted that nobody was told of',
    ({ kept }) => void (kept[1]!.offers[0]!.state = 'accepted'),
    /offer to second: accepted, and nobody was told/,
  ],
  [
    'an offer answered in two ways',
    ({ answered }) => void answered.push({ ...answered[1]!, kind: 'decline', bookingId: null }),
    /answered take made, and decline null too/,
  ],
  [
    'an offer that made two bookings',
    ({ answered }) => void answered.push({ ...answered[1]!, bookingId: 'twin' }),
    /answered take made, and take twin too/,
  ],
  [
    'a taking that is not kept',
    ({ kept }) => void (kept[2]!.offers[0]!.state = 'expired'),
    /stands as expired made, was answered take/,
  ],
  [
    'a taking after its time',
    ({ ends }) => void (ends['to third'] = 30),
    /offer to third: answered take made after its time/,
  ],
  ['a taking without a booking', ({ done }) => void done.pop(), /taken without an entry or a booking/],
  ['a taking for somebody else', ({ done }) => void (done[0]!.state.people = ['x']), /not as was waited for/],
  ['a taking of another time', ({ done }) => void (done[0]!.state.to = 90), /not as was waited for/],
  [
    'a taking of another aircraft',
    ({ done }) => void (done[0]!.state.aircraftId = 'B'),
    /not as was waited for/,
  ],
  [
    'a slot that is kept, booked by another',
    ({ done }) => void done.push(other(21, 24)),
    /to second: kept for one member, and other was/,
  ],
  [
    'one slot offered to two at one time',
    ({ shown }) => void (shown[2]!.seenAt = 22),
    /offers to second and to third: one slot offered to two/,
  ],
];

test.each(PLANTED)('%s is found', (_what, plant, says) => {
  const history = sound();
  plant(history);
  expect(faults(history).join('\n')).toMatch(says);
});

test('a booking by another before the offer was seen, as it ran out, or of a slot that is not kept, is no fault', () => {
  for (const [at, until] of [
    [19, 22],
    [24, 26],
    [26, 27],
  ] as const) {
    const history = sound();
    history.done.push(other(at, until));
    expect(faults(history)).toEqual([]);
  }
  const open = sound();
  open.done.push(other(21, 24));
  open.shown[1]!.holds = false;
  expect(faults(open)).toEqual([]);
});

test('who books the slot that is kept for them leaves the offer without meaning', () => {
  const history = sound();
  history.done.push({ ...other(21, 22), bookingId: 'own', state: booked('second') }, other(23, 24));
  expect(faults(history)).toEqual([]);
});
