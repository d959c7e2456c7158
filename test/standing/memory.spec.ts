/** What is remembered of facts, and when it is let go: by itself, with marks as a database would tell them. */
import { Memory, type Marks } from '../../src/decisions/gather/remember/memory.js';
import { touches } from '../../src/decisions/gather/remember/touched.js';

const CLUB = { kind: 'club' } as const;
const AT = { clubId: 'c', what: CLUB, knownAt: '2026-03-10T15:00:00Z', nowMs: 0 };
const AS_OF = { snapshot: '10:10:', settled: true, standsUntil: '2026-03-11T00:00:00Z' };
const marks = (changed: Record<string, string[]>, more: Partial<Marks> = {}): Marks => ({
  ...{ snapshot: '20:20:', startedAt: 'one start', changed: new Map(Object.entries(changed)) },
  ...more,
});
const NOTHING = marks({ '10:10:': [] });
const facts = { name: 'Larkfield' };

/** A memory that has kept `facts`, and knows which server gave them. */
function kept(): Memory {
  const memory = new Memory();
  memory.recall(AT, marks({}));
  memory.keep(AT, facts, AS_OF);
  return memory;
}

describe('what was gathered', () => {
  it('is given again, frozen, while nothing that concerns it changed', () => {
    const memory = kept();
    expect(memory.snapshotsOf('c', [CLUB])).toEqual(['10:10:']);
    expect(memory.recall(AT, marks({ '10:10:': ['person:x:medicals'] }))).toBe(facts);
    expect(Object.isFrozen(facts)).toBe(true);
  });

  it.each<[string, Parameters<Memory['recall']>]>([
    ['what concerns it changed', [AT, marks({ '10:10:': ['policy:club.x'] })]],
    ['the marks say nothing of its snapshot', [AT, marks({ '9:9:': [] })]],
    ['the database was started again', [AT, marks({ '10:10:': [] }, { startedAt: 'another start' })]],
    ['it stands no longer', [{ ...AT, knownAt: '2026-03-11T00:00:00Z' }, NOTHING]],
    ['the question is of an earlier time', [{ ...AT, knownAt: '2026-03-10T14:59:59Z' }, NOTHING]],
    ['nobody asked for ten minutes', [{ ...AT, nowMs: 600_001 }, NOTHING]],
    ['it is another club', [{ ...AT, clubId: 'd' }, NOTHING]],
  ])('is not, where %s', (_why, [of, seen]) => {
    expect(kept().recall(of, seen)).toBeNull();
  });

  it('is not kept by a transaction that may still take it back', () => {
    const memory = new Memory();
    memory.recall(AT, marks({}));
    memory.keep(AT, facts, { ...AS_OF, settled: false });
    expect(memory.guess('c', CLUB)).toBeNull();
  });

  it('is found by who asked about the snapshot it had a moment ago, and by who asks about the newer one', () => {
    const memory = kept();
    expect(memory.recall({ ...AT, nowMs: 6000 }, NOTHING)).toBe(facts);
    expect(memory.snapshotsOf('c', [CLUB])).toEqual(['20:20:']);
    for (const snapshot of ['10:10:', '20:20:'])
      expect(memory.recall({ ...AT, nowMs: 6001 }, marks({ [snapshot]: [] }))).toBe(facts);
    expect(memory.recall({ ...AT, nowMs: 6002 }, marks({ '20:20:': ['club:zone'] }))).toBeNull();
  });

  it('gives way to what came later when there is too much of it', () => {
    const memory = kept();
    for (let id = 0; id < 1000; id += 1)
      memory.keep({ ...AT, what: { kind: 'person', id: String(id) } }, {}, AS_OF);
    expect(memory.guess('c', CLUB)).toBeNull();
    expect(memory.guess('c', { kind: 'person', id: '999' })).toEqual({});
  });
});

describe('a change touches', () => {
  const [person, aircraft] = [
    { kind: 'person', id: 'p' },
    { kind: 'aircraft', id: 'a' },
  ] as const;
  it.each([
    ['club:zone', CLUB, true],
    ['club:airfields', person, true],
    ['club:checkouts', aircraft, true],
    ['policy:club.x', CLUB, true],
    ['policy:club.x', person, false],
    ['airfield:f', CLUB, true],
    ['airfield:f', aircraft, false],
    ['person:p:log', person, true],
    ['person:q:log', person, false],
    ['person:q:standing', aircraft, true],
    ['person:q:medicals', aircraft, false],
    ['aircraft:a:squawks', aircraft, true],
    ['aircraft:b:squawks', aircraft, false],
    ['aircraft:b:type', aircraft, true],
    ['aircraft:b:type', person, true],
    ['aircraft:b:type', { kind: 'fleet' } as const, true],
    ['aircraft:b:squawks', { kind: 'fleet' } as const, false],
    ['booking:b', person, false],
  ])('%s: %j, %s', (subject, what, touched) => {
    expect(touches(subject, what)).toBe(touched);
  });
});
