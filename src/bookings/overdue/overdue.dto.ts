import { IdField, PartsField, Shown, WholeField } from '../../platform/http/fields.js';
import { ViewOf } from '../../platform/http/views.js';
import type { OverdueStage } from './tell-overdue.js';

const STAGES: OverdueStage[] = ['crew', 'named', 'officers'];

/** Said with every alert. */
export const NOT_FLIGHT_FOLLOWING =
  'An aid of the club, and no flight following: nobody watches it, and it knows only what was put in. Whoever fears for an aircraft calls flight service or the emergency number at once.';

/** An aircraft that was not back, and that the reader was told of. */
export class OverdueAlertView {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;
  @Shown({ type: 'string', format: 'uuid' })
  bookingId: string;
  @Shown({ type: 'string' })
  registration: string;
  @Shown({ type: 'string', description: 'Who flies' })
  memberName: string;
  @Shown({ type: 'string', format: 'date-time' })
  dueBackAt: string;
  @Shown({
    type: 'string',
    enum: STAGES,
    description: 'Why you: aboard, named by the club, or safety officer',
  })
  stage: OverdueStage;
  @Shown({ type: 'string', format: 'date-time' })
  toldAt: string;
  @Shown({ type: 'boolean', description: 'Still out' })
  out: boolean;
}

/** Alerts of the reader's that they have not put away, newest first. */
export class OverdueAlerts {
  @Shown({ type: () => OverdueAlertView, isArray: true })
  items: OverdueAlertView[];
  @Shown({ type: 'string' })
  caution: string;
}

/** Somebody who is told of every aircraft that is overdue. */
export class OverdueContactDto {
  @IdField()
  memberId: string;
  @WholeField({ max: 1440, description: 'Minutes after the time it is due back' })
  afterMinutes: number;
}

/** PUT of the people who are told. */
export class OverdueContactsDto {
  @PartsField(() => OverdueContactDto, { max: 50 })
  contacts: OverdueContactDto[];
}

export class OverdueContactView extends ViewOf(OverdueContactDto) {
  @Shown({ type: 'string' })
  name: string;
}

/** The people named, by how soon they are told. */
export class OverdueContacts {
  @Shown({ type: () => OverdueContactView, isArray: true })
  items: OverdueContactView[];
}
