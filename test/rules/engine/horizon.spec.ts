/**
 * Until when an answer holds, and the answer over a span, on rules known by heart. What is right follows from the dates in the rules;
 * the timeline is also held against weighing the flight anew at every edge and the seconds beside it.
 */
import { toInstant, toSeconds } from '../../../src/rules/calendar/instants.js';
import { DEFAULT_HORIZON, decide, versionsOf } from '../../../src/rules/engine/decide.js';
import { stepsOf } from '../../../src/rules/engine/follow.js';
import { byAnswer, firstSlot, timelineOf } from '../../../src/rules/engine/timeline.js';
import { pullOf } from '../../../src/rules/engine/combine.js';
import { verdictDiffers } from '../../../src/rules/engine/run.js';
import { instructionIsAWay, weigh, withUnnamedInstructor } from '../../../src/rules/engine/weigh.js';
import type { Rule } from '../../../src/rules/engine/rule.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import { daily, rulesetOf, since, through, toy } from './toy-rules.js';

const sheet = baseSheet();
const DEPARTS = toSeconds(sheet.flight.departs);
const DAY = 86_400;
/** The first second after a flight of an hour could still end on that date, and the first of a date; in winter. */
const over = (date: string): string => toInstant(toSeconds(`${date}T07:00:00Z`) + DAY - 3600);
const begins = (date: string): string => `${date}T07:00:00Z`;
const decided = (rules: Rule[], limits = DEFAULT_HORIZON, of = sheet) =>
  decide(of, { values: [] }, rulesetOf(rules), of.flight.departs, limits);

describe('the horizon', () => {
  test('nothing changes: looked as far as asked', () => {
    const { answer, horizon, findings } = decided([toy('x', (_f, _m, _p, take) => take('good'))], {
      days: 10,
      stepsPerRule: 9,
    });
    expect(answer).toBe('yes');
    expect(horizon).toEqual({
      until: null,
      becomes: null,
      because: [],
      searchedTo: toInstant(DEPARTS + 10 * DAY),
    });
    expect(findings[0]!.until).toBeNull();
  });
  test('the nearest change of the answer, what it becomes and by which rules', () => {
    const { answer, horizon, findings } = decided([
      through('a', '2027-03-05'),
      through('b', '2027-03-03'),
      through('c', '2027-03-03'),
    ]);
    expect(answer).toBe('yes');
    // Refused as asked, and an instructor would not help.
    expect(horizon).toEqual({
      until: over('2027-03-03'),
      becomes: 'no',
      because: ['toy.b', 'toy.c'],
      searchedTo: over('2027-03-03'),
    });
    expect(findings.map(({ until }) => until)).toEqual([
      over('2027-03-05'),
      over('2027-03-03'),
      over('2027-03-03'),
    ]);
  });
  test('a refusal ends when the last thing in the way goes', () => {
    const { answer, horizon, findings } = decided([since('a', '2027-03-05'), since('b', '2027-03-03')]);
    expect([answer, horizon.until, horizon.becomes, horizon.because]).toEqual([
      'no',
      begins('2027-03-05'),
      'yes',
      ['toy.a'],
    ]);
    expect(findings.map(({ until }) => until)).toEqual([begins('2027-03-05'), begins('2027-03-03')]);
  });
  test('a condition that comes is a change', () => {
    const rule = toy('x', (_f, m, _p, take) =>
      m.startsOnOrAfter('2027-03-04') ? take('conditional', {}, { conditions: ['C.'] }) : take('good'),
    );
    expect(decided([rule]).horizon).toMatchObject({
      until: begins('2027-03-04'),
      becomes: 'yes-with-conditions',
    });
  });
  test('another branch of the same verdict is none', () => {
    const rule = toy('x', (_f, m, _p, take) =>
      take(m.startsOnOrAfter('2027-03-04') ? 'conditional' : 'good'),
    );
    const { horizon, findings } = decided([rule]);
    expect([horizon.until, findings[0]!.until]).toEqual([null, null]);
  });
  test('advice moves its own verdict and not the answer', () => {
    const { horizon, findings } = decided([through('x', '2027-03-03', { weight: 'advice' })]);
    expect([horizon.until, findings[0]!.until]).toEqual([null, over('2027-03-03')]);
  });
  test('where something refuses for good, the answer is not followed, each verdict is', () => {
    const stuck = toy('stuck', (_f, _m, _p, take) => take('bad'));
    const { horizon, findings } = decided([stuck, through('x', '2027-03-03')]);
    expect(horizon).toEqual({
      until: null,
      becomes: null,
      because: [],
      searchedTo: toInstant(DEPARTS + 400 * DAY),
    });
    expect(findings.map(({ until }) => until)).toEqual([null, over('2027-03-03')]);
  });
  test('and each to where it comes out otherwise, past the instants at which it only might', () => {
    const stuck = toy('stuck', (_f, _m, _p, take) => take('bad'));
    const asks = toy('asks', (_f, moment, _p, take) => {
      moment.startsOnOrAfter('2027-03-02');
      moment.startsOnOrAfter('2027-03-04');
      return take(moment.endsOnOrBefore('2027-03-05') ? 'good' : 'bad');
    });
    const { findings } = decided([stuck, asks]);
    expect(findings.map(({ until }) => until)).toEqual([null, over('2027-03-05')]);
    // So it is once the answer has changed.
    const after = decided([through('first', '2027-03-01'), asks]);
    expect(after.horizon.until).toBe(over('2027-03-01'));
    expect(after.findings[1]!.until).toBe(over('2027-03-05'));
  });
  test('a rule that turns too often is given up, and it is said up to where', () => {
    const { horizon, findings } = decided([daily('x', { weight: 'advice' }), through('y', '2027-03-10')], {
      days: 30,
      stepsPerRule: 3,
    });
    // The first change is the verdict's own: even and odd days differ.
    expect(findings[0]!.until).toBe(begins('2027-03-02'));
    expect(horizon).toEqual({ until: null, becomes: null, because: [], searchedTo: begins('2027-03-05') });
    // The other is followed to its own end: it is not judged where nothing of it changes.
    expect(findings[1]!.until).toBe(over('2027-03-10'));
  });
  test('one that is given up where the answer is not followed leaves the search as long as asked', () => {
    const stuck = toy('stuck', (_f, _m, _p, take) => take('bad'));
    const asks = toy('asks', (_f, moment, _p, take) => {
      for (const day of ['2027-03-02', '2027-03-03', '2027-03-04']) moment.startsOnOrAfter(day);
      return take('good');
    });
    const { horizon, findings } = decided([stuck, asks], { days: 30, stepsPerRule: 2 });
    expect(horizon.searchedTo).toBe(toInstant(DEPARTS + 30 * DAY));
    expect(findings[1]!.until).toBe(begins('2027-03-04'));
  });
  test('only what comes out otherwise is told as the reason of a change', () => {
    const asks = toy('asks', (_f, moment, _p, take) => {
      moment.endsOnOrBefore('2027-03-03');
      return take('good');
    });
    const { horizon } = decided([asks, through('a', '2027-03-03')]);
    expect(horizon).toMatchObject({ until: over('2027-03-03'), because: ['toy.a'] });
  });
  test('where a rule is given up, what changes at that instant is not told either', () => {
    const { horizon } = decided([daily('x', { weight: 'advice' }), since('y', '2027-03-05')], {
      days: 30,
      stepsPerRule: 3,
    });
    expect(horizon).toEqual({ until: null, becomes: null, because: [], searchedTo: begins('2027-03-05') });
  });
  test('a refusal that nothing ends holds to the end of the search, however often others turn', () => {
    const stuck = toy('stuck', (_f, _m, _p, take) => take('bad'));
    const { horizon } = decided([stuck, daily('x', { weight: 'advice' })], { days: 30, stepsPerRule: 3 });
    expect(horizon.searchedTo).toBe(toInstant(DEPARTS + 30 * DAY));
  });
  test('exactly enough steps are enough', () => {
    const { horizon } = decided([through('y', '2027-03-03')], { days: 30, stepsPerRule: 1 });
    expect(horizon.until).toBe(over('2027-03-03'));
    expect(decided([through('y', '2027-03-03')], { days: 30, stepsPerRule: 0 }).horizon).toMatchObject({
      until: null,
      searchedTo: over('2027-03-03'),
    });
  });
  test('a change on the last second of the search is beyond it', () => {
    const days = (toSeconds(over('2027-03-03')) - DEPARTS) / DAY;
    const { horizon, findings } = decided([through('y', '2027-03-03')], { days, stepsPerRule: 9 });
    expect([horizon.until, findings[0]!.until]).toEqual([null, over('2027-03-03')]);
    expect(
      decided([through('y', '2027-03-03')], { days: days + 1 / DAY, stepsPerRule: 9 }).horizon.until,
    ).toBe(over('2027-03-03'));
  });
});

describe('with an instructor', () => {
  const pilot = (rule: Rule): Rule => ({ ...rule, binds: 'pilot' });
  test('what binds the pilot alone leaves dual flight', () => {
    const { answer, horizon } = decided([pilot(since('x', '2027-03-05'))]);
    expect([answer, horizon.until, horizon.becomes]).toEqual(['dual-only', begins('2027-03-05'), 'yes']);
  });
  test('the dual flight is followed too', () => {
    const stuck = pilot(toy('stuck', (_f, _m, _p, take) => take('bad')));
    const { answer, horizon, findings } = decided([stuck, through('x', '2027-03-03')]);
    expect([answer, horizon.until, horizon.becomes, horizon.because]).toEqual([
      'dual-only',
      over('2027-03-03'),
      'no',
      ['toy.x'],
    ]);
    expect(findings.map(({ until }) => until)).toEqual([null, over('2027-03-03')]);
  });
  test('instruction is a way only where it is not one already, and only from a refusal', () => {
    const asked = (purpose: string) =>
      instructionIsAWay({ ...sheet, flight: { ...sheet.flight, purpose: purpose as never } }, 'no');
    expect(['solo', 'passengers', 'dual', 'checkout', 'maintenance'].map(asked)).toEqual([
      true,
      true,
      false,
      false,
      false,
    ]);
    expect(
      (['no', 'ask-officer', 'yes', 'dual-only'] as const).map((answer) => instructionIsAWay(sheet, answer)),
    ).toEqual([true, true, false, false]);
  });
  test('one more seat is taken, by somebody still to be named', () => {
    const { flight } = withUnnamedInstructor({
      ...sheet,
      flight: { ...sheet.flight, secondPilotId: 'member-2', actingPilotId: 'member-2', instructorId: 'x' },
    });
    expect(flight).toMatchObject({
      purpose: 'dual',
      instructorId: null,
      secondPilotId: null,
      actingPilotId: null,
      personsOnBoard: 2,
    });
  });
  test('an officer’s leave is worth less than a lesson', () => {
    expect(decided([pilot(toy('x', (_f, _m, _p, take) => take('bad'), { weight: 'club' }))]).answer).toBe(
      'dual-only',
    );
    expect(decided([toy('x', (_f, _m, _p, take) => take('bad'), { weight: 'club' })]).answer).toBe(
      'ask-officer',
    );
  });
});

describe('a decision', () => {
  const rules = [
    through('x', '2027-03-03'),
    toy('c', (_f, _m, _p, take) => take('conditional', {}, { conditions: ['C.'] })),
  ];
  test('carries what it stands on', () => {
    const decision = decided(rules);
    expect(decision).toMatchObject({
      schema: 'bellcrank.decision/1',
      answer: 'yes-with-conditions',
      asOf: sheet.flight.departs,
      knownAt: sheet.knownAt,
      conditions: ['C.'],
      crew: { picId: 'member-1' },
    });
    expect(decision.caution).toMatch(/pilot in command/i);
    expect(decision.says).toMatch(/\.$/);
    expect(versionsOf(rulesetOf(rules))).toEqual({ 'toy.x': [1], 'toy.c': [1] });
  });
  test('its digest moves with the sheet, the policy, the departure and the rules', () => {
    const ruleset = rulesetOf(rules);
    const of = (s = sheet, policy = { values: [] as never[] }, set = ruleset, asOf = sheet.flight.departs) =>
      decide(s, policy, set, asOf).digest;
    const policy = { values: [{ id: 'x', from: '2020-01-01', value: 1, reference: 'x' }] as never[] };
    const later = toInstant(DEPARTS + 1);
    const digests = [
      of(),
      of({ ...sheet, zone: 'UTC' }),
      of(sheet, policy),
      of(sheet, undefined, rulesetOf(rules.slice(1))),
      of(sheet, undefined, undefined, later),
    ];
    expect(new Set(digests).size).toBe(5);
    expect(of()).toBe(digests[0]);
  });
  test('an instant written another way gives the same bytes', () => {
    const ruleset = rulesetOf(rules);
    const one = decide(sheet, { values: [] }, ruleset, '2027-03-01T18:00:00Z');
    expect(decide(sheet, { values: [] }, ruleset, '2027-03-01T11:00:00-07:00')).toEqual(one);
  });
});

describe('the answer over a span', () => {
  const span = { from: DEPARTS, to: DEPARTS + 10 * DAY };
  const rules = [
    { ...since('pilot', '2027-03-03'), binds: 'pilot' as const },
    through('law', '2027-03-08'),
    since('club', '2027-03-05', { weight: 'club' }),
    daily('daily', { weight: 'advice' }),
    through('advice', '2027-03-04', { weight: 'advice' }),
  ];
  const ruleset = rulesetOf(rules);
  const { steps, cutAt } = timelineOf(sheet, ruleset, span);

  test('equals weighing the flight anew at every edge and beside it', () => {
    expect(cutAt).toBeNull();
    expect(steps[0]!.from).toBe(span.from);
    expect(steps.at(-1)!.to).toBe(span.to);
    for (const [index, step] of steps.entries()) {
      if (index > 0) expect(step.from).toBe(steps[index - 1]!.to);
      for (const at of [step.from, step.from + 1, Math.floor((step.from + step.to) / 2), step.to - 1]) {
        const { answer, judged, crew } = weigh(sheet, ruleset, at);
        const inTheWay = judged
          .filter(({ finding }) => pullOf(finding, crew) !== 'none')
          .map(({ finding }) => finding.rule);
        expect([toInstant(at), step.answer, step.inTheWay]).toEqual([toInstant(at), answer, inTheWay]);
      }
    }
  });
  test('tells what changed at each edge', () => {
    expect(steps.map(({ from, answer }) => [toInstant(from), answer])).toEqual([
      [toInstant(DEPARTS), 'no'],
      [begins('2027-03-03'), 'ask-officer'],
      [begins('2027-03-05'), 'yes-with-conditions'],
      [over('2027-03-08'), 'no'],
    ]);
    expect(steps[0]!.changed).toEqual([]);
    expect(steps[2]!.changed).toContainEqual({
      rule: 'toy.club',
      was: 'short',
      is: 'met',
      withInstructor: false,
    });
    expect(steps[3]!.changed).toEqual(
      expect.arrayContaining([{ rule: 'toy.law', was: 'met', is: 'short', withInstructor: false }]),
    );
  });
  test('runs of one answer are joined', () => {
    const club = (id: string, date: string) => since(id, date, { weight: 'club' });
    const apart = timelineOf(
      sheet,
      rulesetOf([club('a', '2027-03-03'), club('b', '2027-03-05')]),
      span,
    ).steps;
    expect(apart.map(({ answer, inTheWay }) => [answer, inTheWay])).toEqual([
      ['ask-officer', ['toy.a', 'toy.b']],
      ['ask-officer', ['toy.b']],
      ['yes', []],
    ]);
    const opens = toSeconds(begins('2027-03-05'));
    expect(byAnswer(apart).map(({ from, to, answer }) => [from, to, answer])).toEqual([
      [span.from, opens, 'ask-officer'],
      [opens, span.to, 'yes'],
    ]);
    expect(apart[0]!.to).toBe(toSeconds(begins('2027-03-03')));
  });
  test('the first departure that will do', () => {
    const good = ['yes-with-conditions'] as const;
    expect(firstSlot(steps, good, span.from)).toBe(toSeconds(begins('2027-03-05')));
    expect(firstSlot(steps, good, toSeconds(begins('2027-03-06')))).toBe(toSeconds(begins('2027-03-06')));
    expect(firstSlot(steps, good, toSeconds(over('2027-03-08')))).toBeNull();
    expect(firstSlot(steps, ['no'], span.from)).toBe(span.from);
    expect(firstSlot(steps, ['no'], toSeconds(begins('2027-03-03')))).toBe(toSeconds(over('2027-03-08')));
    expect(firstSlot(steps, ['dual-only'], span.from)).toBeNull();
  });
  test('with an instructor where that opens the flight, and its changes are marked', () => {
    const stuck = { ...toy('stuck', (_f, _m, _p, take) => take('bad')), binds: 'pilot' as const };
    const dual = timelineOf(sheet, rulesetOf([stuck, through('law', '2027-03-03')]), span);
    expect(dual.steps.map(({ from, answer }) => [toInstant(from), answer])).toEqual([
      [toInstant(DEPARTS), 'dual-only'],
      [over('2027-03-03'), 'no'],
    ]);
    expect(dual.steps[1]!.changed).toContainEqual({
      rule: 'toy.law',
      was: 'met',
      is: 'short',
      withInstructor: true,
    });
    expect(dual.steps[1]!.inTheWay).toEqual(['toy.stuck', 'toy.law']);
  });
  test('a rule that is not followed to the end counts as unknown from there', () => {
    const cut = timelineOf(sheet, rulesetOf([daily('x')]), span, (rule, of) =>
      stepsOf(rule, of, rulesetOf([rule]), span, 3),
    );
    expect(cut.cutAt).toBe(toSeconds(begins('2027-03-04')));
    expect(cut.steps.at(-1)).toMatchObject({ answer: 'no', inTheWay: ['toy.x'] });
  });
});

describe('one rule followed', () => {
  const span = { from: DEPARTS, to: DEPARTS + 4 * DAY };
  test('neighbouring steps differ, and each begins at a change', () => {
    const { steps, cutAt } = stepsOf(daily('x'), sheet, rulesetOf([]), span, 100);
    expect(cutAt).toBeNull();
    expect(steps.map(({ from }) => toInstant(from))).toEqual([
      toInstant(DEPARTS),
      ...['02', '03', '04', '05'].map((day) => begins(`2027-03-${day}`)),
    ]);
    steps
      .slice(1)
      .forEach((step, index) => expect(verdictDiffers(step.verdict, steps[index]!.verdict)).toBe(true));
    // To and fro is kept once.
    expect(steps[2]!.verdict).toBe(steps[0]!.verdict);
  });
  test('what makes no difference makes no step', () => {
    const rule = toy('x', (_f, m, _p, take) => (m.departureDate(), take('good')));
    expect(stepsOf(rule, sheet, rulesetOf([]), span, 100).steps).toHaveLength(1);
  });
  test('a verdict is its status and its conditions in order', () => {
    const of = (status: 'met' | 'short', ...conditions: string[]) => ({ status, conditions });
    const same = of('met', 'a', 'b');
    expect([
      verdictDiffers(same, same),
      verdictDiffers(same, of('met', 'a', 'b')),
      verdictDiffers(same, of('short', 'a', 'b')),
      verdictDiffers(same, of('met', 'a')),
      verdictDiffers(same, of('met', 'b', 'a')),
      verdictDiffers(of('met'), of('met')),
    ]).toEqual([false, false, true, true, true, false]);
  });
});

describe('a rule followed', () => {
  const follow = (rule: Rule, to: string) =>
    stepsOf(rule, sheet, rulesetOf([rule]), { from: DEPARTS, to: toSeconds(to) }, 99);
  test('up to the end of the span, which is no part of it', () => {
    const rule = through('x', '2027-03-03');
    const statuses = (to: string) => follow(rule, to).steps.map(({ verdict }) => verdict.status);
    expect(statuses(over('2027-03-03'))).toEqual(['met']);
    expect(statuses(toInstant(toSeconds(over('2027-03-03')) + 1))).toEqual(['met', 'short']);
  });
  test('by the branch it takes, though the one before the last came to the same', () => {
    const rule = toy('x', (_f, moment, _p, take) => {
      if (moment.startsOnOrAfter('2027-03-04')) return take('conditional');
      return take(moment.startsOnOrAfter('2027-03-03') ? 'bad' : 'good');
    });
    const { steps, cutAt } = follow(rule, begins('2027-03-06'));
    expect(steps.map(({ verdict }) => verdict.branch)).toEqual(['good', 'bad', 'conditional']);
    expect(cutAt).toBeNull();
  });
});
