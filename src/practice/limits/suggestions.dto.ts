import { Shown } from '../../platform/http/fields.js';
import { LIMIT_NAMES, type LimitName } from '../limits-suggested/index.js';

/** A record that a suggestion rests on. */
export class LimitEvidenceView {
  @Shown({ type: 'string', enum: ['practice', 'log'] })
  kind: 'practice' | 'log';

  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'date' })
  on: string;
}

/** One limit; without a value nothing is suggested. */
export class LimitSuggestionView {
  @Shown({ type: 'string', enum: [...LIMIT_NAMES] })
  limit: LimitName;

  @Shown({
    nullable: true,
    oneOf: [{ type: 'number' }, { type: 'boolean' }],
    description: 'In the unit of the limit’s name; of the night whether it is flown',
  })
  value: number | boolean | null;

  @Shown({ type: () => [LimitEvidenceView], description: 'Newest first, five at most' })
  evidence: LimitEvidenceView[];

  @Shown({ type: 'string' })
  says: string;
}

/** Suggestions for every limit there is. */
export class LimitSuggestionsView {
  @Shown({ type: 'string', format: 'date', description: 'First day looked at' })
  from: string;

  @Shown({ type: 'string', format: 'date' })
  to: string;

  @Shown({ type: () => [LimitSuggestionView] })
  suggestions: LimitSuggestionView[];

  @Shown({ type: 'string' })
  caution: string;
}
