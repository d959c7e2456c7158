/** Rules small enough to know by heart, for trying the engine alone. */
import { ParameterBook } from '../../../src/rules/engine/parameters.js';
import { defineRule, type Rule, type Take } from '../../../src/rules/engine/rule.js';
import type { Moment } from '../../../src/rules/engine/moment.js';
import type { Parameters } from '../../../src/rules/engine/parameters.js';
import type { FactView } from '../../../src/rules/engine/rule.js';
import type { Ruleset } from '../../../src/rules/engine/judge.js';
import type { PolicyValue } from '../../../src/rules/facts/sheet.js';
import type { Parameter } from '../../../src/rules/parameters/parameter.js';

type Judge = (
  f: FactView,
  moment: Moment,
  p: Parameters,
  take: Take<'good' | 'bad' | 'conditional' | 'none'>,
) => ReturnType<Take<string>>;

/** A rule with the usual branches. */
export function toy(id: string, judge: Judge, change: Partial<Rule> = {}): Rule {
  return defineRule({
    id: `toy.${id}`,
    title: id,
    weight: 'law',
    binds: 'flight',
    reads: [],
    parameters: [],
    branches: {
      good: { status: 'met', says: 'Good.' },
      bad: { status: 'short', says: 'Bad.' },
      conditional: { status: 'met', says: 'Good if.' },
      none: { status: 'not-applicable', says: 'Does not bind.' },
    },
    bodies: [
      {
        version: 1,
        from: null,
        to: null,
        citation: { text: 'toy', status: 'club paper' },
        judge: judge as never,
      },
    ],
    ...change,
  } as never) as unknown as Rule;
}

/** Good through a date, bad after it. */
export const through = (id: string, date: string, change: Partial<Rule> = {}): Rule =>
  toy(id, (_f, moment, _p, take) => take(moment.endsOnOrBefore(date) ? 'good' : 'bad'), change);

/** Bad until a date, good from it on. */
export const since = (id: string, date: string, change: Partial<Rule> = {}): Rule =>
  toy(id, (_f, moment, _p, take) => take(moment.startsOnOrAfter(date) ? 'good' : 'bad'), change);

/** Turns every midnight. */
export const daily = (id: string, change: Partial<Rule> = {}): Rule =>
  toy(
    id,
    (_f, moment, _p, take) => {
      const even = Number(moment.departureDate().slice(-2)) % 2 === 0;
      return take('conditional', {}, { conditions: [even ? 'Even days.' : 'Odd days.'] });
    },
    change,
  );

export function rulesetOf(rules: Rule[], parameters: Parameter[] = [], policy: PolicyValue[] = []): Ruleset {
  return { rules, book: new ParameterBook(parameters, { values: policy }) };
}
