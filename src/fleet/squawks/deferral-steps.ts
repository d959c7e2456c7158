import type { Aircraft } from '../aircraft/aircraft.entity.js';
import type { Equipment } from '../equipment/equipment.entity.js';
import type { NewDeferral } from './deferral.dto.js';
import { deferralForbidden, stepMissing } from './squawk.problems.js';

/** Requirements that forbid a deferral, and what each says. Source: 14 CFR 91.213(d)(2). */
const REQUIREMENTS = {
  requiredByTypeDesign: 'It is part of the type certification for VFR by day',
  requiredByEquipmentList: "It is required by the aircraft's equipment or kinds-of-operation list",
  requiredByDirective: 'An airworthiness directive requires it',
} as const;

/**
 * Steps whose plain "no" means that the work is not done. The entry in the record may
 * follow later, and stays an open step until then.
 */
const WORK = {
  removedOrDeactivated: 'Remove it, or deactivate it',
  placarded: "Placard it 'Inoperative'",
} as const;

/** Every step, in the order of the section. */
const STEPS = [
  'requiredByTypeDesign',
  'requiredByEquipmentList',
  'requiredByDirective',
  'removedOrDeactivated',
  'placarded',
  'recorded',
  'noHazardDeterminedBy',
] as const;

type Steps = Pick<NewDeferral, (typeof STEPS)[number] | 'equipmentListItem'>;

/** What a deferral is held against. */
export interface DeferralOf {
  aircraft: Aircraft;
  /** The equipment the squawk is about, where that is on record. */
  equipment: Equipment | null;
}

/**
 * Refuses a deferral that the section rules out. Steps not recorded pass: they stay open, and the rules do not take
 * them for done. With an approved list, the list alone decides (14 CFR 91.213(a), (d)).
 * @throws ProblemException 422 naming the step.
 */
export function requireDeferrable(steps: Steps, { aircraft, equipment }: DeferralOf): void {
  if (aircraft.approvedEquipmentList) return;
  if (equipment?.requiredByTypeDesign) {
    throw deferralForbidden('equipmentId', `${equipment.name} is recorded as required by the type design`);
  }
  for (const [field, why] of Object.entries(REQUIREMENTS)) {
    if (steps[field as keyof typeof REQUIREMENTS] === true) throw deferralForbidden(field, why);
  }
  for (const [field, todo] of Object.entries(WORK)) {
    if (steps[field as keyof typeof WORK] === false) throw stepMissing(field, todo);
  }
}

/** Steps still to be done or recorded. */
export function openSteps(steps: Steps, aircraft: Aircraft): string[] {
  if (aircraft.approvedEquipmentList) return steps.equipmentListItem ? [] : ['equipmentListItem'];
  return STEPS.filter(
    (step) => steps[step] === null || steps[step] === undefined || (step === 'recorded' && !steps[step]),
  );
}
