import { localDateOf, toSeconds, type Finding } from '../../../src/rules/index.js';
import { derive, type Derivation } from '../../../src/rules/explain/index.js';
import { runCase } from '../../../src/rules/workshop/run-case.js';
import type { Case } from '../../../src/rules/workshop/case-table.js';
import { TABLES } from './case-tables.js';

function derivationOf(
  rule: string,
  one: Case,
): {
  finding: Finding;
  why: Derivation;
  zone: string;
  reportIds: string[];
} {
  const { sheet, ruleset, finding } = runCase(rule, one);
  return {
    finding,
    zone: sheet.zone,
    reportIds: (sheet.flight.reports ?? []).map(({ id }) => id),
    why: derive(finding, { sheet, ruleset, asOf: sheet.flight.departs }, null),
  };
}

/** What a sentence shows where a value was missing, or a word of the program where people should read theirs. */
const HOLE = /undefined|\bnull\b|NaN|\[object|\{\w*\}|^$| {2}|\b[a-z]+[A-Z]\w*/;

describe.each(TABLES)('$rule', ({ rule, cases }) => {
  test.each(cases)('$name', (one) => {
    const { finding, why, zone, reportIds } = derivationOf(rule, one);
    expect(why.reproduced).toBe(true);
    expect(why.note).toBeNull();

    // Everything counted is found again among the records of the facts read; reports of the weather stand with the request.
    const counted = why.facts.flatMap((fact) => fact.records.filter((record) => record.counted !== null));
    const ofRequest = finding.counted.filter(({ id }) => reportIds.includes(id));
    const given = finding.counted
      .filter((one) => !ofRequest.includes(one))
      .map(({ what }) => what)
      .sort();
    expect(counted.map((record) => record.counted!).sort()).toEqual(given);

    if (ofRequest.length > 0) expect(why.request.join()).toMatch(/reports and forecasts: (report|forecast) /);

    // Read and unread together are what the rule declares.
    const keys = [...why.facts, ...why.unread].map(({ key }) => key);
    expect([...keys].sort()).toEqual([...finding.reads].sort());

    // One branch is taken, or none when the rule could not tell or was not in force.
    const taken = why.branches.filter((branch) => branch.taken);
    const ofBranch =
      finding.status === 'met' || finding.status === 'short' || finding.branch !== finding.status;
    if (finding.branch === 'unknown' || finding.branch === 'not-in-force') expect(taken).toEqual([]);
    else if (ofBranch)
      expect(taken).toEqual([expect.objectContaining({ name: finding.branch, status: finding.status })]);

    // The text in force holds on the day.
    if (finding.branch !== 'not-in-force') {
      const day = localDateOf(toSeconds((one.given?.['asOf'] as string) ?? '2027-03-01T18:00:00Z'), zone);
      expect(why.body).toMatchObject({ version: finding.version, inForce: true, citation: finding.citation });
      for (const number of why.numbers)
        expect([number.from ?? '', number.to ?? '9999']).toEqual([expect.any(String), expect.any(String)]);
      for (const { from, to } of why.numbers) expect((from ?? '') <= day && day < (to ?? '9999')).toBe(true);
    }

    // What changes then is another verdict.
    expect(why.change!.at).toBe(finding.until);
    if (why.change!.then)
      expect([why.change!.then.status, ...why.change!.then.conditions]).not.toEqual([
        finding.status,
        ...finding.conditions,
      ]);

    const told = [
      ...why.facts.flatMap((fact) => [
        fact.words,
        fact.firmnessWord ?? 'x',
        ...fact.records.map((record) => record.says),
      ]),
      ...why.request,
      ...why.sun.flatMap((sun) => [sun.field, ...sun.says]),
      ...why.numbers.flatMap((number) => [number.title, number.says]),
      ...why.branches.map((branch) => branch.says),
    ];
    expect(told.filter((text) => HOLE.test(text))).toEqual([]);
  });
});

describe('a derivation', () => {
  const whyOf = (rule: string, name: string): Derivation => {
    const table = TABLES.find((one) => one.rule === rule)!;
    return derivationOf(
      rule,
      table.cases.find((one) => one.name === name)!,
    ).why;
  };

  test('shows the sun where the night was asked about, and only there', () => {
    // Sunset at 40 N 105 W on 28 February 2027 is 17:50 and civil dusk 18:17, give or take a minute (USNO almanac service,
    // from memory); the rule's own condition tells the same clock.
    const night = whyOf('recency.passengers.night', 'touch-and-goes do not serve at night');
    expect(night.sun).toEqual([
      {
        field: 'XQHB',
        says: [
          expect.stringMatching(/^morning twilight begins 06:0\d$/),
          expect.stringMatching(/^sunrise 06:3\d$/),
          expect.stringMatching(/^sunset 17:5\d$/),
          expect.stringMatching(/^evening twilight ends 18:1\d$/),
          expect.stringMatching(/^an hour after sunset 18:5\d$/),
        ],
      },
    ]);
    expect(whyOf('recency.passengers.day', 'ninety-one days ago does not').sun).toEqual([]);
    // Hours of teaching are of the club's clock, whatever the sun does.
    expect(whyOf('calendar.instructor_hours', 'within the hours of the week').sun).toEqual([]);
  });

  test('leaves out what only the remedies looked at', () => {
    // The remedy would fly in the model, at the home field; the verdict looked at the wheel, and at no place.
    const short = whyOf('recency.passengers.day', 'ninety-one days ago does not');
    expect(short.finding.remedies.length).toBeGreaterThan(0);
    const type = short.facts.find(({ key }) => key === 'aircraft.type')!;
    expect(type.records[0]!.says).toContain('no tailwheel');
    expect(type.records[0]!.says).not.toMatch(/Harrow|engine power|flaps/);
    expect(short.request).toEqual(['1 passenger']);
  });
});
