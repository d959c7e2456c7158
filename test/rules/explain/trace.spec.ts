/** What a rule is seen to ask for while it chooses its branch, and what a derivation makes of it. */
import {
  ALL_RULES,
  decide,
  defineRule,
  known,
  rulesetFor,
  startingPolicy,
  type ClubRule,
  type FactSheet,
  type Finding,
  type Rule,
} from '../../../src/rules/index.js';
import {
  ACTOR_WORD,
  catalogueOf,
  derive,
  explainAnswer,
  explainSun,
  readable,
} from '../../../src/rules/explain/index.js';
import { ACTS_SEEN } from '../../../src/rules/explain/acts-seen.js';
import type { Body } from '../../../src/rules/engine/rule.js';
import type { FactKey } from '../../../src/rules/facts/keys.js';
import { baseSheet, HOME_FIELD } from '../../../src/rules/workshop/base-sheet.js';
import { LOG } from '../../../src/rules/workshop/records.js';
import { rule as clubRule } from '../club-rules/scene.js';

const POLICY = startingPolicy();
const US = rulesetFor('US', POLICY);
const person = (sheet: FactSheet) => sheet.people['member-1']!;

const READS: FactKey[] = ['pic.log', 'pic.birthDate', 'aircraft.type', 'aircraft.use'];
type Judge = Body<FactKey, 'held' | 'missed'>['judge'];

/** The derivation of a rule made for the purpose. */
function watched(judge: Judge, change: (sheet: FactSheet) => void = () => {}) {
  const rule = defineRule({
    ...{ id: 'x.y', title: 'X', weight: 'law', binds: 'pilot', reads: READS, parameters: [] },
    branches: { held: { status: 'met', says: 'Held.' }, missed: { status: 'short', says: 'Missed.' } },
    bodies: [{ version: 1, from: null, to: null, citation: { text: 'X 1', status: 'seen' }, judge }],
  }) as unknown as Rule;
  const sheet = baseSheet();
  change(sheet);
  const ruleset = { ...US, rules: [rule] };
  const finding = decide(sheet, POLICY, ruleset).findings[0]!;
  const why = derive(finding, { sheet, ruleset, asOf: sheet.flight.departs }, null);
  expect(why.reproduced).toBe(true);
  return {
    why,
    facts: why.facts.map(({ key }) => key),
    unread: why.unread.map(({ key }) => key),
    type: why.facts.find(({ key }) => key === 'aircraft.type')?.records[0]?.says ?? null,
  };
}

describe('facts', () => {
  test('are those the rule asked for, in the order in which it did, and the rest are named as not needed', () => {
    const { facts, unread } = watched((f, _m, _p, take) => {
      f.peek('pic.log');
      f.get('pic.birthDate');
      return take('held');
    });
    expect(facts).toEqual(['pic.log', 'pic.birthDate']);
    expect(unread).toEqual(['aircraft.type', 'aircraft.use']);
  });

  test('of one record tell each field that was looked at, whenever it was', () => {
    const { type, why } = watched((f, _m, _p, take) => {
      const { seats } = f.get('aircraft.type');
      const again = f.peek('aircraft.type');
      return take(seats > 1 && again.known && again.value.tailwheel ? 'missed' : 'held');
    });
    expect(type).toBe('4 seats, no tailwheel');
    expect(why.facts).toHaveLength(1);
  });

  test('of one record that was asked for and not looked into tell just that', () => {
    const { why } = watched((f, _m, _p, take) => take(f.peek('aircraft.use').known ? 'held' : 'missed'));
    expect(why.facts[0]).toMatchObject({
      records: [],
      more: 0,
      nothing: 'Looked at; nothing of it decided.',
    });
  });

  test('that are lists or dates are given to the rule as they are', () => {
    const seen: unknown[] = [];
    watched((f, _m, _p, take) => {
      seen.push(f.get('pic.log'), f.get('pic.birthDate'));
      return take('held');
    });
    // Judged once to decide, once more to explain.
    expect(Array.isArray(seen[2])).toBe(true);
    expect(seen.slice(2)).toEqual(seen.slice(0, 2));
  });

  test('that are missing are told to be, and so is the crew and the flight that was asked for', () => {
    const { why } = watched(
      (f, _m, _p, take) => {
        if (f.peek('pic.birthDate').known || f.crew.passengers > 0) return take('held');
        return take(f.flight.personsOnBoard > 1 ? 'held' : 'missed');
      },
      (sheet) => (person(sheet).birthDate = { known: false, because: 'nobody asked for it' }),
    );
    expect(why.finding.branch).toBe('missed');
    expect(why.facts[0]).toMatchObject({ known: false, because: 'nobody asked for it' });
    expect(why.request).toEqual(['no passengers', '1 on board']);
  });

  test('that only the ways out look at are not among them', () => {
    const { facts, unread, why, type } = watched((f, _m, _p, take) => {
      const { seats } = f.get('aircraft.type');
      const { flight, crew } = f;
      return take(
        seats > 9 ? 'held' : 'missed',
        {},
        {
          remedies: () => {
            f.get('pic.log');
            f.peek('aircraft.use');
            const { tailwheel } = f.get('aircraft.type');
            const title = `${tailwheel} ${flight.personsOnBoard} ${crew.passengers}`;
            return [{ act: 'an-act', title, by: 'member', effects: [] }];
          },
        },
      );
    });
    expect(why.finding.remedies).toHaveLength(1);
    expect(facts).toEqual(['aircraft.type']);
    expect(type).toBe('4 seats');
    expect(unread).toEqual(['pic.log', 'pic.birthDate', 'aircraft.use']);
    expect(why.request).toEqual([]);
  });

  test('that a rule could not do without are told, though it came to no branch', () => {
    const { facts, why } = watched(
      (f, _m, _p, take) => take(f.get('pic.log').length > 0 ? 'held' : 'missed'),
      (sheet) => (person(sheet).log = { known: false, because: 'the log is being copied' }),
    );
    expect(facts).toEqual(['pic.log']);
    expect(why.finding.says).toBe('Cannot tell: the log is being copied.');
    expect(why.branches.map(({ name, taken }) => [name, taken])).toEqual([
      ['held', false],
      ['missed', false],
    ]);
  });

  test('are as they were kept when the rule has gone since', () => {
    const sheet = baseSheet();
    const { findings } = decide(sheet, POLICY, US);
    const finding = findings.find(({ rule }) => rule === 'recency.passengers.day')!;
    const from = { sheet, ruleset: { ...US, rules: [] }, asOf: sheet.flight.departs };
    expect(derive(finding, from, null)).toMatchObject({
      ...{ reproduced: false, body: null, branches: [], unread: [], sun: [], request: [], change: null },
      facts: finding.reads.map((key) => ({ key })),
    });
  });
});

test('a rule that fails is told as one that could not be judged', () => {
  const { why } = watched(() => {
    throw new Error('a slip');
  });
  expect(why).toMatchObject({ statusWord: 'could not be judged', facts: [] });
  expect(why.finding.says).toBe('This rule could not be judged (a slip).');
});

describe('the sun is shown', () => {
  const asking = (knownTo: number, clock?: true): Judge => {
    return (_f, moment, _p, take) => {
      const length = moment.watch(({ departs, arrives }) => ({
        ...{ answer: arrives - departs, edges: [], knownTo },
        ...(clock && { clock }),
      }));
      return take(length === 3600 ? 'held' : 'missed');
    };
  };
  const LATER = Date.parse('2027-03-02T18:00:00Z') / 1000;

  test('to a rule whose verdict asked about it, and the rule is answered as ever', () => {
    const { why } = watched(asking(LATER));
    expect(why.sun.map(({ field }) => field)).toEqual(['XQHB']);
    expect(why.finding.branch).toBe('held');
  });

  test('not to one that asked for a sentence, for a way out, or not at all', () => {
    expect(watched(asking(Number.POSITIVE_INFINITY)).why.sun).toEqual([]);
    expect(watched((_f, _m, _p, take) => take('held')).why.sun).toEqual([]);
    const forRemedies: Judge = (_f, moment, _p, take) =>
      take(
        'missed',
        {},
        {
          remedies: () => {
            moment.watch(() => ({ answer: 0, edges: [], knownTo: LATER }));
            return [];
          },
        },
      );
    expect(watched(forRemedies).why.sun).toEqual([]);
  });

  test('not to a rule of the club that asks what the clock shows; to one that asks about the night', () => {
    expect(watched(asking(LATER, true)).why.sun).toEqual([]);
    const sunOf = (requirement: string): string[] => {
      const own: ClubRule[] = [clubRule({ requirement })];
      const policy = { ...POLICY, rules: own };
      const ruleset = rulesetFor('US', policy);
      const sheet = baseSheet();
      const { findings } = decide(sheet, policy, ruleset);
      const finding = findings.find(({ rule }) => rule === 'club.own.test')!;
      return derive(finding, { sheet, ruleset, asOf: sheet.flight.departs }, null).sun.map(
        ({ field }) => field,
      );
    };
    expect(sunOf('flight.departsHour >= 8')).toEqual([]);
    expect(sunOf('flight.arrivesBy("18:00")')).toEqual([]);
    expect(sunOf('!flight.atNight')).toEqual(['XQHB']);
  });

  test('an hour after sunset is an hour after sunset, on every day of the year', () => {
    const sheet = baseSheet();
    const minutes = (said: string): number => {
      const [, hour, minute] = /(\d\d):(\d\d)$/.exec(said)!;
      return Number(hour) * 60 + Number(minute);
    };
    const first = Date.parse('2027-01-01T18:00:00Z') / 1000;
    const apart = Array.from({ length: 365 }, (_, day) => {
      const { says } = explainSun(sheet, first + day * 86_400)[0]!;
      expect(says.map((said) => said.replace(/ \d.*$/, ''))).toEqual([
        ...['morning twilight begins', 'sunrise', 'sunset', 'evening twilight ends'],
        'an hour after sunset',
      ]);
      return minutes(says[4]!) - minutes(says[2]!);
    });
    // To the second: the clock drops seconds, so one more or less would show on some days.
    expect(new Set(apart)).toEqual(new Set([60]));
  });

  test('that rises for the last time before the midnight sun is told to rise, and not to set', () => {
    // At 70 N the sun stays up from about 17 May to 26 July (almanac, from memory).
    const sheet = baseSheet();
    const field = { ...HOME_FIELD, latitudeDeg: 70, longitudeDeg: 15, zone: sheet.zone };
    sheet.flight = { ...sheet.flight, route: [field] };
    const [seen] = explainSun(sheet, Date.parse('2027-05-16T12:00:00Z') / 1000);
    expect(seen!.says).toEqual([expect.stringMatching(/^sunrise \d\d:\d\d$/)]);
  });

  test('at each field once, and at none whose place is not on record', () => {
    const sheet = baseSheet();
    const lost = { ...HOME_FIELD, code: 'XQLO', latitudeDeg: 999 };
    const other = { ...HOME_FIELD, code: 'XQNR' };
    sheet.flight = { ...sheet.flight, route: [HOME_FIELD, lost, other, HOME_FIELD] };
    const fields = explainSun(sheet, Date.parse(sheet.flight.departs) / 1000).map(({ field }) => field);
    expect(fields).toEqual(['XQHB', 'XQNR']);
  });
});

describe('what changes then', () => {
  const at = '2027-03-10T07:00:00Z';
  const from = '2027-03-10';
  const derived = (judge: Judge) => watched(judge).why;

  test('is told with the verdict it becomes', () => {
    const why = derived((_f, m, _p, take) => take(m.startsOnOrAfter(from) ? 'missed' : 'held'));
    expect(why.change).toEqual({
      ...{ at, says: `Changes for a departure from ${at}.` },
      then: { status: 'short', statusWord: 'not met', says: 'Missed.', conditions: [] },
    });
  });

  test('may be a condition alone', () => {
    const why = derived((_f, m, _p, take) =>
      take('held', {}, { conditions: m.startsOnOrAfter(from) ? ['Look at the sky.'] : [] }),
    );
    expect(why.change).toMatchObject({
      ...{ at, says: `Changes for a departure from ${at}.` },
      then: { status: 'met', statusWord: 'met', says: 'Held.', conditions: ['Look at the sky.'] },
    });
  });
});

describe('the text that was in force', () => {
  test('is the one the finding names, among the rule’s own', () => {
    const sheet = baseSheet();
    const rule = defineRule({
      ...{ id: 'x.y', title: 'X', weight: 'law', binds: 'pilot', reads: [], parameters: [] },
      branches: { held: { status: 'met', says: 'Held.' } },
      bodies: [
        { version: 4, from: null, to: '2027-01-01' },
        { version: 5, from: '2027-01-01', to: null },
      ].map((dates) => ({
        ...{ ...dates, citation: { text: `X ${dates.version}`, status: 'from memory' as const } },
        judge: (_f: unknown, _m: unknown, _p: unknown, take: (branch: 'held') => never) => take('held'),
      })),
    }) as unknown as Rule;
    const ruleset = { ...US, rules: [rule] };
    const [finding] = decide(sheet, POLICY, ruleset).findings;
    const from = { sheet, ruleset, asOf: sheet.flight.departs };
    const why = derive(finding!, from, null);
    expect(why.body).toMatchObject({ version: 5, inForce: true, citation: { text: 'X 5' } });
    expect(why.body).toMatchObject({ sourceWord: 'from memory, not yet held against the text' });
    expect(why.branches).toEqual([
      { name: 'held', status: 'met', statusWord: 'met', says: 'Held.', taken: true },
    ]);
    expect(derive({ ...finding!, version: 4 }, from, null).body).toMatchObject({
      version: 4,
      inForce: false,
    });
    expect(derive({ ...finding!, version: 6 }, from, null).body).toBeNull();
  });
});

describe('an answer', () => {
  const answerOn = (change: (sheet: FactSheet) => void) => {
    const sheet = baseSheet();
    change(sheet);
    const decision = decide(sheet, POLICY, US);
    return {
      decision,
      explained: explainAnswer(decision, { sheet, ruleset: US, asOf: sheet.flight.departs }),
    };
  };

  test('tells the flight in the words of the request', () => {
    const { explained, decision } = answerOn(() => {});
    expect(explained.flight.says).toEqual([
      ...['no passengers', 'VFR', '1 on board', 'no instructor named', 'no second pilot named'],
      ...['route XQHB – XQHB', '1.0 h planned on the meter'],
    ]);
    expect(explained).toMatchObject({ answer: decision.answer, says: decision.says });
    expect(explained.conditions).toEqual(decision.conditions);
  });

  test('names the rules that change it, and no others', () => {
    const { explained, decision } = answerOn(() => {});
    const { until, because } = decision.horizon;
    const titles = (findings: readonly Finding[]) =>
      findings.filter(({ rule }) => because.includes(rule)).map(({ title }) => `“${title}”`);
    expect(because).toHaveLength(1);
    const [title] = titles(decision.findings);
    expect(explained.horizon.says).toMatch(new RegExp(`^Holds for a departure before ${until}; then “`));
    expect(explained.horizon.says.endsWith(`by the rule ${title}.`)).toBe(true);
  });

  test('has no name for an instructor whose record is not there', () => {
    const { explained } = answerOn((sheet) => {
      sheet.flight = { ...sheet.flight, purpose: 'dual', personsOnBoard: 2, instructorId: 'gone' };
    });
    expect(explained.crew).toMatchObject({ picId: 'gone', pic: null });
  });
});

describe('the rule book', () => {
  test('fills a gap at the end without a second stop, and leaves one in the middle alone', () => {
    expect(readable('Held until {on}. Renew it.')).toBe('Held until …. Renew it.');
    expect(readable('Held {on}.')).toBe('Held …');
  });

  test('knows no act without a rule, and each with who does it and how it is said', () => {
    const rules = new Set(ALL_RULES.map(({ id }) => id));
    for (const [rule, acts] of Object.entries(ACTS_SEEN)) {
      expect(rules.has(rule)).toBe(true);
      for (const { act, by, example } of acts)
        expect([act, ACTOR_WORD[by], example]).toEqual([
          expect.stringMatching(/^[a-z]+(-[a-z0-9]+)+$/),
          expect.any(String),
          expect.stringMatching(/^[A-Z].*\.$/),
        ]);
    }
  });

  test('offers the acts that cure a rule, each by whom, and nothing that is no act', () => {
    const book = catalogueOf(US, '2027-03-01');
    expect(book.find(({ id }) => id === 'registration.validity')!.cures).toEqual([
      { act: 'renew-registration', by: 'administrator', example: 'Renew the registration of the aircraft.' },
    ]);
  });
});

describe('a long list', () => {
  test('shows five of the others, and says how many more there are', () => {
    const sheet = baseSheet();
    const entries = Array.from({ length: 7 }, (_, at) => ({ ...LOG, id: `log-${at}` }));
    const { why } = watched(
      (f, _m, _p, take) => take(f.get('pic.log').length > 0 ? 'held' : 'missed'),
      (of) => (person(of).log = known(entries, sheet.knownAt)),
    );
    expect(why.facts[0]).toMatchObject({ more: 2, nothing: null });
    expect(why.facts[0]!.records).toHaveLength(5);
  });

  test('a fact of the aircraft is nobody’s, on a lesson too; a single record needs no more', () => {
    const { why } = watched(
      (f, _m, _p, take) => take(f.get('aircraft.type').seats > 1 ? 'held' : 'missed'),
      (sheet) => (sheet.flight = { ...sheet.flight, purpose: 'dual', instructorId: 'member-1' }),
    );
    expect(why.facts[0]).toMatchObject({ whose: null, nothing: null });
    expect(why.facts[0]!.records).toHaveLength(1);
  });
});
