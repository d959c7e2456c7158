import { Shown } from '../../platform/http/fields.js';
import { PageShape } from '../../platform/http/pages.js';

/** A message that could not be delivered. What it says is between the club and its member. */
export class GivenUpMailDto {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;
  @Shown({ type: 'string', format: 'uuid' })
  memberId: string;
  @Shown({ type: 'string' })
  memberName: string;
  @Shown({ type: 'string', isArray: true, description: 'What it was about, by kind of notice' })
  about: string[];
  @Shown({ type: 'integer' })
  attempts: number;
  @Shown({ type: 'string', description: 'What the mail server said last' })
  fault: string;
  @Shown({ type: 'string', format: 'date-time', description: 'When it was last due' })
  dueAt: string;
}

export class GivenUpMailPage extends PageShape {
  @Shown({ type: () => GivenUpMailDto, isArray: true })
  items: GivenUpMailDto[];
  @Shown({ type: 'boolean', description: 'false: no mail server is set up' })
  mailGoesOut: boolean;
}
