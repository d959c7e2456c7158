/** What the next practice flight takes from a checkout that is still open. */
import { progressOf } from '../../src/checkouts/progress/progress-of.js';
import type { InForce } from '../../src/checkouts/requirements/read-requirements.js';
import { checkoutSays, lacksOf } from '../../src/practice/advice/checkout-lacks.js';

const TODAY = '2026-03-10';
const ASKED = {
  ...{ today: TODAY, now: '2026-03-10T15:00:00Z', quizWaitHours: 24, endingDays: 60, likeModels: false },
};
const item = (
  position: number,
  title: string,
  manoeuvre: 'steep_turn' | 'short_field_landing' | null,
  required = true,
) => ({
  ...{ id: `item-${position}`, position, title, standard: 'As the club says', manoeuvre, required },
});
const TRAINER: InForce = {
  ...{ id: 'trainer', rowVersion: 1, recordedAt: '2026-01-01T00:00:00Z', kind: 'model', modelId: 'sparrow' },
  ...{
    makeModel: 'Sparrow 150',
    equipmentGroup: null,
    condition: null,
    alsoCalled: [],
    retired: false,
    instructors: [],
  },
  version: {
    ...{
      id: 'v1',
      number: 1,
      title: 'Trainer',
      goodDays: null,
      quiz: null,
      prerequisites: [],
      alsoModels: [],
    },
    ...{ publishedAt: '2026-01-01T00:00:00Z', publishedBy: null },
    items: [
      item(1, 'Turns', 'steep_turn'),
      item(2, 'Short field', 'short_field_landing'),
      item(3, 'Walk round', null),
      item(4, 'Extra turns', 'steep_turn', false),
    ],
  },
};
const signed = (title: string, manoeuvre: 'steep_turn' | null) => ({
  ...{
    id: `mark-${title}`,
    memberId: 'lee',
    requirementId: 'trainer',
    differenceId: null,
    outcome: 'signed' as const,
  },
  ...{ item: { title, standard: 'As the club says', manoeuvre }, on: '2026-03-01', note: '', spent: false },
  signedBy: { id: 'tess', name: 'Tess Teacher' },
});
const open = (...marks: ReturnType<typeof signed>[]) => ({
  ...{ id: 'sparrow', kind: 'model' as const, makeModel: 'Sparrow 150', neededOn: '2026-03-20' },
  progress: progressOf(TRAINER, { marks, signOffs: [], attempts: [] }, [TRAINER], ASKED),
});

it('is the club’s own manoeuvres that are not signed, and not the usual ones', () => {
  const lack = { checkoutId: 'sparrow', condition: { kind: 'any' } };
  // Twice each: a checkout's usual number for turns, a drill's least for short fields (common practice, no source).
  expect(lacksOf(open())).toEqual([
    { ...lack, manoeuvre: 'steep_turn', times: 2 },
    { ...lack, manoeuvre: 'short_field_landing', times: 2 },
  ]);
  expect(lacksOf(open(signed('Turns', 'steep_turn'))).map(({ manoeuvre }) => manoeuvre)).toEqual([
    'short_field_landing',
  ]);
});

it('is what is usual where the club has laid nothing down, and is told so', () => {
  const none = { ...open(), progress: null };
  expect(lacksOf(none)).toHaveLength(6);
  expect(checkoutSays(none)).toContain('is not on record: the usual manoeuvres are planned');
});

it('tells what no manoeuvre stands for, and what is left', () => {
  expect(checkoutSays(open(signed('Turns', 'steep_turn')))).toBe(
    'A flight on 2026-03-20 is booked on a Sparrow 150, and no checkout of it stands. The club’s checkout asks for 2 more items: those that are manoeuvres are planned. Not planned, since no manoeuvre stands for it: “Walk round”.',
  );
});
