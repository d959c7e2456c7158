import { DayField, Shown } from '../../platform/http/fields.js';
import { PageShape } from '../../platform/http/pages.js';
import { ChangesOf, RecordHead, ViewOf } from '../../platform/http/views.js';

/** A registration certificate. Source of its dates: 14 CFR 47.40. */
export class NewRegistration {
  @DayField()
  issuedOn: string;

  @DayField({ nullable: true, description: 'As printed; the rules know when the law extended it' })
  printedExpiryOn?: string | null;

  @DayField({ nullable: true, description: 'Ended before its time: sale, export, cancellation' })
  endedOn?: string | null;
}

/** PATCH of the same. */
export class RegistrationChanges extends ChangesOf(NewRegistration) {}

/** A registration certificate as an answer. */
export class RegistrationView extends ViewOf(NewRegistration) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'uuid' })
  aircraftId: string;

  @Shown({ type: 'integer' })
  rowVersion: number;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: RecordHead['recordedAt'];
}

/** A page of them. */
export class RegistrationPage extends PageShape {
  @Shown({ type: () => RegistrationView, isArray: true })
  items: RegistrationView[];
}
