import type { EntityManager } from 'typeorm';
import { Squawk } from '../squawk.entity.js';
import { notADuplicateOf } from '../squawk.problems.js';
import { OPEN_STATES } from '../squawk-states.js';

/**
 * Refuses to close a squawk as a duplicate where that would let an aircraft fly that may not: the one it is kept in must be
 * open, ground the aircraft if this one does, and take the same equipment out of use. The table holds the same.
 * @throws ProblemException 422
 */
export async function requireDuplicateOf(
  em: EntityManager,
  squawk: Squawk,
  ofSquawkId: string,
): Promise<void> {
  const { clubId, aircraftId } = squawk;
  if (ofSquawkId === squawk.id)
    throw notADuplicateOf('A squawk is no duplicate of itself. Name another squawk of this aircraft.');
  const kept = await em.findOne(Squawk, {
    where: { clubId, aircraftId, id: ofSquawkId },
    lock: { mode: 'pessimistic_write' },
  });
  if (!kept)
    throw notADuplicateOf(
      `This aircraft has no squawk with the id ${ofSquawkId}. Choose one of its open ones.`,
    );
  if (!OPEN_STATES.includes(kept.state))
    throw notADuplicateOf(`"${kept.title}" is closed. Choose an open squawk, or reopen that one first.`);
  if (squawk.state === 'grounding' && kept.state !== 'grounding')
    throw notADuplicateOf(
      `This squawk grounds the aircraft and "${kept.title}" does not. Ground the aircraft for that one first.`,
    );
  if (squawk.equipmentId !== null && kept.equipmentId !== squawk.equipmentId)
    throw notADuplicateOf(
      `This squawk takes equipment out of use that "${kept.title}" does not name. Say there which equipment it is about first.`,
    );
}
