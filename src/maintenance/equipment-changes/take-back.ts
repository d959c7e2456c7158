/** Takes a change of equipment back while nothing rests on it. Nothing is deleted: what it began ends on the day it began. */
import { type EntityManager, In } from 'typeorm';
import { checkoutStands } from '../../checkouts/standing-checkouts.js';
import { AirworthinessItem } from '../../fleet/airworthiness/airworthiness-item.entity.js';
import { takeUpDirectives } from '../../fleet/directives/take-up.js';
import { Differences } from '../../fleet/differences/differences.entity.js';
import { Equipment } from '../../fleet/equipment/equipment.entity.js';
import { keepWeightInStep } from '../../fleet/weighings/current-weight.js';
import { Weighing } from '../../fleet/weighings/weighing.entity.js';
import { EquipmentChange } from './equipment-change.entity.js';
import { changeKept } from './equipment-changes.problems.js';

/** @throws ProblemException 409 saying what rests on it. The change's row is locked by the caller. */
export async function takeChangeBack(
  em: EntityManager,
  change: EquipmentChange,
  by: { memberId: string; reason: string; now: string },
): Promise<void> {
  if (change.takenBackAt !== null) throw changeKept(`It was taken back at ${change.takenBackAt}.`);
  const standing = await whatRestsOnIt(em, change);
  if (standing !== null) throw changeKept(standing);
  const { clubId, id, aircraftId, doneOn, effects } = change;
  const these = (ids: readonly string[]) => ({ clubId, id: In([...ids]) });
  if (effects.removed.length > 0)
    await em.update(Equipment, these(effects.removed), { removedOn: null, removedByChange: null });
  if (effects.installed.length > 0)
    await em.update(Equipment, these(effects.installed), { removedOn: doneOn, removedByChange: id });
  if (effects.endedItems.length > 0)
    await em.update(AirworthinessItem, these(effects.endedItems), { retiredOn: null });
  if (effects.begunItems.length > 0)
    await em.update(AirworthinessItem, these(effects.begunItems), { retiredOn: doneOn });
  if (effects.differenceId !== null)
    await em.update(Differences, these([effects.differenceId]), { endedOn: doneOn });
  if (effects.weighingId !== null) {
    await em.update(Weighing, these([effects.weighingId]), { voidedAt: by.now });
    await keepWeightInStep(em, clubId, aircraftId);
  }
  await takeUpDirectives(em, clubId, { aircraftIds: [aircraftId], today: doneOn });
  const { memberId, reason, now } = by;
  await em.update(
    EquipmentChange,
    { clubId, id },
    { takenBackAt: now, takenBackBy: memberId, takenBackReason: reason },
  );
}

interface Resting {
  flown: string | null;
  later: string | null;
  squawk: string | null;
  signed: string | null;
  weighed: string | null;
  shown: boolean;
}

/** A sentence on what rests on the change; null while nothing does. */
async function whatRestsOnIt(
  em: EntityManager,
  { id, aircraftId, doneOn, effects, recordedAt }: EquipmentChange,
): Promise<string | null> {
  const [found]: Resting[] = await em.query(
    `SELECT
      (SELECT min(flown_on)::text FROM log_entries l WHERE l.club_id = bellcrank_club() AND l.aircraft_id = $1
        AND l.voided_at IS NULL AND l.device IS NULL
        AND (l.flown_on > $2::date OR l.flown_on = $2::date AND l.departed_at >= $3::timestamptz)) AS flown,
      (SELECT min(e.title) FROM equipment_changes e WHERE e.club_id = bellcrank_club() AND e.aircraft_id = $1
        AND e.taken_back_at IS NULL AND e.id > $4) AS later,
      (SELECT min(s.title) FROM squawks s WHERE s.club_id = bellcrank_club() AND s.equipment_id = ANY ($5::uuid[])) AS squawk,
      (SELECT min(i.title) FROM airworthiness_items i JOIN compliances c ON c.club_id = i.club_id AND c.item_id = i.id
        WHERE i.club_id = bellcrank_club() AND i.id = ANY ($6::uuid[]) AND c.voided_at IS NULL AND c.recorded_at > $3::timestamptz
          AND c.done_on > $2::date) AS signed,
      (SELECT min(w.effective_on)::text FROM weighings w WHERE w.club_id = bellcrank_club() AND w.aircraft_id = $1
        AND w.voided_at IS NULL AND w.id > coalesce($7::uuid, 'ffffffff-ffff-ffff-ffff-ffffffffffff'::uuid)) AS weighed,
      EXISTS (SELECT 1 FROM checkouts c WHERE c.club_id = bellcrank_club() AND c.kind = 'differences' AND c.aircraft_id = $1
        AND $8::uuid IS NOT NULL AND c.recorded_at > $3::timestamptz
        AND ${checkoutStands('c')}) AS shown`,
    [
      ...[aircraftId, doneOn, recordedAt, id],
      ...[effects.installed, effects.begunItems, effects.weighingId, effects.differenceId],
    ],
  );
  const { flown, later, squawk, signed, weighed, shown } = found!;
  if (flown !== null) return `The aircraft has flown since, on ${flown}.`;
  if (later !== null) return `A later change, “${later}”, was made.`;
  if (squawk !== null) return `A squawk, “${squawk}”, is about equipment it installed.`;
  if (signed !== null) return `“${signed}”, which began with it, has been signed since.`;
  if (weighed !== null) return `The aircraft was weighed after it, on ${weighed}.`;
  if (shown) return 'A differences checkout was signed after it.';
  return null;
}
