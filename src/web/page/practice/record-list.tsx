import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { Day } from '../parts/said.js';
import type { PracticeRecord } from './types.js';
import { verdictSays } from './words.js';

/** Records, newest flight first. A wrong one is withdrawn with a reason; a right one is then recorded anew. */
export function RecordList({
  records,
  at,
  mayWithdraw,
  changed,
}: {
  records: PracticeRecord[];
  at: string;
  mayWithdraw: (record: PracticeRecord) => boolean;
  changed: () => void;
}) {
  const [withdrawing, setWithdrawing] = useState<string | null>(null);
  const [because, setBecause] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  return (
    <section aria-labelledby="records">
      <h3 id="records">On record</h3>
      {records.length === 0 && <p class="hint">Nothing is recorded yet.</p>}
      <Refusal problem={problem} />
      <ul class="records">
        {records.map((one) => (
          <li key={one.id}>
            <strong>{one.title}</strong>, <Day date={one.flownOn} />
            {one.night && ', at night'}
            {one.crosswindKt !== null && `, crosswind ${one.crosswindKt} kt`}
            {one.runwayFt !== null && `, runway ${one.runwayFt} ft`}. {verdictSays(one)}{' '}
            <small>
              {one.instructor ? `Signed by ${one.instructor.name}.` : 'Own record.'}
              {one.trackEvent !== null && ' From a track.'}
            </small>
            {one.note && <p>{one.note}</p>}
            {mayWithdraw(one) && withdrawing !== one.id && (
              <button
                class="quiet"
                aria-label={`Withdraw ${one.title} of ${one.flownOn}`}
                onClick={() => {
                  setWithdrawing(one.id);
                  setBecause('');
                }}
              >
                Withdraw
              </button>
            )}
            {withdrawing === one.id && (
              <form
                onSubmit={(event) => {
                  event.preventDefault();
                  void attempt(setProblem, async () => {
                    await call('POST', `${at}/${one.id}/correct`, { because, record: null });
                    setWithdrawing(null);
                    changed();
                  });
                }}
              >
                <label>
                  Why it is withdrawn; it stays on record
                  <input
                    required
                    minLength={5}
                    maxLength={500}
                    value={because}
                    onInput={(event) => setBecause(event.currentTarget.value)}
                  />
                </label>
                <button class="main">Withdraw it</button>
              </form>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
