/** When each person's requirements lapse, from the change points the rules remember: no day in between is asked. */
import {
  blocks,
  crewAt,
  earlier,
  judgeRule,
  localDateOf,
  skimRule,
  timeAt,
  weighable,
  type AircraftFacts,
  type EpochSeconds,
  type FactSheet,
  type LocalDate,
  type PersonFacts,
  type Rule,
  type Ruleset,
  type Status,
} from '../../rules/index.js';

/** A requirement of a person that holds now and does not later (`on` set), or does not hold now (`on` null). */
export interface Lapse {
  memberId: string;
  rule: string;
  title: string;
  weight: Rule['weight'];
  /** First day on which such a flight no longer passes. */
  on: LocalDate | null;
  status: Status;
  says: string;
  aircraftIds: string[];
}

/** What each person is followed on: one sheet for each aircraft, with nobody on it yet. */
export interface Followed {
  sheets: readonly FactSheet[];
  ruleset: Ruleset;
  departures: readonly EpochSeconds[];
}

/** Rules about a person's own papers, flying and sign-offs; what else they have booked is no requirement. */
export const requirementsOf = ({ rules }: Ruleset): Rule[] =>
  rules.filter(
    ({ binds, weight, reads }) =>
      (binds === 'pilot' || binds === 'member') &&
      weight !== 'advice' &&
      reads.some((key) => /^(pic|member)\./.test(key) && !key.endsWith('.commitments')),
  );

/** The sheets with a person on them. */
export const placedOn = (person: PersonFacts, sheets: readonly FactSheet[]): FactSheet[] =>
  sheets.map((sheet) => ({
    ...sheet,
    flight: { ...sheet.flight, memberId: person.id },
    people: { [person.id]: person },
  }));

/** Sheets whose aircraft are the same to a rule, together: the rule need be followed on one of them only. */
export function groupsOf(rule: Rule, placed: readonly FactSheet[]): FactSheet[][] {
  const groups = new Map<string, FactSheet[]>();
  for (const sheet of placed) {
    const key = sameFor(rule, sheet.aircraft);
    groups.set(key, [...(groups.get(key) ?? []), sheet]);
  }
  return [...groups.values()];
}

/** All lapses of one person: a rule is followed once for all aircraft that are the same to it. */
export function lapsesOf(person: PersonFacts, { sheets, ruleset, departures }: Followed): Lapse[] {
  const placed = placedOn(person, sheets);
  return requirementsOf(ruleset).flatMap((rule) => {
    const lapses = new Map<string, Lapse>();
    for (const group of groupsOf(rule, placed)) {
      const lapse = follow(rule, group[0]!, ruleset, departures);
      if (lapse === null) continue;
      const aircraftIds = group.map(({ aircraft }) => aircraft.id);
      const known = lapses.get(`${lapse.on} ${lapse.says}`);
      if (known) known.aircraftIds.push(...aircraftIds);
      else lapses.set(`${lapse.on} ${lapse.says}`, { memberId: person.id, ...lapse, aircraftIds });
    }
    return [...lapses.values()];
  });
}

/** Aircraft with the same word are one to the rule. Of type and model alone, those of one model. */
function sameFor(rule: Rule, { id, type }: AircraftFacts): string {
  const reads = rule.reads.filter((key) => key.startsWith('aircraft.'));
  if (reads.length === 0) return 'any';
  return type.known && reads.every((key) => key === 'aircraft.type')
    ? JSON.stringify({ ...type.value, registration: '' })
    : id;
}

/** The first of the departures at which the rule stands in the way; null: at none. */
export function follow(
  rule: Rule,
  sheet: FactSheet,
  ruleset: Ruleset,
  departures: readonly EpochSeconds[],
): Omit<Lapse, 'memberId' | 'aircraftIds'> | null {
  let next: EpochSeconds | null = departures[0]!;
  for (let index = 0; index < departures.length; index += 1) {
    const departs = departures[index]!;
    if (next === null) return null;
    if (departs < next) continue;
    const time = timeAt(sheet, departs);
    const { crew, nextChange } = crewAt(sheet, ruleset, departs, time);
    const verdict = skimRule(rule, sheet, ruleset, crew, time);
    if (blocks(weighable(rule, verdict))) {
      const { finding } = judgeRule(rule, sheet, ruleset, crew, departs, time);
      const { id, title, weight } = rule;
      const on = index === 0 ? null : localDateOf(departs, sheet.zone);
      return { rule: id, title, weight, on, status: finding.status, says: finding.says };
    }
    next = earlier(verdict.nextChange, nextChange);
  }
  return null;
}
