import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { hasAnyRole } from '../../accounts/roles.js';
import { MEMBERS } from '../../members/member-rows.js';
import { assertOwnOr, isOwn, OFFICERS, READERS } from '../../members/members.access.js';
import { Clock } from '../../platform/clock.js';
import { addRecord, findRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { type Page, pageOf, readCursor } from '../../platform/http/pages.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { valueRefused } from '../../platform/problems/value-refused.js';
import { changeToShow, loadProgress, type Loaded } from '../progress/load-progress.js';
import { progressOf } from '../progress/progress-of.js';
import { requirementOf } from '../progress/progress-views.js';
import { type InForce, maySign } from '../requirements/read-requirements.js';
import type { CheckoutMark } from './mark.entity.js';
import type { MarkCorrectionDto, MarkDto, MarkQuery, MarkSeenDto, MarkView } from './mark.dto.js';
import { CHECKOUT_MARKS, listMarks } from './mark-rows.js';
import '../checkouts.checks.js';
import './marks.problems.js';

/** Items of a checkout signed one by one. Records are never edited. */
@Injectable()
export class MarksService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** Newest first. @throws 403, 404 */
  list(by: SignedIn, memberId: string, query: MarkQuery): Promise<Page<MarkView>> {
    assertOwnOr(by, memberId, READERS);
    const { clubId } = by;
    const after = readCursor(query.cursor);
    const work = async (em: EntityManager): Promise<Page<MarkView>> => {
      await findRecord(em, MEMBERS, { clubId, id: memberId });
      const of = { clubId, memberId, after, corrected: query.corrected ?? false };
      return pageOf(await listMarks(em, of, query.limit + 1), query.limit);
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  /** @throws 403 for oneself or without authority, 404, 409 where it is signed already, 422 */
  sign(by: SignedIn, memberId: string, body: MarkDto): Promise<MarkView> {
    if (isOwn(by, memberId)) throw new ProblemException('own-checkout');
    return this.write(by, memberId, async (em, loaded) => {
      const { itemId, differenceId = null } = body;
      const requirement = loaded.inForce.find(({ version }) => version.items.some(({ id }) => id === itemId));
      if (!requirement)
        throw valueRefused('itemId', 'No checkout in force has such an item. Read what is asked for again.');
      assertMaySign(by, requirement);
      if (differenceId !== null) await assertToShow(em, by, { loaded, requirement, differenceId });
      const { items } = progressOf(
        requirement,
        loaded.of(memberId),
        loaded.inForce,
        loaded.asked,
        differenceId,
      );
      const now = items.find(({ item }) => item.id === itemId)!;
      if (now.state === 'signed' && body.outcome === 'signed')
        throw new ProblemException('item-signed-already', {
          detail: `“${now.item.title}” was signed by ${now.mark!.signedBy.name} on ${now.mark!.on}.`,
        });
      return { ...seen(body, loaded), itemId, differenceId };
    });
  }

  /**
   * Another record in its place by an instructor who may sign it; withdrawn by who signed it or an officer. Neither while a
   * sign-off rests on it. @throws 403, 404, 409, 422
   */
  correct(
    by: SignedIn,
    memberId: string,
    id: string,
    { because, record }: MarkCorrectionDto,
  ): Promise<MarkView> {
    if (isOwn(by, memberId)) throw new ProblemException('own-checkout');
    const { clubId } = by;
    return this.write(by, memberId, async (em, loaded) => {
      const row = await findRecord(em, CHECKOUT_MARKS, { clubId, memberId, id });
      const standing = loaded.of(memberId).marks.find((one) => one.id === id);
      if (!standing) throw new ProblemException('item-corrected-already');
      if (standing.spent) throw new ProblemException('item-behind-checkout');
      const kept = { itemId: row.itemId, differenceId: row.differenceId, corrects: id, because };
      if (!record) {
        if (row.signedBy !== by.memberId && !hasAnyRole(by, ...OFFICERS))
          throw new ProblemException('not-yours', {
            detail: 'A signed item is withdrawn by the instructor who signed it, or by an officer.',
          });
        return { ...kept, outcome: row.outcome, markedOn: row.markedOn, note: row.note, withdraws: true };
      }
      if (!hasAnyRole(by, 'instructor')) throw new ProblemException('not-authorised-for-checkout');
      const requirement = loaded.inForce.find(({ version }) =>
        version.items.some((item) => item.id === row.itemId),
      );
      if (!requirement) throw new ProblemException('item-of-old-version');
      assertMaySign(by, requirement);
      return {
        ...kept,
        ...seen({ ...record, markedOn: record.markedOn ?? row.markedOn }, loaded, 'record.'),
      };
    });
  }

  private write(
    by: SignedIn,
    memberId: string,
    work: (em: EntityManager, loaded: Loaded) => Promise<Partial<CheckoutMark>>,
  ): Promise<MarkView> {
    const { clubId } = by;
    const run = async (em: EntityManager): Promise<MarkView> => {
      // Two taps come one after the other.
      await findRecord(em, MEMBERS, { clubId, id: memberId }, { lock: true });
      const loaded = await loadProgress(em, { clubId, memberIds: [memberId], now: this.clock.now() });
      const values = await work(em, loaded);
      const row = await addRecord(em, CHECKOUT_MARKS, { ...values, clubId, memberId, signedBy: by.memberId });
      const [view] = await listMarks(em, { clubId, memberId, id: row.id, corrected: true, after: null }, 1);
      return view!;
    };
    return this.db.run(clubId, run, { actorId: by.memberId });
  }
}

/** @throws 403 */
export function assertMaySign(by: SignedIn, requirement: InForce): void {
  if (maySign(requirement, by.memberId)) return;
  throw new ProblemException('not-authorised-for-checkout', {
    detail: `“${requirement.version.title}” is signed by ${requirement.instructors.map(({ name }) => name).join(', ')}.`,
  });
}

/** What was seen, on a day that has come. @throws 422 */
function seen(
  body: MarkSeenDto,
  { asked: { today } }: Loaded,
  at = '',
): Pick<CheckoutMark, 'outcome' | 'markedOn' | 'note'> {
  const { outcome, markedOn = today, note = '' } = body;
  if (markedOn > today)
    throw valueRefused(`${at}markedOn`, `An item is signed once it was shown; today is ${today}.`);
  if (outcome === 'not-yet' && note.trim().length < 5)
    throw valueRefused(`${at}note`, 'Say what is missing, in 5 characters or more.');
  return { outcome, markedOn, note };
}

/** The change is the newest in effect on its aircraft, and of the group the item belongs to. @throws 422 */
async function assertToShow(
  em: EntityManager,
  { clubId }: SignedIn,
  of: { loaded: Loaded; requirement: InForce; differenceId: string },
): Promise<void> {
  const { loaded, requirement, differenceId } = of;
  const [row] = await em.query<{ aircraftId: string }[]>(
    'SELECT aircraft_id AS "aircraftId" FROM differences WHERE club_id = $1 AND id = $2',
    [clubId, differenceId],
  );
  if (!row) throw valueRefused('differenceId', 'The club has no such change of equipment.');
  const newest = await changeToShow(em, { clubId, aircraftId: row.aircraftId, on: loaded.asked.today });
  if (newest?.id !== differenceId)
    throw valueRefused(
      'differenceId',
      'The aircraft has a newer change, or this one has ended. Read again what is to be shown.',
    );
  if (requirementOf(newest, loaded.inForce)?.id !== requirement.id)
    throw valueRefused('differenceId', `The item does not belong to a change of “${newest.equipmentGroup}”.`);
}
