/**
 * The guide to a deferral against the order in which 14 CFR 91.213(d) asks. Source: 14 CFR 91.213(d)(1) to (4), as amended
 * 2004; the wording is given from memory.
 */
import { guideSteps, type GuideOf } from '../../src/maintenance/squawks/guide-steps.js';
import type { AircraftType, EquipmentFact } from '../../src/rules/index.js';

/** Paragraph, what it asks, the answer with which the deferral stands, and who is to answer. */
const PUBLISHED: [paragraph: string, asks: RegExp, who: string][] = [
  ['91.213(d)(1)', /small aircraft/, 'record'],
  ['91.213(d)(2)(i)', /VFR by day under the type certification/, 'person'],
  ['91.213(d)(2)(ii)', /kinds of operations equipment list/, 'person'],
  ['91.213(d)(2)(iii)', /91\.205, or another rule of part 91/, 'rules'],
  ['91.213(d)(2)(iv)', /airworthiness directive/, 'person'],
  ['91.213(d)(3)', /removed, or deactivated/, 'person'],
  ['91.213(d)(3)', /placarded 'Inoperative'/, 'person'],
  ['91.213(d)(3)', /maintenance record/, 'person'],
  ['91.213(d)(4)', /no hazard/, 'person'],
];

const equipment = { id: 'e', name: 'Position lights', requiredByTypeDesign: false } as EquipmentFact;
const type = { turbine: false, transportCategory: false, maxTakeoffLb: 2400 } as AircraftType;
const GOOD: GuideOf = {
  ...{ type, equipment, neededFor: [], directives: [], smallLb: 12_500 },
  recorded: {
    ...{ requiredByTypeDesign: false, requiredByEquipmentList: false, requiredByDirective: false },
    ...{ removedOrDeactivated: true, placarded: true, recorded: true, noHazardDeterminedBy: 'A mechanic' },
  },
};
const stopping = (of: Partial<GuideOf>): string[] =>
  guideSteps({ ...GOOD, ...of })
    .filter(({ stops }) => stops)
    .map(({ paragraph }) => paragraph);
const answered = (field: string, value: boolean) => ({ recorded: { ...GOOD.recorded, [field]: value } });

test('asks what the section asks, in its order', () => {
  const steps = guideSteps(GOOD);
  expect(steps.map(({ paragraph, by }) => [paragraph, by])).toEqual(
    PUBLISHED.map(([at, , who]) => [at, who]),
  );
  for (const [index, [, asks]] of PUBLISHED.entries()) expect(steps[index]!.question).toMatch(asks);
  expect(steps.filter(({ answer }) => answer === 'open')).toEqual([]);
  expect(stopping({})).toEqual([]);
});

// 14 CFR 91.213(d)(1): small, nonturbine; 14 CFR 1.1: small is 12,500 lb or less, maximum certificated take-off weight.
test.each([
  ['at 12,500 lb', { type: { ...type, maxTakeoffLb: 12_500 } }, []],
  ['at 12,501 lb', { type: { ...type, maxTakeoffLb: 12_501 } }, ['91.213(d)(1)']],
  ['with turbines', { type: { ...type, turbine: true } }, ['91.213(d)(1)']],
  [
    'type design, on record',
    { equipment: { ...equipment, requiredByTypeDesign: true } },
    ['91.213(d)(2)(i)'],
  ],
  ['type design, by a person', answered('requiredByTypeDesign', true), ['91.213(d)(2)(i)']],
  ['equipment list', answered('requiredByEquipmentList', true), ['91.213(d)(2)(ii)']],
  ['directive', answered('requiredByDirective', true), ['91.213(d)(2)(iv)']],
  ['not placarded yet', answered('placarded', false), []],
] as [string, Partial<GuideOf>, string[]][])(
  '%s rules a deferral out as published',
  (_what, of, paragraphs) => {
    expect(stopping(of)).toEqual(paragraphs);
  },
);

test('what one kind of flight needs rules out that kind; what day VFR needs rules out all (91.213(d)(2)(iii))', () => {
  const kind = (name: 'night-vfr' | 'day-vfr') => ({
    neededFor: [{ kind: name, title: name, says: 'needed' }],
  });
  expect(stopping(kind('night-vfr'))).toEqual([]);
  expect(stopping(kind('day-vfr'))).toEqual(['91.213(d)(2)(iii)']);
});

test('nothing unanswered passes for answered', () => {
  const steps = guideSteps({
    ...GOOD,
    ...{ type: { ...type, maxTakeoffLb: null }, neededFor: null, recorded: {} },
  });
  expect(steps.map(({ answer }) => answer)).toEqual(steps.map(() => 'open'));
});
