/**
 * Evidence: the order in which records stand in a list means nothing, and what is dated after the flight does not count. Each case is
 * judged again with its lists turned round, and with later copies of its records beside them.
 */
import { addDays } from '../calendar/dates.js';
import { localDateOf, plusSeconds, toSeconds } from '../calendar/instants.js';
import { judgeAll } from '../engine/judge.js';
import type { Finding } from '../engine/finding.js';
import { unknownFact, type Fact } from '../facts/fact.js';
import { replaceFact, type FactKey } from '../facts/keys.js';
import type { FactSheet } from '../facts/sheet.js';
import type { Outcome } from './run-case.js';

/** What does not hold, in words. */
export function evidenceTreatedAlike(of: Outcome): string[] {
  const before = judgedNow(of, of.sheet);
  const wrong: string[] = [];
  const crowded = withLists(of.sheet, crowd);
  for (const [sheet, asWritten] of [
    [of.sheet, before],
    [crowded, judgedNow(of, crowded)],
  ] as const) {
    const turned = judgedNow(
      of,
      withLists(sheet, (list) => [...list].reverse()),
    );
    if (JSON.stringify(turned) !== JSON.stringify(asWritten))
      wrong.push(
        `the order of records matters: ${JSON.stringify(asWritten)} became ${JSON.stringify(turned)}`,
      );
  }
  const later = judgedNow(of, withLaterCopies(of));
  if (verdict(later) !== verdict(before))
    wrong.push(`evidence dated after the flight counts: ${verdict(before)} became ${verdict(later)}`);
  return [...wrong, ...unknownNeverHelps(of, before)];
}

/** A fact that is not on record may leave a verdict as it is or take it back; it never makes a flight good. */
function unknownNeverHelps(of: Outcome, before: Finding): string[] {
  const { crew } = judgeAll(of.sheet, of.ruleset, toSeconds(of.sheet.flight.departs));
  return before.reads.flatMap((key) => {
    const sheet = replaceFact(of.sheet, crew, key as FactKey, unknownFact(`${key} is not on record`));
    const after = judgedNow(of, sheet);
    if (after.status === 'error') return [`without ${key} it cannot be judged: ${after.says}`];
    if (after.status !== 'met' || before.status === 'met' || before.status === 'not-applicable') return [];
    return [`without ${key} it is met, and ${before.status} with it: ${before.says}`];
  });
}

function judgedNow({ ruleset }: Outcome, sheet: FactSheet): Finding {
  return judgeAll(sheet, ruleset, toSeconds(sheet.flight.departs)).judged[0]!.finding;
}

const verdict = ({ status, branch, says, counted, conditions }: Finding): string =>
  JSON.stringify([status, branch, says, counted.map(({ id }) => id), conditions]);

type Records = { id: string }[];

/** The sheet with each list of records changed. `change` is told the list's subject. */
function withLists(sheet: FactSheet, change: (list: Records, subject: string) => Records): FactSheet {
  const facts = <T extends object>(of: T): T =>
    Object.fromEntries(
      Object.entries(of).map(([subject, fact]: [string, unknown]) => {
        const { known, value } = (fact ?? {}) as Partial<Fact<Records> & { value: Records }>;
        return [
          subject,
          known && Array.isArray(value) ? { ...(fact as object), value: change(value, subject) } : fact,
        ];
      }),
    ) as T;
  return {
    ...sheet,
    people: Object.fromEntries(Object.entries(sheet.people).map(([id, person]) => [id, facts(person)])),
    aircraft: facts(sheet.aircraft),
  };
}

/**
 * Dates of evidence, by subject: what happened on them counts from then on. BasicMed is left out: its records are taken together, and
 * their licence and history have no date of their own.
 */
const HAPPENED: Record<string, string[]> = {
  certificates: ['issuedOn'],
  medicals: ['examOn'],
  reviews: ['on'],
  endorsements: ['on'],
  log: ['on', 'departedAt'],
  checkouts: ['on'],
  equipment: ['installedOn'],
  limits: ['from', 'recordedAt'],
};
const DAYS_LATER = 400;

/** Dates by which records are put in order, whatever they mean. */
const DATED: Record<string, string[]> = {
  ...HAPPENED,
  basicMed: ['examOn', 'courseOn'],
  instructor: ['issuedOn', 'recentExperienceOn'],
  unverified: ['on'],
  limits: ['from', 'recordedAt'],
  commitments: ['from', 'to'],
  teachingHours: ['from', 'on'],
  items: ['lastDoneOn'],
  registration: ['issuedOn'],
  squawks: ['reportedAt'],
  permits: ['from', 'through'],
  reservations: ['from', 'to'],
  meters: ['readAt'],
  differences: ['since'],
  work: ['begunAt'],
};

/** Each record with another of the same dates beside it, and one of the day before: the hard cases of an order. */
function crowd(list: Records, subject: string): Records {
  const keys = DATED[subject] ?? [];
  return list.flatMap((record) => {
    const eve = Object.entries(record)
      .filter(([key, value]) => keys.includes(key) && typeof value === 'string')
      .map(([key, value]: [string, string]) => [
        key,
        value.length === 10 ? addDays(value, -1) : plusSeconds(value, -86_400),
      ]);
    return [
      record,
      { ...record, id: `${record.id}-twin` },
      { ...record, id: `${record.id}-eve`, ...Object.fromEntries(eve) },
    ];
  });
}

function withLaterCopies({ sheet }: Outcome): FactSheet {
  const instant = plusSeconds(sheet.flight.arrives, DAYS_LATER * 86_400);
  const date = addDays(localDateOf(toSeconds(sheet.flight.arrives), sheet.zone), DAYS_LATER);
  return withLists(sheet, (list, subject) => {
    const keys = HAPPENED[subject];
    if (!keys) return list;
    const copies = list.map((record) => ({
      ...record,
      id: `${record.id}-later`,
      ...Object.fromEntries(
        keys
          .filter((key) => (record as Record<string, unknown>)[key] !== null)
          .map((key) => [key, key.endsWith('At') ? instant : date]),
      ),
    }));
    return [...list, ...copies];
  });
}
