/** Facts found and replaced in a sheet, and what acts do to them. */
import { decideCrew } from '../../../src/rules/engine/crew.js';
import { canonicalJson, canonicalOf, digestOf } from '../../../src/rules/engine/digest.js';
import { applyRemedy, type Effect } from '../../../src/rules/engine/remedy.js';
import { known, unknownFact } from '../../../src/rules/facts/fact.js';
import { personInRole, readFact, replaceFact } from '../../../src/rules/facts/keys.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';

const sheet = baseSheet();
const lesson = {
  ...sheet,
  flight: { ...sheet.flight, purpose: 'dual' as const, instructorId: 'instructor-1' },
};
const crewOf = (of: typeof sheet) => decideCrew(of.flight, { secondPilotIsPassenger: true });
const crew = crewOf(sheet);

test('a fact is on record unless it is said otherwise', () => {
  expect(known(7, '2027-03-01T00:00:00Z')).toEqual({
    known: true,
    value: 7,
    lastKnownAt: '2027-03-01T00:00:00Z',
    status: 'recorded',
  });
  expect(known(7, '2027-03-01T00:00:00Z', 'declared').status).toBe('declared');
});

test('what is no JSON has no canonical form', () => {
  expect(canonicalJson({ b: 1, a: null })).toBe('{"a":null,"b":1}');
  expect(() => canonicalJson(undefined)).toThrow(new TypeError('only JSON values have a canonical form'));
  const ring: { self?: unknown } = {};
  ring.self = ring;
  for (const none of [{ a: 7n }, { a: Number.NaN }, { a: () => 7 }, ring])
    expect(() => canonicalJson(none)).toThrow();
});

test('members that are written already are put together in their order', () => {
  expect(canonicalOf({ b: '1', a: '[2]' })).toBe(canonicalJson({ b: 1, a: [2] }));
});

// The digest of `{}` is that of `printf '{}' | sha256sum`.
test('a digest is that of the canonical form', () => {
  expect(digestOf({})).toBe('44136fa355b3678a1146ad16f7e8649e94fb4fc21fe77e8310c060f61caaff8a');
});

test('roles: under instruction the instructor is in command, the member still asks', () => {
  const role = (of: typeof sheet) =>
    (['pic', 'member', 'instructor'] as const).map((one) => personInRole(of, crewOf(of), one));
  expect(role(sheet)).toEqual(['member-1', 'member-1', null]);
  expect(role(lesson)).toEqual(['instructor-1', 'member-1', 'instructor-1']);
});

test('a fact is found by role, and a want of it is told', () => {
  expect(readFact(sheet, crew, 'pic.medicals')).toBe(sheet.people['member-1']!.medicals);
  expect(readFact(lesson, crewOf(lesson), 'pic.medicals')).toBe(sheet.people['instructor-1']!.medicals);
  expect(readFact(sheet, crew, 'aircraft.type')).toBe(sheet.aircraft.type);
  expect(readFact(sheet, crew, 'instructor.medicals')).toEqual(unknownFact('the instructor is not named'));
  const unnamed = { ...lesson, flight: { ...lesson.flight, instructorId: null } };
  expect(readFact(unnamed, crewOf(unnamed), 'pic.medicals')).toEqual(
    unknownFact('the pilot in command is not named'),
  );
  const stranger = { ...sheet, people: {} };
  expect(readFact(stranger, crew, 'member.medicals')).toEqual(
    unknownFact('nothing is on record for the member'),
  );
  const { medicals: _gone, ...older } = sheet.people['member-1']!;
  expect(readFact({ ...sheet, people: { 'member-1': older as never } }, crew, 'pic.medicals')).toEqual(
    unknownFact('it was not yet kept when the facts were gathered'),
  );
});

test('a fact is replaced in a copy, and that of nobody not at all', () => {
  const fact = unknownFact('lost');
  const aloft = replaceFact(sheet, crew, 'aircraft.type', fact);
  expect(aloft.aircraft).toEqual({ ...sheet.aircraft, type: fact });
  const changed = replaceFact(sheet, crew, 'pic.medicals', fact);
  expect(changed.people).toEqual({
    ...sheet.people,
    'member-1': { ...sheet.people['member-1'], medicals: fact },
  });
  expect(sheet.people['member-1']!.medicals.known).toBe(true);
  expect(replaceFact(sheet, crew, 'instructor.medicals', fact)).toBe(sheet);
  const stranger = { ...sheet, people: {} };
  expect(replaceFact(stranger, crew, 'pic.medicals', fact)).toBe(stranger);
});

describe('what an act does', () => {
  const [medical] = (sheet.people['member-1']!.medicals as { value: { id: string }[] }).value;
  const after = (effect: Effect, of = sheet) =>
    applyRemedy(of, crew, { act: 'x', title: 'X.', by: 'member' as never, effects: [effect] });
  const medicals = (of: typeof sheet) => of.people['member-1']!.medicals;
  const planned = (value: unknown) => known(value, sheet.knownAt, 'planned');
  const lost = replaceFact(sheet, crew, 'pic.medicals', unknownFact('lost'));
  const record = { ...medical!, id: 'medical-new' };

  test('adds a record, first of its kind where none was known', () => {
    const append: Effect = { op: 'append', fact: 'pic.medicals', value: record };
    expect(medicals(after(append))).toEqual(planned([medical, record]));
    expect(medicals(after(append, lost))).toEqual(planned([record]));
  });
  test('changes the record it names and no other; where none is known there is none', () => {
    const two = after({ op: 'append', fact: 'pic.medicals', value: record });
    const amend: Effect = { op: 'amend', fact: 'pic.medicals', id: 'medical-new', fields: { class: 1 } };
    expect(medicals(after(amend, two))).toEqual(planned([medical, { ...record, class: 1 }]));
    expect(medicals(after(amend, lost))).toEqual(planned([]));
  });
  test('sets what is one record, and changes the request', () => {
    expect(medicals(after({ op: 'set', fact: 'pic.medicals', value: [] }))).toEqual(planned([]));
    const alone = after({ op: 'flight', fields: { personsOnBoard: 4 } });
    expect(alone).toEqual({ ...sheet, flight: { ...sheet.flight, personsOnBoard: 4 } });
  });
});
