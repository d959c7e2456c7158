/** What is kept of a dry run, and how it is told. */
import type { ClubRuleRow } from '../../clubs/rules/club-rule.entity.js';
import { DEFAULT_PAGE_LIMIT, pageOf, type Page } from '../../platform/http/pages.js';
import { CAUTION, type Instant, type Rule, type Warning } from '../../rules/index.js';
import type { DryRunDto, DryRunSummaryDto } from './dry-run.dto.js';
import type { CaseRef } from './stored-cases.js';
import type { ChangedAnswer, Tally } from './tally.js';
import type { LeftOut } from './try-cases.js';

/** Milliseconds after which no further batch is begun: a client should not wait much longer. */
export const LONGEST_MS = 20_000;
/** Changed answers kept with the run, for listing; all are counted. */
const MOST_KEPT = 5000;

const BASIS =
  'Each decision was looked at with the facts it was made on, as if the rule had been in force then; the answer before is ' +
  'the one that was given. Bookings to come are looked at as they were decided, not with what was learnt since.';

/** What is kept of a run. */
export interface Kept extends Omit<DryRunSummaryDto, 'caution'> {
  items: ChangedAnswer[];
}

/** The draft, the rules beside it, and the time. */
export interface Frame {
  draft: ClubRuleRow;
  rule: Rule;
  others: Rule[];
  /** Warnings that the texts alone give. */
  said: Warning[];
  titles: { code: string; title: string }[];
  now: Instant;
  since: Instant;
}

/** What came of looking: the decisions looked at and left out, and how many there were. */
export interface Looked {
  looked: readonly CaseRef[];
  leftOut: readonly LeftOut[];
  /** Not looked at because the time was over. */
  late: number;
  refs: readonly CaseRef[];
  bookings: number;
  decisions: number;
}

/** Puts together what is kept. */
export function keptOf({ draft, said, now, since }: Frame, tally: Tally, of: Looked): Kept {
  const { 'not-applicable': notApplicable, ...verdicts } = tally.verdicts;
  const items = tally.changed;
  return {
    ...{ ruleId: draft.id, draftVersion: draft.rowVersion, at: now, since },
    lookedAt: of.looked.length,
    bookingsToCome: of.looked.filter(({ bookingId }) => bookingId !== null).length,
    leftOut: leftOutOf(of),
    verdicts: { ...verdicts, notApplicable },
    changed: items.length,
    changedBookings: items.filter(({ bookingId }) => bookingId !== null).length,
    changes: tally.changes(),
    warnings: [...said, ...tally.warnings()],
    basis: BASIS,
    items: items.slice(0, MOST_KEPT),
  };
}

function leftOutOf(of: Looked): { count: number; because: string }[] {
  const beyond = of.bookings + of.decisions - of.refs.length;
  const unread = new Map<string, number>();
  for (const { because } of of.leftOut) unread.set(because, (unread.get(because) ?? 0) + 1);
  return [
    ...(beyond > 0
      ? [{ count: beyond, because: 'More decisions than were asked to be looked at; these are the oldest.' }]
      : []),
    ...(of.late > 0
      ? [
          {
            count: of.late,
            because: `The run ended after ${LONGEST_MS / 1000} seconds; these are the oldest.`,
          },
        ]
      : []),
    ...[...unread].map(([because, count]) => ({ count, because: `Cannot be judged again: ${because}.` })),
  ];
}

/** Changed answers from one on. */
export function pageOfChanges(
  items: readonly ChangedAnswer[],
  from: number,
  limit: number,
): Page<ChangedAnswer> {
  const rest = items.slice(from, from + limit + 1).map((one) => ({ ...one, id: one.decisionId }));
  const page = pageOf(rest, limit);
  return { nextCursor: page.nextCursor, items: page.items.map(({ id: _id, ...one }) => one) };
}

/** The run with the first of its changed answers. */
export function firstPage({ items, ...summary }: Kept): DryRunDto {
  return { ...summary, caution: CAUTION, ...pageOfChanges(items, 0, DEFAULT_PAGE_LIMIT) };
}
