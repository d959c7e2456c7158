/** Timelines of members on aircraft that may live at different airfields, and so fly different routes. */
import {
  clubTimelines,
  type FactSheet,
  type PairTimeline,
  type PersonFacts,
  type Ruleset,
  type Span,
} from '../../rules/index.js';
import { piecesOf, stitched } from './pieces.js';

/** Sheets of the same question, one for each aircraft; the members take turns on them. */
export interface PairsQuestion {
  sheets: readonly FactSheet[];
  members: readonly PersonFacts[];
  ruleset: Ruleset;
  span: Span;
}

/**
 * Member by member, and for each of them aircraft by aircraft, those on one route together. A null between two pairs is a
 * place to pause, and so is every pair: however long the span, no more than four weeks of one pair are followed in one go.
 */
export function* pairsOf({ sheets, members, ruleset, span }: PairsQuestion): Generator<PairTimeline | null> {
  const pieces = piecesOf(span);
  const fleets = byRoute(sheets).map((fleet) => {
    const { aircraft: _first, ...base } = fleet[0]!;
    const aircraft = fleet.map((sheet) => sheet.aircraft);
    // One walk for each piece of the span, all of them in step.
    const walks = pieces.map((piece) => clubTimelines({ base, members, aircraft, ruleset, span: piece }));
    return { size: fleet.length, walks };
  });
  for (let member = 0; member < members.length; member += 1) {
    for (const { size, walks } of fleets) {
      for (let index = 0; index < size; index += 1) {
        const [first, ...later] = walks;
        let pair = first!.next().value as PairTimeline;
        for (const walk of later) {
          yield null;
          pair = { ...pair, ...stitched(pair, walk.next().value as PairTimeline) };
        }
        yield pair;
      }
    }
  }
}

function byRoute(sheets: readonly FactSheet[]): FactSheet[][] {
  const fleets = new Map<string, FactSheet[]>();
  for (const sheet of sheets) {
    const route = sheet.flight.route.map(({ id }) => id).join();
    fleets.set(route, [...(fleets.get(route) ?? []), sheet]);
  }
  return [...fleets.values()];
}
