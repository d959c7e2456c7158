/** A whole sign-off held against what the club has laid down for it. */
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../accounts/current-user.js';
import { addDays, type LocalDate } from '../rules/calendar/dates.js';
import { ProblemException } from '../platform/problems/problem-exception.js';
import type { Instant } from '../rules/index.js';
import type { Checkout } from './checkout.entity.js';
import type { CheckoutDto } from './checkouts.dto.js';
import { changeToShow, loadProgress } from './progress/load-progress.js';
import { leftInWords, type Progress, progressOf } from './progress/progress-of.js';
import { requirementOf } from './progress/progress-views.js';
import { sameSubject } from './subjects.js';
import { assertMaySign } from './syllabus/marks.service.js';

type Under = Pick<Checkout, 'versionId' | 'differenceId'> & { expiresOn?: LocalDate | null };

/**
 * What the sign-off is written under; nothing where the club asks for nothing in particular.
 * @throws 403 without authority, 409 while something is left, 422 for dates that do not fit
 */
export async function asLaidDown(
  em: EntityManager,
  by: SignedIn,
  of: { memberId: string; draft: CheckoutDto; now: Instant },
): Promise<Under> {
  const { memberId, draft, now } = of;
  const { kind, modelId = null, equipmentGroup = null, condition = null, signedOn } = draft;
  const loaded = await loadProgress(em, { clubId: by.clubId, memberIds: [memberId], now });
  const { inForce, asked } = loaded;
  const change =
    kind === 'differences'
      ? await changeToShow(em, { clubId: by.clubId, aircraftId: draft.aircraftId!, on: signedOn })
      : null;
  const requirement =
    kind === 'differences'
      ? change && requirementOf(change, inForce)
      : inForce.find((one) => sameSubject(one, { kind, modelId, equipmentGroup, condition }));
  if (!requirement) return { versionId: null, differenceId: null };
  assertMaySign(by, requirement);
  const differenceId = change?.id ?? null;
  const progress = progressOf(requirement, loaded.of(memberId), inForce, asked, differenceId);
  if (!progress.ready) {
    const left = leftInWords(progress);
    throw new ProblemException('checkout-not-complete', {
      detail: `“${requirement.version.title}” asks for more: ${left.slice(0, 8).join('; ')}${left.length > 8 ? `; and ${left.length - 8} more` : ''}.`,
      extensions: { left },
    });
  }
  assertAfter(progress, signedOn);
  const { goodDays } = requirement.version;
  return { versionId: requirement.version.id, differenceId, expiresOn: endOf(draft, goodDays) };
}

/** Nothing it rests on is younger than the sign-off. @throws 422 */
function assertAfter({ items, quiz }: Progress, signedOn: LocalDate): void {
  const days = [
    ...items.flatMap(({ item, mark }) => (item.required && mark ? [mark.on] : [])),
    ...(quiz?.passedOn ? [quiz.passedOn] : []),
  ];
  const last = days.sort().at(-1);
  if (last !== undefined && signedOn < last)
    throw new ProblemException('checkout-shape', {
      field: 'signedOn',
      detail: `What it rests on was complete on ${last}. Sign it for that day or later.`,
    });
}

/** As long as the club lets it last, or shorter. @throws 422 */
function endOf({ signedOn, expiresOn = null }: CheckoutDto, goodDays: number | null): LocalDate | null {
  if (goodDays === null) return expiresOn;
  const through = addDays(signedOn, goodDays);
  if (expiresOn !== null && expiresOn > through)
    throw new ProblemException('checkout-shape', {
      field: 'expiresOn',
      detail: `The club lets it last ${goodDays} days, through ${through}. Leave it out, or name an earlier day.`,
    });
  return expiresOn ?? through;
}
