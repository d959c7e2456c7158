/** What a rule with many limits lacks, and the one remedy that puts all of it right. */
import type { Actor, Remedy } from '../../src/rules/index.js';
import { curesOf, NO_CURE, saysAll, type Shortfall } from '../../src/rules/packs/common/people/shortfalls.js';

const cure = (by: Actor, title = `Go to the ${by}.`, persons = 1): Remedy => ({
  act: `go-${by}`,
  title,
  by,
  effects: [{ op: 'flight', fields: { personsOnBoard: persons } }],
});
const lacks = (what: string, ...cures: Remedy[]): Shortfall => ({ what, cures: () => cures });

test('said in one clause', () => {
  expect(saysAll([{ what: 'too heavy' }, { what: 'too late' }])).toBe('too heavy; too late');
});

test('of one shortfall every cure is offered, under its own name', () => {
  const both = [cure('member'), cure('examiner')];
  expect(curesOf([lacks('x', ...both)], 'all')).toEqual(both);
});

test('of several the first cure of each, together', () => {
  expect(
    curesOf(
      [
        lacks('x', cure('member', 'Fly by day.', 1), cure('examiner')),
        lacks('y', cure('member', 'Wait.', 2)),
      ],
      'all',
    ),
  ).toEqual([
    {
      act: 'all',
      title: 'Fly by day. Wait.',
      by: 'member',
      effects: [
        { op: 'flight', fields: { personsOnBoard: 1 } },
        { op: 'flight', fields: { personsOnBoard: 2 } },
      ],
    },
  ]);
});

test('the same said twice is said once', () => {
  const same = cure('member', 'Fly by day.');
  expect(curesOf([lacks('x', same), lacks('y', same)], 'all')[0]!.title).toBe('Fly by day.');
});

test('what nothing puts right leaves nothing to offer', () => {
  expect(curesOf([lacks('x', cure('member')), { what: 'y', cures: NO_CURE }], 'all')).toEqual([]);
  expect(curesOf([{ what: 'y', cures: NO_CURE }], 'all')).toEqual([]);
});

// A plan of several acts waits for whoever is furthest from the member.
test.each<[Actor[], Actor]>([
  [['member', 'instructor'], 'instructor'],
  [['instructor', 'examiner'], 'examiner'],
  [['examiner', 'medical-examiner'], 'medical-examiner'],
  [['medical-examiner', 'instructor', 'member'], 'medical-examiner'],
  [['examiner', 'member'], 'examiner'],
  [['member', 'member'], 'member'],
])('%j wait for the %s', (actors, hardest) => {
  const all = actors.map((by) => lacks('x', cure(by)));
  for (const some of [all, [...all].reverse()]) expect(curesOf(some, 'all')[0]!.by).toBe(hardest);
});
