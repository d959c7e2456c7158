import {
  DayField,
  IdField,
  NoteField,
  Shown,
  SwitchField,
  TextField,
  WordField,
} from '../platform/http/fields.js';
import { PageQuery, PageShape } from '../platform/http/pages.js';
import { ViewOf, VoidedView } from '../platform/http/views.js';
import type { CheckoutCondition, CheckoutFact, EquipmentGroup } from '../rules/facts/person.js';
import { CHECKOUT_KINDS, CONDITIONS, EQUIPMENT_GROUPS } from './subjects.js';

/** A sign-off. Who signs is the signed-in instructor. */
export class CheckoutDto {
  @WordField(CHECKOUT_KINDS, {
    description:
      "'model': may fly the club's model; 'differences': knows the aircraft's changed equipment; 'equipment' and 'condition': was shown the group, or flying in the condition; 'annual-check': the club's yearly check",
  })
  kind: CheckoutFact['kind'];

  @IdField({ nullable: true, description: "The model, for the kind 'model'" })
  modelId?: string | null;

  @IdField({ nullable: true, description: "The aircraft, for the kind 'differences'" })
  aircraftId?: string | null;

  @WordField(EQUIPMENT_GROUPS, { nullable: true, description: "For the kind 'equipment'" })
  equipmentGroup?: EquipmentGroup | null;

  @WordField(CONDITIONS, { nullable: true, description: "For the kind 'condition'" })
  condition?: CheckoutCondition | null;

  @DayField({ description: 'The day of the flight that was signed for; today or earlier' })
  signedOn: string;

  @DayField({
    nullable: true,
    description:
      'Last valid date, where it has one. Where the club has laid down how long it is good for, that is put in, and only an earlier day is taken',
  })
  expiresOn?: string | null;

  @NoteField({ optional: true, max: 2000 })
  remarks?: string;
}

/** Why a sign-off is taken back. */
export class VoidCheckoutDto {
  @TextField({ max: 1000, description: 'For the record; everyone who sees the checkout sees it' })
  reason: string;
}

/** A sign-off as the API shows it. */
export class CheckoutView extends ViewOf(CheckoutDto) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'uuid' })
  memberId: string;

  @Shown({ type: 'string', format: 'uuid', description: 'The instructor' })
  signedBy: string;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: string;

  @Shown({
    type: 'string',
    format: 'uuid',
    nullable: true,
    description: 'The version of what the club asks that it was signed under; null: nothing was laid down',
  })
  versionId: string | null;

  @Shown({
    type: 'string',
    format: 'uuid',
    nullable: true,
    description: 'The change that was shown under it',
  })
  differenceId: string | null;

  @Shown({ type: () => VoidedView, nullable: true, description: 'Null while it stands' })
  voided: VoidedView | null;
}

/** Narrows the list of sign-offs. */
export class CheckoutQuery extends PageQuery {
  @SwitchField({ default: false, description: 'true: show those taken back too' })
  voided?: boolean;
}

/** One page of sign-offs, newest record first. */
export class CheckoutPage extends PageShape {
  @Shown({ type: () => CheckoutView, isArray: true })
  items: CheckoutView[];
}
