/**
 * A booked flight judged again: the answer of the whole judgement, and the name of everything it was read from. Source:
 * the engine's own contract (a booking is looked at again when, and only when, what it was read from has changed).
 */
import { toSeconds } from '../../../src/rules/calendar/instants.js';
import type { Rule } from '../../../src/rules/engine/rule.js';
import { stand } from '../../../src/rules/engine/stand.js';
import { weigh } from '../../../src/rules/engine/weigh.js';
import type { FlightFacts } from '../../../src/rules/facts/flight.js';
import type { FactSheet, PolicyValue } from '../../../src/rules/facts/sheet.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import { rulesetOf, toy } from './toy-rules.js';

const SECOND_PILOT = 'policy:club.crew.second-pilot-is-passenger';
const flying = (change: Partial<FlightFacts>): FactSheet => {
  const sheet = baseSheet();
  return { ...sheet, flight: { ...sheet.flight, ...change } };
};
const standing = (sheet: FactSheet, rules: Rule[], policy: PolicyValue[] = []) =>
  stand(sheet, rulesetOf(rules, [], policy), toSeconds(sheet.flight.departs));

/** Reads the log of the pilot in command, and refuses. */
const logged = toy('logged', (f, _m, _p, take) => (f.get('pic.log'), take('bad')), { reads: ['pic.log'] });
const squawked = toy('squawked', (f, _m, _p, take) => (f.get('aircraft.squawks'), take('good')), {
  reads: ['aircraft.squawks', 'aircraft.type'],
});
/** Refuses unless instruction is given. */
const taught = toy('taught', (f, _m, _p, take) => take(f.crew.instruction ? 'good' : 'bad'));
const conditional = toy('if', (_f, _m, _p, take) => take('conditional', {}, { conditions: ['Look.'] }));

test('says what was read, by whose it is, and nothing that was only declared; in order of the name', () => {
  const { answer, reads, blocking } = standing(flying({ purpose: 'dual', instructorId: 'instructor-1' }), [
    squawked,
    logged,
  ]);
  expect(answer).toBe('no');
  expect(blocking.map(({ rule }) => rule)).toEqual(['toy.logged']);
  expect(reads).toEqual([
    `aircraft:${baseSheet().aircraft.id}:squawks`,
    'person:instructor-1:log',
    SECOND_PILOT,
  ]);
});

test('a fact of a role that nobody fills names nobody, and cannot be known', () => {
  const { answer, reads } = standing(flying({ purpose: 'dual', instructorId: null, personsOnBoard: 2 }), [
    logged,
  ]);
  expect(reads).toEqual([SECOND_PILOT]);
  // What binds the flight does not wait for the instructor's name.
  expect(answer).toBe('no');
});

test('numbers that the club sets are named, too', () => {
  const rule = toy('n', (_f, _m, p, take) => take(p.number('club.toy') > 1 ? 'good' : 'bad'), {
    parameters: ['club.toy'],
  });
  const policy = [{ id: 'club.toy', from: '2020-01-01', value: 2, reference: 'x' }];
  expect(standing(baseSheet(), [rule], policy)).toMatchObject({
    answer: 'yes',
    blocking: [],
    reads: [SECOND_PILOT, 'policy:club.toy'],
  });
});

test('what only asks how a booking is made is not asked of one that stands', () => {
  const early = toy('lead', (f, _m, _p, take) => (f.get('pic.log'), take('bad')), {
    reads: ['pic.log'],
    onlyWhenBooking: true,
  });
  expect(standing(baseSheet(), [early])).toMatchObject({ answer: 'yes', reads: [SECOND_PILOT] });
});

test('refused alone, it is looked at with an instructor aboard, and what that reads counts', () => {
  const withInstructor = toy(
    'dual',
    (f, _m, _p, take) => {
      if (!f.crew.instruction) return take('bad');
      f.get('member.log');
      return take('good');
    },
    { reads: ['member.log'] },
  );
  const alone = standing(flying({ purpose: 'solo' }), [withInstructor]);
  expect(alone).toMatchObject({ answer: 'dual-only', reads: ['person:member-1:log', SECOND_PILOT] });
  expect(alone.blocking.map(({ rule }) => rule)).toEqual(['toy.dual']);
  expect(alone.crew).toMatchObject({ instruction: false, picId: 'member-1' });
});

test('what is allowed as asked is not looked at with an instructor, nor is what instruction already is', () => {
  const readsWhenTaught = toy(
    'dual',
    (f, _m, _p, take) => (f.crew.instruction && f.get('member.log'), take('good')),
    {
      reads: ['member.log'],
    },
  );
  expect(standing(flying({ purpose: 'solo' }), [readsWhenTaught])).toMatchObject({
    answer: 'yes',
    reads: [SECOND_PILOT],
  });
  // The instructor named may not teach this; that another might is no answer to this flight.
  const notThisOne = toy('who', (f, _m, _p, take) => take(f.crew.picId === 'instructor-1' ? 'bad' : 'good'));
  const dual = flying({ purpose: 'dual', instructorId: 'instructor-1', personsOnBoard: 2 });
  expect(standing(dual, [notThisOne]).answer).toBe('no');
});

test.each<[string, Partial<FlightFacts>, Rule[]]>([
  ['good', {}, [squawked]],
  ['with a condition', {}, [conditional, squawked]],
  ['refused', {}, [logged, conditional]],
  ['refused, and with an instructor not', { purpose: 'passengers', personsOnBoard: 2 }, [taught]],
  ['refused with an instructor, too', { purpose: 'solo' }, [taught, logged]],
  ['with an instructor not named yet', { purpose: 'dual', instructorId: null, personsOnBoard: 2 }, [taught]],
  ['an officer may be asked', {}, [toy('club', (_f, _m, _p, take) => take('bad'), { weight: 'club' })]],
])('the answer is that of the whole judgement: %s', (_name, change, rules) => {
  const sheet = flying(change);
  const whole = weigh(sheet, rulesetOf(rules), toSeconds(sheet.flight.departs));
  const { answer, crew } = standing(sheet, rules);
  expect({ answer, crew }).toEqual({ answer: whole.answer, crew: whole.crew });
});
