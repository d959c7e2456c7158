/** A long span followed piece by piece, so that others get their turn in between; the timeline is the same. */
import type { Span, Timeline } from '../../rules/index.js';

/** Seconds followed in one go: four weeks. Each piece judges every rule once more than the whole would. */
const PIECE = 28 * 86_400;

/**
 * The pieces of a span. Each but the first begins one second before the one before it ends: an edge on the seam is then an
 * edge within a piece, with what changed there.
 */
export function piecesOf({ from, to }: Span): Span[] {
  const pieces: Span[] = [{ from, to: Math.min(to, from + PIECE) }];
  for (let seam = from + PIECE; seam < to; seam += PIECE) {
    pieces.push({ from: seam - 1, to: Math.min(to, seam + PIECE) });
  }
  return pieces;
}

/**
 * Two timelines that share a second as one. The second's step ends the earlier and begins the later one. Where the earlier was
 * not followed to its end, what counts as unknown there stays so.
 */
export function stitched(earlier: Timeline, later: Timeline): Timeline {
  const [shared, ...rest] = later.steps;
  const before = earlier.steps.slice(0, -1);
  const last = earlier.steps[earlier.steps.length - 1]!;
  if (earlier.cutAt !== null) {
    const end = later.steps[later.steps.length - 1]!.to;
    return { steps: [...before, { ...last, to: end }], cutAt: earlier.cutAt };
  }
  return { steps: [...before, { ...last, to: shared!.to }, ...rest], cutAt: later.cutAt };
}
