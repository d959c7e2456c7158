import { DayField, Shown, TextField, WordField } from '../../platform/http/fields.js';
import { PageShape } from '../../platform/http/pages.js';
import { ViewOf, VoidedView } from '../../platform/http/views.js';
import type { CheckFact } from '../../rules/facts/person.js';

export const CHECK_KINDS = ['identity', 'citizenship', 'background'] as const satisfies CheckFact['kind'][];

/** What an officer has seen. There is no field for a number of a document, on purpose. */
export class NewMemberCheck {
  @WordField(CHECK_KINDS, {
    description:
      "'identity': an identity document; 'citizenship': evidence of citizenship or nationality, or a determination of eligibility for flight training (49 CFR 1552.7); 'background': the club looked into the background",
  })
  kind: CheckFact['kind'];

  @DayField({ description: 'The day it was seen; today or earlier' })
  seenOn: string;

  @DayField({ nullable: true, description: 'Last day it holds as the document says; null: it names no end' })
  expiresOn?: string | null;
}

/** Why a check is taken back. */
export class VoidMemberCheck {
  @TextField({
    max: 500,
    description: 'In five characters or more; the member reads it. No numbers of documents',
  })
  reason: string;
}

/** A check as the API shows it. */
export class MemberCheckView extends ViewOf(NewMemberCheck) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'uuid' })
  memberId: string;

  @Shown({ type: 'string', format: 'uuid', description: 'The officer who saw it' })
  seenBy: string;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: string;

  @Shown({ type: () => VoidedView, nullable: true, description: 'Null while it stands' })
  voided: VoidedView | null;
}

/** One page of checks, newest record first, those taken back among them. */
export class MemberCheckPage extends PageShape {
  @Shown({ type: () => MemberCheckView, isArray: true })
  items: MemberCheckView[];
}
