/** How each of a person's own requirements stands on a day, and when it lapses: the board's way, for one person. */
import {
  blocks,
  crewAt,
  judgeRule,
  skimRule,
  timeAt,
  weighable,
  type Counted,
  type FactSheet,
  type LocalDate,
  type PersonFacts,
  type Rule,
  type Status,
} from '../../rules/index.js';
import type { BoardFlight } from '../board/board-flights.js';
import { follow, groupsOf, placedOn, requirementsOf, type Followed } from '../board/follow.js';

export interface Requirement {
  rule: string;
  title: string;
  weight: Rule['weight'];
  citation: string;
  flights: BoardFlight[];
  aircraftIds: string[];
  holds: boolean;
  status: Status;
  says: string;
  lapsesOn: LocalDate | null;
  lapseSays: string | null;
  counted: Counted[];
}

/** Each requirement of a person for one kind of flight; what does not concern it and will not is left out. */
export function requirementsFor(
  person: PersonFacts,
  flight: BoardFlight,
  { sheets, ruleset, departures }: Followed,
): Requirement[] {
  const placed = placedOn(person, sheets);
  return requirementsOf(ruleset).flatMap((rule) =>
    groupsOf(rule, placed).flatMap((group): Requirement[] => {
      const now = standing(rule, group[0]!, { sheets, ruleset, departures });
      const lapse = follow(rule, group[0]!, ruleset, departures);
      if (now.status === 'not-applicable' && lapse === null) return [];
      return [
        {
          ...now,
          flights: [flight],
          aircraftIds: group.map(({ aircraft }) => aircraft.id),
          lapsesOn: lapse?.on ?? null,
          lapseSays: lapse?.on ? lapse.says : null,
        },
      ];
    }),
  );
}

/** The rule on the first of the departures. */
function standing(
  rule: Rule,
  sheet: FactSheet,
  { ruleset, departures }: Followed,
): Omit<Requirement, 'flights' | 'aircraftIds' | 'lapsesOn' | 'lapseSays'> {
  const departs = departures[0]!;
  const time = timeAt(sheet, departs);
  const { crew } = crewAt(sheet, ruleset, departs, time);
  const holds = !blocks(weighable(rule, skimRule(rule, sheet, ruleset, crew, time)));
  const { finding } = judgeRule(rule, sheet, ruleset, crew, departs, timeAt(sheet, departs));
  const { status, says, counted, citation } = finding;
  const { id, title, weight } = rule;
  return { rule: id, title, weight, citation: citation.text, holds, status, says, counted };
}

/** What is the same for several kinds of flight, or says the same of several aircraft, once. */
export function together(all: readonly Requirement[]): Requirement[] {
  const byAircraft = merged(all, ({ flights }) => flights, 'aircraftIds');
  return merged(byAircraft, ({ aircraftIds }) => aircraftIds, 'flights');
}

function merged(
  all: readonly Requirement[],
  apartBy: (one: Requirement) => readonly string[],
  list: 'aircraftIds' | 'flights',
): Requirement[] {
  const found = new Map<string, Requirement>();
  for (const one of all) {
    const { rule, holds, status, says, lapsesOn, lapseSays, counted } = one;
    const key = JSON.stringify([rule, holds, status, says, lapsesOn, lapseSays, counted, apartBy(one)]);
    const known = found.get(key);
    if (known) Object.assign(known, { [list]: [...known[list], ...one[list]] });
    else found.set(key, { ...one });
  }
  return [...found.values()];
}
