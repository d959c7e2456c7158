import { PartsField, Shown, TextField, WholeField, WordField } from '../../platform/http/fields.js';
import { ViewOf } from '../../platform/http/views.js';
import { DELIVERIES, KINDS_OF_NOTICE, type Delivery, type KindOfNotice } from '../outbox/kinds.js';

const CLOCK = /^([01]\d|2[0-3]):[0-5]\d$/;

export class ChoiceDto {
  @WordField(KINDS_OF_NOTICE)
  kind: KindOfNotice;

  @WordField(DELIVERIES, {
    description: 'Mail at once, with the day’s, or none; the page has it in any case',
  })
  delivery: Delivery;
}

export class PreferencesBody {
  @PartsField(() => ChoiceDto, { max: 40, description: 'Kinds left out go as the service has them' })
  choices: ChoiceDto[];

  @TextField({
    ...{ nullable: true, max: 5, pattern: CLOCK, says: 'a time such as 22:00', example: '22:00' },
    description: 'On the clock of the club’s zone. Mail that is not urgent waits until they are over',
  })
  quietFrom?: string | null;

  @TextField({ nullable: true, max: 5, pattern: CLOCK, says: 'a time such as 07:00', example: '07:00' })
  quietTo?: string | null;

  @WholeField({ min: 0, max: 23, description: 'Hour of the day’s digest, on the same clock' })
  digestHour: number;
}

export class ChoiceView extends ViewOf(ChoiceDto) {
  @Shown({ type: 'string' })
  title: string;
  @Shown({
    type: 'boolean',
    description: 'false: the safety of a flight hangs on it, and mail of it always goes',
  })
  mayBeOff: boolean;
}

export class PreferencesView {
  @Shown({ type: () => ChoiceView, isArray: true, description: 'Every kind that comes to this person' })
  choices: ChoiceView[];
  @Shown({ type: 'string', nullable: true })
  quietFrom: string | null;
  @Shown({ type: 'string', nullable: true })
  quietTo: string | null;
  @Shown({ type: 'integer' })
  digestHour: number;
  @Shown({ type: 'string', description: 'Zone of those hours' })
  zone: string;
  @Shown({ type: 'string', description: 'Where mail goes' })
  email: string;
  @Shown({
    type: 'boolean',
    description: 'false: no mail server is set up, and notices stand on the page only',
  })
  mailGoesOut: boolean;
  @Shown({ type: 'integer', description: 'The ETag; 0: nothing was ever chosen' })
  rowVersion: number;
}
