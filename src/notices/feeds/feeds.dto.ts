import { IdField, Shown, TextField, WordField } from '../../platform/http/fields.js';

export const FEEDS = ['own', 'aircraft', 'club'] as const;

export class FeedBody {
  @WordField(FEEDS, {
    description: 'The flights one is aboard of, those of one aircraft, or all of the club',
  })
  shows: (typeof FEEDS)[number];

  @IdField({ optional: true, description: 'For a feed of one aircraft' })
  aircraftId?: string;

  @TextField({ optional: true, max: 120, description: 'Its name in the calendar; made up unless given' })
  title?: string;
}

export class FeedDto {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;
  @Shown({ type: 'string', enum: [...FEEDS] })
  shows: (typeof FEEDS)[number];
  @Shown({ type: 'string', format: 'uuid', nullable: true })
  aircraftId: string | null;
  @Shown({ type: 'string' })
  title: string;
  @Shown({ type: 'string', format: 'date-time' })
  madeAt: string;
}

/** With the address, which is told this once and kept nowhere. */
export class NewFeedDto extends FeedDto {
  @Shown({
    ...{ type: 'string', format: 'uri' },
    description: 'Whoever has it reads the calendar; take the feed back when it has got about',
  })
  address: string;
}

export class FeedsDto {
  @Shown({ type: () => FeedDto, isArray: true })
  items: FeedDto[];
}
