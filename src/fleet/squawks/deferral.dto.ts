import { DayField, FlagField, Shown, TextField } from '../../platform/http/fields.js';
import { ChangesOf, ViewOf } from '../../platform/http/views.js';

const OPEN = 'Null while not looked into: then a flight that depends on it cannot be decided';

/**
 * The steps of 14 CFR 91.213 for one squawk. A step left out stays open, and is never taken for done.
 */
export class NewDeferral {
  @DayField()
  deferredOn: string;

  @DayField({ nullable: true, description: 'Last day it may stay deferred' })
  deadlineOn?: string | null;

  @FlagField({ nullable: true, description: `Part of the type certification for VFR by day. ${OPEN}` })
  requiredByTypeDesign?: boolean | null;

  @FlagField({ nullable: true, description: `On the required-equipment or kinds-of-operation list. ${OPEN}` })
  requiredByEquipmentList?: boolean | null;

  @FlagField({ nullable: true, description: `Required by an airworthiness directive. ${OPEN}` })
  requiredByDirective?: boolean | null;

  @FlagField({ nullable: true, description: OPEN })
  removedOrDeactivated?: boolean | null;

  @FlagField({ nullable: true, description: `Placarded 'Inoperative'. ${OPEN}` })
  placarded?: boolean | null;

  @FlagField({ nullable: true, description: `Entered in the maintenance record. ${OPEN}` })
  recorded?: boolean | null;

  @TextField({
    max: 200,
    nullable: true,
    description: 'Pilot or mechanic who determined that it is no hazard',
  })
  noHazardDeterminedBy?: string | null;

  @TextField({
    max: 200,
    nullable: true,
    description:
      'Item of the approved minimum equipment list it is deferred under; only for an aircraft flown with one, and then in place of all other steps',
  })
  equipmentListItem?: string | null;
}

/** PATCH of a deferral. */
export class DeferralChanges extends ChangesOf(NewDeferral) {}

/** A deferral as an answer. */
export class DeferralView extends ViewOf(NewDeferral) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'array', items: { type: 'string' }, description: 'Steps that are still open' })
  openSteps: string[];

  @Shown({ type: 'integer', description: 'Counts the edits of the deferral; its ETag' })
  rowVersion: number;
}
