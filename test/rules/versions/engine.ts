/** How the engine puts decisions together, from a few rules of its own that no pack has. */
import {
  bookFrom,
  decide,
  defineRule,
  digestOf,
  ruleList,
  type FactSheet,
  type Policy,
  type Rule,
} from '../../../src/rules/index.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import { short, type Behaviour } from './behaviour.js';

const POLICY: Policy = { values: [] };
const CITATION = { text: 'A test', status: 'common practice, no source' } as const;
const forEver = { version: 1, from: null, to: null, citation: CITATION };

/** Met until a day, short after; with a condition on the way there. */
const untilDay = (id: string, weight: Rule['weight'], day: string, binds: Rule['binds'] = 'pilot') =>
  defineRule({
    ...{ id, weight, binds, title: `Until ${day}`, reads: [], parameters: [] },
    branches: {
      yes: { status: 'met', says: 'It holds until {day}.' },
      no: { status: 'short', says: 'It held until {day}.' },
    },
    bodies: [
      {
        ...forEver,
        judge: (_facts, moment, _parameters, take) =>
          moment.endsOnOrBefore(day)
            ? take(
                'yes',
                { day },
                { conditions: moment.startsOnOrAfter('2027-03-02') ? ['Look again.'] : [] },
              )
            : take('no', { day }),
      },
    ],
  });

const RULES = ruleList(
  untilDay('law.first', 'law', '2027-03-10'),
  untilDay('club.second', 'club', '2027-03-05', 'club'),
  untilDay('advice.third', 'advice', '2027-01-01', 'aircraft'),
  defineRule({
    ...{ id: 'law.night', title: 'By day', weight: 'law', binds: 'flight', reads: [], parameters: [] },
    branches: {
      day: { status: 'met', says: 'By day.' },
      dual: { status: 'not-applicable', says: 'Instruction.' },
    },
    bodies: [
      {
        ...forEver,
        to: '2027-03-20',
        judge: (facts, _moment, _p, take) => take(facts.crew.instruction ? 'dual' : 'day'),
      },
      {
        ...{ ...forEver, version: 2, from: '2027-03-20' },
        judge: (facts, _moment, _p, take) =>
          facts.flight.personsOnBoard > 1
            ? take('dual')
            : take('day', {}, { counted: [{ id: 'x', on: null, what: 'one' }] }),
      },
    ],
  }),
  defineRule({
    ...{
      id: 'law.unknown',
      title: 'Weather',
      weight: 'law',
      binds: 'flight',
      reads: ['pic.log'],
      parameters: [],
    },
    ...{ settledAt: 'departure', whenUnknown: 'Settle the weather.' },
    branches: { fine: { status: 'met', says: 'Fine.' } },
    bodies: [
      {
        ...forEver,
        judge: (facts, _moment, _p, take) => {
          facts.get('pic.log');
          return take('fine');
        },
      },
    ],
  }),
);

/** Decisions on a dozen flights, whole. */
export function engineBehaviour(): Behaviour {
  const ruleset = { rules: RULES, book: bookFrom([], POLICY) };
  return Object.fromEntries(
    flights().map(([name, sheet]) => [name, short(digestOf(decide(sheet, POLICY, ruleset)))]),
  );
}

/** A dozen flights of the base sheet, by name. */
export function flights(): [string, FactSheet][] {
  const with_ = (
    fields: Partial<FactSheet['flight']>,
    change: (sheet: FactSheet) => void = () => undefined,
  ) => {
    const sheet = baseSheet();
    Object.assign(sheet.flight, fields);
    change(sheet);
    return sheet;
  };
  const at = (day: string) => ({ departs: `${day}T18:00:00Z`, arrives: `${day}T19:30:00Z` });
  const noLog = (sheet: FactSheet): void => {
    sheet.people['member-1']!.log = { known: false, because: 'the log is not on record' };
  };
  const dual = { purpose: 'dual', personsOnBoard: 2 } as const;
  const two = { personsOnBoard: 2, secondPilotId: 'member-2', actingPilotId: 'member-2' };
  return [
    ['alone', with_({})],
    ['alone, later', with_(at('2027-03-08'))],
    ['alone, too late for the law', with_(at('2027-03-12'))],
    ['alone, under the next body', with_(at('2027-03-25'))],
    ['alone, log unknown', with_({}, noLog)],
    ['with friends', with_({ purpose: 'passengers', personsOnBoard: 3 })],
    ['with friends, too late', with_({ purpose: 'passengers', personsOnBoard: 3, ...at('2027-03-12') })],
    ['a lesson, nobody named', with_(dual)],
    ['a lesson', with_({ ...dual, instructorId: 'instructor-1' })],
    ['a lesson, too late', with_({ ...dual, ...at('2027-03-12') })],
    ['two pilots', with_(two)],
    ['two pilots, one required', with_({ ...two, secondPilotRequired: true })],
  ];
}
