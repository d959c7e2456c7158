/** What an officer has seen of a member: which checks stand on a flight, and how one more would be recorded. */
import { addDays, type LocalDate } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import type { Remedy } from '../../../engine/remedy.js';
import type { Counted } from '../../../engine/rule.js';
import type { CheckFact } from '../../../facts/person.js';

/** What each kind is called in sentences. */
export const CHECK_WORDS: Record<CheckFact['kind'], string> = {
  identity: 'identity document',
  citizenship: 'citizenship or eligibility for flight training',
  background: 'background check',
};

/** A check of a kind, and for how many days it is good; 0: for good, where it names no end itself. */
export interface Asked {
  kind: CheckFact['kind'];
  daysGood: number;
}

/** The check that stands on the flight for the longest; null when none does. */
export function standingCheck(
  checks: readonly CheckFact[],
  asked: Asked,
  moment: Moment,
): { check: CheckFact; through: LocalDate | null } | null {
  const standing = checks
    .filter(({ kind, on }) => kind === asked.kind && moment.startsOnOrAfter(on))
    .map((check) => ({ check, through: goodThrough(check, asked.daysGood) }))
    .filter(({ through }) => through === null || moment.endsOnOrBefore(through));
  const order = ({ check, through }: (typeof standing)[number]): string =>
    `${through ?? '9999-12-31'} ${check.on} ${check.id}`;
  return standing.sort((a, b) => (order(a) < order(b) ? 1 : -1))[0] ?? null;
}

/** The club's days can only shorten what the document itself says. */
function goodThrough({ on, expiresOn }: CheckFact, daysGood: number): LocalDate | null {
  const counted = daysGood === 0 ? null : addDays(on, daysGood);
  if (counted === null || expiresOn === null) return counted ?? expiresOn;
  return counted < expiresOn ? counted : expiresOn;
}

export const countedCheck = ({ id, on, kind }: CheckFact): Counted => ({ id, on, what: CHECK_WORDS[kind] });

/** An officer looks at the papers and records that; nothing where that would no longer serve the flight. */
export function showPapers(missing: readonly Asked[], moment: Moment): Remedy[] {
  const on = moment.knowledgeDate();
  const serves = missing.every(
    ({ daysGood }) => daysGood === 0 || moment.endsOnOrBefore(addDays(on, daysGood)),
  );
  if (!serves || !moment.startsOnOrAfter(on)) return [];
  const what = missing.map(({ kind }) => CHECK_WORDS[kind]).join(' and ');
  return [
    {
      act: 'show-papers-to-officer',
      title: `Show an officer the papers, who records it: ${what}.`,
      by: 'officer',
      effects: missing.map(({ kind }) => ({
        op: 'append' as const,
        fact: 'member.checks' as const,
        value: { id: `planned:${kind}`, kind, on, expiresOn: null } satisfies CheckFact,
      })),
    },
  ];
}
