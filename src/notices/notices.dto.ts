import { Shown, SwitchField } from '../platform/http/fields.js';
import { PageQuery, PageShape } from '../platform/http/pages.js';
import { KINDS_OF_NOTICE } from './outbox/kinds.js';

export class NoticesQuery extends PageQuery {
  @SwitchField({ default: false, description: 'true: only those not read yet' })
  unread?: boolean;
}

export class NoticeItemDto {
  @Shown({ type: 'string', description: 'Days and instants in it are ISO; write them out for the reader' })
  title: string;
  @Shown({ type: 'string', isArray: true })
  says: string[];
  @Shown({ type: 'string', isArray: true, description: 'What would make it a yes, cheapest first' })
  ways: string[];
  @Shown({ type: 'string', description: 'The page that has more of it' })
  link: string;
}

export class NoticeDto {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;
  @Shown({ type: 'string', enum: [...KINDS_OF_NOTICE] })
  kind: string;
  @Shown({ type: 'string' })
  heading: string;
  @Shown({ type: 'string', format: 'date-time' })
  occurredAt: string;
  @Shown({ type: 'boolean', description: 'Goes out in quiet hours too' })
  urgent: boolean;
  @Shown({ type: () => NoticeItemDto, isArray: true })
  items: NoticeItemDto[];
  @Shown({
    ...{ type: 'string', enum: ['gathering', 'none', 'waiting', 'sent', 'given-up'] },
    description: 'gathering: more of the same may come yet; none: it stands on the page only',
  })
  mail: string;
  @Shown({
    type: 'string',
    format: 'date-time',
    nullable: true,
    description: 'When its mail goes out or went',
  })
  mailAt: string | null;
  @Shown({ type: 'string', format: 'date-time', nullable: true })
  readAt: string | null;
}

/** One page of one's notices, newest first. */
export class NoticesPage extends PageShape {
  @Shown({ type: () => NoticeDto, isArray: true })
  items: NoticeDto[];
  @Shown({ type: 'integer', description: 'Of all one’s notices, those not read yet' })
  unread: number;
  @Shown({ type: 'string' })
  caution: string;
}

export class ReadDto {
  @Shown({ type: 'integer', description: 'Notices marked as read' })
  marked: number;
}
