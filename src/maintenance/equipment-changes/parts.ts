import { type EntityManager, In } from 'typeorm';
import { Equipment } from '../../fleet/equipment/equipment.entity.js';
import type { EquipmentKind, LocalDate } from '../../rules/index.js';
import type { NewEquipmentChange, RemovedPart } from './equipment-change.dto.js';
import { newWeight, type EmptyWeight, type NewWeight, type Part } from './new-weight.js';
import { valueRefused } from '../../platform/problems/value-refused.js';

/** A piece to be taken out, with the weight that counts. */
export interface PieceOut {
  piece: Equipment;
  part: Part;
}

/** @throws ProblemException 422 naming the entry whose piece is not in the aircraft on that day. */
export async function piecesOut(
  em: EntityManager,
  of: { clubId: string; aircraftId: string; doneOn: LocalDate; removes: readonly RemovedPart[] },
): Promise<PieceOut[]> {
  const { clubId, aircraftId, doneOn, removes } = of;
  const rows = await em.findBy(Equipment, {
    clubId,
    aircraftId,
    id: In(removes.map(({ equipmentId }) => equipmentId)),
  });
  const seen = new Set<string>();
  return removes.map(({ equipmentId, weightLb, armIn, negligible }, index) => {
    const field = `removes[${index}].equipmentId`;
    const piece = rows.find(({ id }) => id === equipmentId);
    if (!piece) throw valueRefused(field, `This aircraft has no equipment with the id ${equipmentId}.`);
    if (seen.has(equipmentId)) throw valueRefused(field, `“${piece.name}” is removed twice.`);
    seen.add(equipmentId);
    if (piece.removedOn !== null)
      throw valueRefused(field, `“${piece.name}” was removed on ${piece.removedOn} already.`);
    if (piece.installedOn > doneOn)
      throw valueRefused(field, `“${piece.name}” was installed on ${piece.installedOn}, after ${doneOn}.`);
    // What is carried is no part of the empty weight.
    if (piece.portable) return { piece, part: { weightLb: 0, armIn: null } };
    return {
      piece,
      part: { weightLb: weightLb ?? piece.weightLb, armIn: armIn ?? piece.armIn, negligible },
    };
  });
}

/**
 * The empty weight afterwards: as weighed, or summed.
 * @throws ProblemException 422 where a part's weight is neither given nor negligible and nothing was weighed.
 */
export function weightAfter(
  before: EmptyWeight | null,
  out: readonly PieceOut[],
  body: Pick<NewEquipmentChange, 'installs' | 'weighing'>,
): NewWeight {
  if (body.weighing) {
    const { emptyWeightLb, emptyArmIn = null } = body.weighing;
    return { known: true, weight: { emptyWeightLb, emptyArmIn } };
  }
  const parts = [
    ...out.map(({ part }, index) => ({ part, field: `removes[${index}].weightLb` })),
    ...body.installs.map((one, index) => ({
      part:
        one.basis === 'portable'
          ? { weightLb: 0, armIn: null }
          : { weightLb: one.weightLb ?? null, armIn: one.armIn ?? null, negligible: one.negligible },
      field: `installs[${index}].weightLb`,
    })),
  ];
  const missing = parts.find(({ part }) => part.weightLb === null && part.negligible !== true);
  if (missing && before !== null)
    throw valueRefused(
      missing.field,
      'Give the weight and arm of each part, or say that a mechanic found it negligible, or give the weighing that followed.',
    );
  return newWeight(
    before,
    parts.slice(0, out.length).map(({ part }) => part),
    parts.slice(out.length).map(({ part }) => part),
  );
}

/** Kinds of equipment that do their work in the aircraft; portable things do none. */
export function kindsOf(
  pieces: readonly Pick<Equipment, 'kind' | 'satisfies' | 'portable'>[],
): Set<EquipmentKind> {
  return new Set(
    pieces.filter(({ portable }) => !portable).flatMap(({ kind, satisfies }) => [kind, ...satisfies]),
  );
}
