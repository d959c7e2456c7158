/**
 * Empty weight after a change of equipment: weights and moments of what goes are taken off, of what comes are added, and the arm is
 * the moment over the weight (FAA-H-8083-1, Weight and Balance Handbook, on equipment changes).
 */

/** A part by its weight and where it sits; null: not known. */
export interface Part {
  weightLb: number | null;
  armIn: number | null;
  /** A mechanic found its weight negligible: it is left out of the sum. */
  negligible?: boolean;
}

/** An empty weight, pounds, and its arm, inches aft of the datum; a null arm: not known. */
export interface EmptyWeight {
  emptyWeightLb: number;
  emptyArmIn: number | null;
}

/** The new empty weight, or why there is none. */
export type NewWeight = { known: true; weight: EmptyWeight } | { known: false; because: string };

/** Adds up. Without a part's weight there is no sum; without an arm there is a weight and no arm. */
export function newWeight(
  before: EmptyWeight | null,
  removed: readonly Part[],
  installed: readonly Part[],
): NewWeight {
  if (before === null) return unknown('no empty weight is on record for the aircraft');
  const counted = (parts: readonly Part[]) => parts.filter(({ negligible }) => negligible !== true);
  const parts = [
    ...counted(removed).map((part) => ({ ...part, sign: -1 })),
    ...counted(installed).map((part) => ({ ...part, sign: 1 })),
  ];
  let weightLb = before.emptyWeightLb;
  let momentLbIn = before.emptyArmIn === null ? null : before.emptyWeightLb * before.emptyArmIn;
  for (const part of parts) {
    if (part.weightLb === null) return unknown('the weight of a part is not known');
    weightLb += part.sign * part.weightLb;
    if (part.weightLb === 0) continue;
    momentLbIn =
      momentLbIn === null || part.armIn === null ? null : momentLbIn + part.sign * part.weightLb * part.armIn;
  }
  if (!(weightLb > 0)) return unknown('more weight would be removed than the aircraft has');
  const emptyArmIn = momentLbIn === null ? null : momentLbIn / weightLb;
  return {
    known: true,
    weight: {
      emptyWeightLb: rounded(weightLb),
      emptyArmIn: emptyArmIn === null ? null : rounded(emptyArmIn),
    },
  };
}

/** To a hundredth, as such records are kept (common practice, no source). */
const rounded = (value: number): number => Math.round(value * 100) / 100;

const unknown = (because: string): NewWeight => ({ known: false, because });
