import { useEffect, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { DayInput, TextInput } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { Day } from '../parts/said.js';
import { momentIn, plusDays, today } from '../parts/time.js';
import { Working } from '../parts/working.js';
import type { Override, Paged } from './types.js';

const WORDS = {
  ...{ unplanned: 'No review planned', planned: 'Review on', due: 'Review due since', reviewed: 'Reviewed' },
};

/** Overrides of club rules, newest first, and when they are looked at again. */
export function OverrideList({ zone }: { zone: string }) {
  const [items, setItems] = useState<Override[] | null>(null);
  const [cursor, setCursor] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);

  const read = (after: string | null) =>
    attempt(setProblem, async () => {
      const page = await call<Paged<Override>>(
        'GET',
        `/safety/overrides?limit=20${after === null ? '' : `&cursor=${encodeURIComponent(after)}`}`,
      );
      setItems(after === null ? page.items : [...(items ?? []), ...page.items]);
      setCursor(page.nextCursor);
    });

  useEffect(() => {
    void read(null);
  }, []);

  return (
    <section class="sheet" aria-labelledby="overrides">
      <h3 id="overrides">Overrides</h3>
      <Refusal problem={problem} />
      {items === null && problem === null && <Working what="Reading overrides" />}
      {items?.length === 0 && <p class="hint">No officer has set a club rule aside.</p>}
      <ul class="cards">
        {items?.map((one) => (
          <li key={one.id}>
            <p>
              <b>{one.memberName}</b>, {one.registration}, {momentIn(zone, one.departs)}: {one.ruleId} set
              aside by {one.officerName}, “{one.reason}”
            </p>
            <p class={`state ${one.review}`}>
              {WORDS[one.review]} {one.reviewOn && <Day date={one.reviewOn} />}
            </p>
            {one.reviews.map(
              (review, index) =>
                review.finding && (
                  <p key={index}>
                    {review.reviewedBy}: {review.finding}
                  </p>
                ),
            )}
            <ReviewForm
              of={one}
              zone={zone}
              done={(after) => setItems(items.map((other) => (other.id === after.id ? after : other)))}
            />
          </li>
        ))}
      </ul>
      {cursor && (
        <button type="button" class="quiet" onClick={() => void read(cursor)}>
          Older overrides
        </button>
      )}
    </section>
  );
}

function ReviewForm({ of, zone, done }: { of: Override; zone: string; done: (after: Override) => void }) {
  const [reviewOn, setReviewOn] = useState('');
  const [finding, setFinding] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const send = () =>
    attempt(setProblem, async () => {
      const body = { reviewOn: reviewOn || null, finding: finding.trim() || null };
      done(await call<Override>('POST', `/safety/overrides/${of.id}/reviews`, body));
      setReviewOn('');
      setFinding('');
    });
  return (
    <details>
      <summary>Review</summary>
      <form
        class="fields"
        onSubmit={(event) => {
          event.preventDefault();
          void send();
        }}
      >
        <TextInput label="What was found" value={finding} set={setFinding} max={2000} />
        <DayInput
          label="Look at it again on (empty: not again)"
          value={reviewOn}
          set={setReviewOn}
          min={plusDays(today(zone), 1)}
        />
        <Refusal problem={problem} />
        <button class="main">Record the review</button>
      </form>
    </details>
  );
}
