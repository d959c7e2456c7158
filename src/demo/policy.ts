import { startingPolicy, type Instant } from '../rules/index.js';
import { DEMO_CLUB_ID, demoId } from './ids.js';
import type { PolicyRow } from './rows.js';
import type { When } from './when.js';

const RECENCY = 'club.model-recency.days';

/** What a new club starts with; and one change of policy behind it, so that a dated value can be seen. */
export function policyRows(when: When, recordedAt: Instant): PolicyRow[] {
  const row = (id: string, from: string, value: PolicyRow['value'], reference: string): PolicyRow => ({
    club_id: DEMO_CLUB_ID,
    id: demoId('policy', id, from === when.monthsAgo(13) ? 'later' : 'first'),
    parameter_id: id,
    valid_from: from,
    value,
    reference,
    recorded_at: recordedAt,
  });
  return startingPolicy().values.flatMap(({ id, from, value, reference }) => {
    if (value === null) return [];
    if (id !== RECENCY) return [row(id, from, value, reference)];
    return [row(id, from, 90, reference), row(id, when.monthsAgo(13), value, `${reference}, as revised`)];
  });
}
