import { Shown } from '../../platform/http/fields.js';

/** One thing a paper is good for. */
export class HoldView {
  @Shown({ type: 'string', example: 'commercial privileges' })
  purpose: string;

  @Shown({
    type: 'string',
    format: 'date',
    nullable: true,
    description: 'Last day; null where `note` says why',
  })
  through: string | null;

  @Shown({ type: 'string', nullable: true })
  note: string | null;
}

/** All that a paper is good for. */
export class PaperHoldView {
  @Shown({ type: 'string', format: 'uuid' })
  paperId: string;

  @Shown({ type: () => HoldView, isArray: true })
  holds: HoldView[];
}

/** Until when each paper holds. */
export class PapersHoldView {
  @Shown({ type: 'string', format: 'date', description: "The day whose law counts, in the club's zone" })
  on: string;

  @Shown({ type: () => PaperHoldView, isArray: true })
  items: PaperHoldView[];

  @Shown({ type: 'string' })
  caution: string;
}
