import { Shown } from '../../platform/http/fields.js';

export class UnsubscribedDto {
  @Shown({
    type: 'string',
    isArray: true,
    description: 'What no longer comes by mail; the page has it still',
  })
  turnedOff: string[];
}
