/** Every act that any rule offers on any case of its table is in the catalogue, with prices that are declared. */
import {
  judgeAll,
  rulesetFor,
  startingPolicy,
  toSeconds,
  type Policy,
  type PolicyValue,
} from '../../../src/rules/index.js';
import { CLUB_COSTS } from '../../../src/rules/parameters/club/costs.js';
import { ACTS, catalogue, partsOf } from '../../../src/rules/ways/acts.js';
import { sheetOf } from '../../../src/rules/workshop/sheet-of.js';
import { readTables } from '../../workshop/tables.js';

/** Acts by the rules that offer them; each rule's own table reaches every branch of it. */
function offered(): Map<string, Set<string>> {
  const acts = new Map<string, Set<string>>();
  for (const { table } of readTables()) {
    for (const one of table.cases) {
      const { sheet, policy } = sheetOf(one);
      const pack = rulesetFor(sheet.jurisdiction, withPolicy(policy));
      const alone = { ...pack, rules: pack.rules.filter(({ id }) => id === table.rule) };
      for (const { finding } of judgeAll(sheet, alone, toSeconds(sheet.flight.departs)).judged) {
        for (const { act } of finding.remedies) acts.set(act, (acts.get(act) ?? new Set()).add(finding.rule));
      }
    }
  }
  return acts;
}

const withPolicy = (changes: readonly PolicyValue[]): Policy => ({
  values: [
    ...startingPolicy().values.filter(({ id }) => !changes.some((change) => change.id === id)),
    ...changes,
  ],
});

test('every act that a rule offers is in the catalogue', () => {
  const acts = offered();
  expect(acts.size).toBeGreaterThan(75);
  const missing = [...acts].filter(([act]) => catalogue(act) === undefined);
  expect(missing.map(([act, rules]) => `${act} (${[...rules].join(', ')})`)).toEqual([]);
});

test('what an act asks for is a declared parameter of the club', () => {
  const declared = new Set(CLUB_COSTS.map(({ id }) => id));
  const asked = ACTS.flatMap((act) => {
    const { lead, air, ground, fee, points } = catalogue(act)!;
    return [
      ...(lead ? [`club.lead.${lead}`] : []),
      ...[air, ground].flatMap((hours) => (hours && hours !== 'logged' ? [`club.cost.hours.${hours}`] : [])),
      ...(fee ? [`club.cost.${fee}`] : []),
      ...(points ? [`club.cost.points.${points}`] : []),
    ];
  });
  expect([...new Set(asked)].filter((id) => !declared.has(id))).toEqual([]);
  // None is declared and never asked for, but those read by name.
  const named = [
    'currency',
    'aircraft-hour',
    'instructor-hour',
    'value-of-',
    'hours.sortie',
    'hours.longest',
    'points.',
  ];
  const idle = [...declared].filter((id) => !asked.includes(id) && !named.some((part) => id.includes(part)));
  expect(idle).toEqual([]);
});

test('an act that puts several things right is priced by what it touches; an unknown one by the office', () => {
  expect(partsOf('keep-within-student-limits', ['pic.endorsements', 'pic.medicals'], catalogue)).toEqual([
    catalogue('get-endorsement-solo'),
    catalogue('pass-medical-exam'),
  ]);
  expect(partsOf('keep-within-sport-limits', [], catalogue)).toEqual([catalogue('keep-within-sport-limits')]);
  expect(partsOf('no-such-act', ['pic.log'], catalogue)[0]).toMatchObject({ kind: 'office', lead: 'office' });
  expect(catalogue('constructor')).toBeUndefined();
});
