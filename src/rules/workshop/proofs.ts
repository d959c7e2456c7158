/**
 * What holds for every finding whatever its case expects: remedies cure, `until` is when the verdict changes and not
 * before, what was counted is on record, sentences are whole. A case need not say any of it, and is held to it all the same.
 */
import { plusSeconds, toSeconds, type EpochSeconds } from '../calendar/instants.js';
import { DEFAULT_HORIZON } from '../engine/decide.js';
import type { Finding } from '../engine/finding.js';
import { judgeAll } from '../engine/judge.js';
import { applyRemedy } from '../engine/remedy.js';
import type { FactSheet } from '../facts/sheet.js';
import { evidenceTreatedAlike } from './proofs-of-evidence.js';
import { remediesInForm } from './proofs-of-remedies.js';
import type { Outcome } from './run-case.js';

/** Each thing that does not hold, in words. */
export function proofsAgainst(outcome: Outcome): string[] {
  return [
    ...wholeSentences(outcome),
    ...knownWords(outcome),
    ...onRecord(outcome),
    ...evidenceTreatedAlike(outcome),
    ...remediesInForm(outcome),
    ...cures(outcome),
    ...changesAtUntil(outcome),
  ];
}

function judged(of: Outcome, sheet: FactSheet, departs: EpochSeconds): Finding {
  return judgeAll(sheet, of.ruleset, departs).judged[0]!.finding;
}

/** The page shows conditions as a list under the heading "Before departure". */
const CONDITION = /^(?!Before departure)[A-Z].*[^.]\.$/s;
/** What a sentence shows where a value was missing. */
const HOLE = /undefined|\bnull\b|NaN|\[object|\{\w*\}|^$| {2}/;

function wholeSentences({ finding }: Outcome): string[] {
  const wrong: string[] = [];
  if (finding.title.length === 0 || finding.citation.text.length === 0)
    wrong.push('a finding has a title and a citation');
  for (const condition of finding.conditions)
    if (!CONDITION.test(condition)) wrong.push(`no whole sentence: "${condition}"`);
  const told = [
    finding.says,
    ...finding.conditions,
    ...finding.counted.map((counted) => counted.what),
    ...finding.remedies.flatMap((remedy) => [remedy.act, remedy.title]),
  ];
  for (const text of told) if (HOLE.test(text)) wrong.push(`a hole in "${text}"`);
  return wrong;
}

const WEIGHTS = ['law', 'club', 'advice'];
const BOUND = ['pilot', 'member', 'instructor', 'aircraft', 'flight', 'club'];
const KNOWN_HOW = ['seen', 'from memory', 'common practice, no source', 'club paper'];

/** Words that other parts of the service tell apart. */
function knownWords({ finding }: Outcome): string[] {
  const { weight, binds, citation } = finding;
  const all = WEIGHTS.includes(weight) && BOUND.includes(binds) && KNOWN_HOW.includes(citation.status);
  return all ? [] : [`${weight}, ${binds} or ${citation.status} is no word of a finding`];
}

/** Counted evidence points at records of the sheet, each once, with the record's own date or none. */
function onRecord({ finding, sheet }: Outcome): string[] {
  const ids = new Set<string>();
  const collect = (value: unknown): void => {
    if (Array.isArray(value)) value.forEach(collect);
    else if (typeof value === 'object' && value !== null) {
      const { id } = value as { id?: unknown };
      if (typeof id === 'string') ids.add(id);
      Object.values(value).forEach(collect);
    }
  };
  collect([sheet.people, sheet.aircraft, sheet.flight.route, sheet.flight.reports]);
  const counted = finding.counted.map(({ id }) => id);
  const wrong = counted.filter((id) => !ids.has(id)).map((id) => `counts ${id}, which is not on record`);
  return counted.length === new Set(counted).size ? wrong : [...wrong, 'counts a record twice'];
}

/** Days by which a case is also put off, known things staying as they are: a remedy done now may not serve by then. */
const PUT_OFF_DAYS = [0, 35, 800];

function cures(of: Outcome): string[] {
  return PUT_OFF_DAYS.flatMap((days) => {
    const { flight } = of.sheet;
    const seconds = days * 86_400;
    const [departs, arrives] = [plusSeconds(flight.departs, seconds), plusSeconds(flight.arrives, seconds)];
    const sheet = { ...of.sheet, flight: { ...flight, departs, arrives } };
    const { crew, judged: all } = judgeAll(sheet, of.ruleset, toSeconds(departs));
    return all[0]!.finding.remedies.flatMap((remedy) => {
      const cured = applyRemedy(sheet, crew, remedy);
      const after = judged(of, cured, toSeconds(cured.flight.departs));
      if (after.status === 'met' || after.status === 'not-applicable') return [];
      return [`${days} days later it offers ${remedy.act}, after which it is ${after.status}: ${after.says}`];
    });
  });
}

/** A rule that follows the sun uses up its steps of the search (120, four a day) after so many days. */
const FOLLOWED_DAYS = 30;

/** A verdict is its status and the conditions that go with it. */
const verdict = (finding: Finding): string => `${finding.status} ${finding.conditions.join('|')}`;

function changesAtUntil(of: Outcome): string[] {
  const { sheet, finding } = of;
  const departs = toSeconds(sheet.flight.departs);
  const end = departs + DEFAULT_HORIZON.days * 86_400;
  const until = finding.until === null ? null : toSeconds(finding.until);
  const now = verdict(finding);
  const at = (when: EpochSeconds): string => verdict(judged(of, sheet, when));
  if (until === null) return at(end) === now ? [] : [`time alone changes "${now}", and it has no until`];
  if (until <= departs) return [`until ${finding.until} is not after the departure`];
  if (at(until - 1) !== now) return [`"${now}" until ${finding.until} ends before it`];
  // Where the search was cut short `until` only claims that nothing changes up to it.
  const followed = departs + FOLLOWED_DAYS * 86_400;
  return until < followed && at(until) === now ? [`"${now}" should change at ${finding.until}`] : [];
}
