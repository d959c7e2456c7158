/** What a whole club's timelines share: the same steps as each pair's own, and no rule followed twice for the same facts. */
import { toSeconds } from '../../../src/rules/calendar/instants.js';
import { clubTimelines } from '../../../src/rules/engine/club-timeline.js';
import { timelineOf } from '../../../src/rules/engine/timeline.js';
import { known, unknownFact } from '../../../src/rules/facts/fact.js';
import type { AircraftFacts, AircraftType } from '../../../src/rules/facts/aircraft.js';
import type { FactSheet } from '../../../src/rules/facts/sheet.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import type { FactView } from '../../../src/rules/engine/rule.js';
import { rulesetOf, toy } from './toy-rules.js';

const sheet = baseSheet();
const from = toSeconds(sheet.flight.departs);
const span = { from, to: from + 86_400 };
const type = (sheet.aircraft.type as { value: AircraftType }).value;
const plane = (id: string, change: Partial<AircraftType> | null): AircraftFacts => ({
  ...sheet.aircraft,
  id,
  type: change ? known({ ...type, ...change }, sheet.knownAt) : unknownFact('not on record'),
});
// Two of one type, one of another, and two whose type nobody wrote down.
const aircraft = [
  plane('a', { registration: 'XX-A' }),
  plane('b', { registration: 'XX-B' }),
  plane('c', { registration: 'XX-C', seats: type.seats - 1 }),
  plane('d', null),
  plane('e', null),
];
const members = ['member-1', 'member-2'].map((id) => sheet.people[id]!);
// The question holds those whom the flight names, and not the members who ask.
const base: Omit<FactSheet, 'aircraft'> = {
  ...sheet,
  people: { 'instructor-1': sheet.people['instructor-1']! },
};

let asked: Record<string, unknown[]> = {};
/** A rule that notes each time it is judged, and what it saw. */
const noting = (id: string, reads: string[], look: (f: FactView) => unknown) =>
  toy(
    id,
    (f, _moment, _p, take) => {
      const notes = (asked[id] ??= []);
      const index = notes.push('nothing') - 1;
      notes[index] = look(f);
      return take('good');
    },
    { reads: reads as never, weight: 'advice' },
  );
/** Made anew for each play: how much of the aircraft a rule reads is remembered by the rule. */
const rulesOf = () =>
  rulesetOf([
    noting('registration', ['aircraft.type'], (f) => f.get('aircraft.type').registration),
    noting('all', ['aircraft.type'], (f) => ({ ...f.get('aircraft.type') }).registration),
    noting('seats', ['aircraft.type'], (f) => f.get('aircraft.type').seats),
    noting('nothing', [], (f) => f.flight.purpose),
    noting('squawks', ['aircraft.type', 'aircraft.squawks'], (f) => f.get('aircraft.squawks')),
    noting('member', ['member.medicals'], (f) => f.get('member.medicals')),
    noting('pilot', ['pic.medicals', 'aircraft.type'], (f) => f.get('aircraft.type').seats),
    noting('instructor', ['instructor.medicals'], (f) => f.peek('instructor.medicals')),
  ]);

function play(change: Partial<FactSheet['flight']> = {}) {
  asked = {};
  const ruleset = rulesOf();
  const asAsked = { ...base, flight: { ...base.flight, ...change } };
  const pairs = [...clubTimelines({ base: asAsked, members, aircraft, ruleset, span })];
  return { pairs, ruleset, noted: structuredClone(asked) };
}

test('member by member, aircraft by aircraft, as each pair has it alone', () => {
  const { pairs, ruleset } = play();
  expect(pairs.map(({ memberId, aircraftId }) => `${memberId} ${aircraftId}`)).toEqual(
    ['member-1', 'member-2'].flatMap((member) => ['a', 'b', 'c', 'd', 'e'].map((id) => `${member} ${id}`)),
  );
  for (const { memberId, aircraftId, ...found } of pairs) {
    const alone: FactSheet = {
      ...sheet,
      flight: { ...sheet.flight, memberId },
      aircraft: aircraft.find(({ id }) => id === aircraftId)!,
    };
    expect(found).toEqual(timelineOf(alone, ruleset, span));
  }
});

// A type not on record stops a rule where it asks for it, hence the 'nothing'.
test.each([
  ['nothing', [sheet.flight.purpose]],
  ['seats', [type.seats, type.seats - 1, 'nothing']],
  ['registration', ['XX-A', 'XX-B', 'XX-C', 'nothing']],
  ['all', ['XX-A', 'XX-B', 'XX-C', 'nothing']],
  ['pilot', [...[1, 2].flatMap(() => [type.seats, type.seats - 1, 'nothing'])]],
])('%s: once for each that differs in what the rule looks at', (id, saw) => {
  expect(play().noted[id]).toEqual(saw);
});
test.each([
  ['squawks', 5],
  ['member', 2],
  ['instructor', 1],
])('%s: judged %i times for ten pairs', (id, times) => {
  expect(play().noted[id]).toHaveLength(times);
});

test('each member is judged on their own facts', () => {
  expect(play().noted.member).toEqual(members.map(({ medicals }) => (medicals as { value: unknown }).value));
});
test('one of the members is the instructor: what hangs on the aircraft alone is shared all the same', () => {
  const { noted } = play({ purpose: 'dual', instructorId: 'member-2', personsOnBoard: 2 });
  expect(noted.squawks).toHaveLength(5);
  expect(noted.instructor).toHaveLength(2);
});
