/** A long span is followed piece by piece; stitched together, the pieces must be the whole. */
import fc from 'fast-check';
import { piecesOf, stitched } from '../../src/decisions/timeline/pieces.js';
import { rulesetFor, timelineOf, toSeconds, type Timeline } from '../../src/rules/index.js';
import { startingPolicy } from '../../src/rules/packs/club/starting-policy.js';
import { anySheet, SEED } from './engine-sheets.js';

const DAY = 86_400;
const POLICY = startingPolicy();

/** All that is told of a timeline but what moved with an instructor: that is looked at only where it matters, piece by piece. */
const told = ({ steps, cutAt }: Timeline) => ({
  cutAt,
  steps: steps.map(({ changed, ...step }) => ({
    ...step,
    changed: changed.filter((one) => !one.withInstructor),
  })),
});

test('pieces cover the span, each sharing a second with the one before', () => {
  for (const days of [1, 27.5, 28, 28.00001, 90, 366]) {
    const span = { from: 1_000_000, to: 1_000_000 + Math.round(days * DAY) };
    const pieces = piecesOf(span);
    expect(pieces[0]!.from).toBe(span.from);
    expect(pieces.at(-1)!.to).toBe(span.to);
    pieces.slice(1).forEach((piece, index) => expect(piece.from).toBe(pieces[index]!.to - 1));
    expect(Math.max(...pieces.map(({ from, to }) => to - from))).toBeLessThanOrEqual(28 * DAY + 1);
    expect(pieces).toHaveLength(Math.ceil(Math.round(days * DAY) / (28 * DAY)));
  }
});

test(`stitched pieces are the whole timeline (seed ${SEED})`, () => {
  let edges = 0;
  let onSeams = 0;
  for (const sheet of fc.sample(anySheet, { seed: SEED, numRuns: 150 })) {
    const ruleset = rulesetFor(sheet.jurisdiction, POLICY);
    const start = toSeconds(sheet.flight.departs);
    const whole = timelineOf(sheet, ruleset, { from: start, to: start + 100 * DAY });
    // Once as it comes, and once with an edge of the timeline exactly on a seam.
    const edge = whole.steps.find(({ from }) => from >= start + 28 * DAY)?.from;
    const froms = edge === undefined ? [start] : [start, edge - 28 * DAY];
    for (const from of froms) {
      const span = { from, to: from + 85 * DAY };
      const direct = timelineOf(sheet, ruleset, span);
      const parts = piecesOf(span).map((piece) => timelineOf(sheet, ruleset, piece));
      expect(parts.length).toBe(4);
      expect(told(parts.reduce(stitched))).toEqual(told(direct));
      edges += direct.steps.length - 1;
      if (direct.steps.some((step) => (step.from - from) % (28 * DAY) === 0 && step.from > from))
        onSeams += 1;
    }
  }
  expect(edges).toBeGreaterThan(1000);
  expect(onSeams).toBeGreaterThan(50);
}, 120_000);

test('what was not followed stays unknown', () => {
  const step = (from: number, to: number, answer: string) => ({
    from,
    to,
    answer,
    inTheWay: [],
    changed: [],
  });
  const cut = { steps: [step(0, 5, 'yes'), step(5, 10, 'no')], cutAt: 5 } as unknown as Timeline;
  const later = { steps: [step(9, 12, 'yes'), step(12, 20, 'yes')], cutAt: null } as unknown as Timeline;
  expect(stitched(cut, later)).toEqual({ steps: [step(0, 5, 'yes'), step(5, 20, 'no')], cutAt: 5 });
});
