import { Shown } from '../../platform/http/fields.js';

/** How the club stands in one manoeuvre. */
export class PracticeGapView {
  @Shown({ type: 'string', description: 'The manoeuvre in words' })
  title: string;

  @Shown({ type: 'string', description: 'In words: at night' })
  condition: string;

  @Shown({ type: 'string', description: 'One name for the pair' })
  key: string;

  @Shown({ type: 'integer', description: 'Members it is watched for' })
  members: number;

  @Shown({
    type: 'integer',
    nullable: true,
    description: 'Not on record as done to standard; null: too few members to be told',
  })
  never: number | null;

  @Shown({
    type: 'integer',
    nullable: true,
    description: 'Done once, and as rusty as practice plans take up',
  })
  rusty: number | null;

  @Shown({ type: 'integer', nullable: true })
  fresh: number | null;

  @Shown({
    type: 'integer',
    nullable: true,
    description: 'Days since it was last to standard, in the middle of those for whom it ever was',
  })
  middleDays: number | null;
}

/** Practice gaps across the club. Nobody is named. */
export class PracticeGapsView {
  @Shown({ type: 'string', format: 'date' })
  on: string;

  @Shown({ type: 'integer', description: 'Members with a certificate on record' })
  members: number;

  @Shown({
    type: 'number',
    description: 'Rust from which a manoeuvre counts as rusty: club.practice.rust-from',
  })
  rustFrom: number;

  @Shown({ type: 'integer', description: 'Of fewer members than this nothing is told' })
  fewestTold: number;

  @Shown({ type: () => PracticeGapView, isArray: true, description: 'What most members lack first' })
  gaps: PracticeGapView[];

  @Shown({ type: 'string' })
  caution: string;
}
