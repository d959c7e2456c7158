/** Timelines of members on aircraft that may live at different airfields, and so fly different routes. */
import {
  clubTimelines,
  type FactSheet,
  type PairTimeline,
  type PersonFacts,
  type Ruleset,
  type Span,
} from '../../rules/index.js';

/** Sheets of the same question, one for each aircraft; the members take turns on them. */
export interface PairsQuestion {
  sheets: readonly FactSheet[];
  members: readonly PersonFacts[];
  ruleset: Ruleset;
  span: Span;
}

/** Member by member, and for each of them aircraft by aircraft, those on one route together. */
export function* pairsOf({ sheets, members, ruleset, span }: PairsQuestion): Generator<PairTimeline> {
  const fleets = byRoute(sheets).map((fleet) => {
    const { aircraft: _first, ...base } = fleet[0]!;
    const aircraft = fleet.map((sheet) => sheet.aircraft);
    return { size: fleet.length, pairs: clubTimelines({ base, members, aircraft, ruleset, span }) };
  });
  for (let member = 0; member < members.length; member += 1) {
    for (const { size, pairs } of fleets) {
      for (let index = 0; index < size; index += 1) yield pairs.next().value as PairTimeline;
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
