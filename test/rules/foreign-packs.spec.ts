/**
 * The European and the Canadian pack hold the law about the person and not that about the aircraft and the conduct of the
 * flight. What they do not hold they must say, in every decision: never a plain yes, whatever the sheet.
 */
import { decide, rulesetFor, startingPolicy, type Jurisdiction, type Policy } from '../../src/rules/index.js';
import type { Case } from '../../src/rules/workshop/case-table.js';
import { sheetOf } from '../../src/rules/workshop/sheet-of.js';
import { readTables } from '../workshop/tables.js';

const KEPT_UNDER = 'club.airworthiness.kept-under';
const PAPER = 'Maintenance programme, revision 3';

const kept: Policy = {
  values: [
    ...startingPolicy().values.filter(({ id }) => id !== KEPT_UNDER),
    { id: KEPT_UNDER, from: '2000-01-01', value: PAPER, reference: 'Committee minutes' },
  ],
};

const AIRCRAFT_LAW = { EU: 'law.easa.airworthiness', CA: 'law.canada.airworthiness' } as const;
const FLIGHT_LAW = { EU: 'law.easa.operations', CA: 'law.canada.operations' } as const;

const FLIGHT = {
  weather: {
    observedAt: '2027-03-01T18:00:00Z',
    windFromDeg: 90,
    windKt: 5,
    temperatureC: 10,
    altimeterInHg: 29.92,
  },
};

/** A private pilot with the papers of each country, alone in good weather. */
const GOOD: Record<'EU' | 'CA', Case['given']> = {
  EU: { flight: FLIGHT, 'pic.medicals': [{ class: 2, examOn: '2026-06-10' }] },
  CA: { flight: FLIGHT, 'pic.reviews': [{ on: '2026-01-10' }] },
};

const decided = (jurisdiction: Jurisdiction, policy: Policy, given: Case['given'] = {}) => {
  const one = { name: '', source: '', given: { ...given, jurisdiction }, expect: { status: 'met' } } as Case;
  const { sheet } = sheetOf(one);
  return decide(sheet, policy, rulesetFor(jurisdiction, policy), sheet.flight.departs, {
    days: 0,
    stepsPerRule: 1,
  });
};

const sheets = readTables().flatMap(({ table }) =>
  table.cases.map((one) => ({ name: `${table.rule}: ${one.name}`, given: one.given })),
);

describe.each(['EU', 'CA'] as const)('the %s pack', (jurisdiction) => {
  test('refuses while no paper is recorded, and names the policy', () => {
    const { answer, findings } = decided(jurisdiction, startingPolicy(), GOOD[jurisdiction]);
    const { status, says } = findings.find(({ rule }) => rule === AIRCRAFT_LAW[jurisdiction])!;
    expect([answer, status]).toEqual(['no', 'unknown']);
    expect(says).toContain('the policy of the club names no paper');
    // Nothing else stands in the way.
    const blocking = findings.filter(
      (one) => one.weight !== 'advice' && ['short', 'unknown'].includes(one.status),
    );
    expect(blocking.map(({ rule }) => rule).sort()).toEqual(
      [AIRCRAFT_LAW[jurisdiction], FLIGHT_LAW[jurisdiction]].sort(),
    );
  });

  test('says yes with conditions once it is, and names paper and rules of the air', () => {
    const { answer, conditions } = decided(jurisdiction, kept, GOOD[jurisdiction]);
    expect(answer).toBe('yes-with-conditions');
    expect(conditions.filter((one) => one.includes(PAPER))).toHaveLength(1);
    expect(conditions.length).toBeGreaterThanOrEqual(2);
  });

  test('gives no plain yes on any sheet of any case table', () => {
    const yes = sheets.filter(({ given }) => decided(jurisdiction, kept, given).answer === 'yes');
    expect(sheets.length).toBeGreaterThan(1000);
    expect(yes.map(({ name }) => name)).toEqual([]);
  });
});
