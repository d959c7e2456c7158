import { useState } from 'preact/hooks';
import { call } from '../../api/client.js';
import { attempt } from '../../parts/attempt.js';
import { Refusal } from '../../parts/refusal.js';
import { momentIn } from '../../parts/time.js';
import type { Imported } from './types.js';
import { counted } from './words.js';

/** Files that were taken over; each can be taken back whole. */
export function ImportList({
  of,
  at,
  zone,
  changed,
}: {
  of: Imported[];
  at: string;
  zone: string;
  changed: () => void;
}) {
  /** The one that is asked about once more. */
  const [asked, setAsked] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  if (of.length === 0) return null;
  const takeBack = async (id: string) => {
    setAsked(null);
    if (await attempt(setProblem, () => call<void>('POST', `${at}/${id}/take-back`))) changed();
  };
  return (
    <div class="imports">
      <h4>Files taken over</h4>
      <Refusal problem={problem} />
      <ul>
        {of.map((one) => (
          <li key={one.id}>
            <span>
              {momentIn(zone, one.recordedAt)}: {counted(one.entries, 'flight')}, {one.firstFlownOn} to{' '}
              {one.lastFlownOn}
              {one.takenBackAt && `; taken back ${momentIn(zone, one.takenBackAt)}`}
            </span>
            {one.takenBackAt === null && asked !== one.id && (
              <button class="quiet" onClick={() => setAsked(one.id)}>
                Take back
                <span class="unseen">
                  {' '}
                  the {counted(one.entries, 'flight')} of {momentIn(zone, one.recordedAt)}
                </span>
              </button>
            )}
            {asked === one.id && (
              <span class="sure">
                Every flight of it leaves every count; the entries stay on record, void.{' '}
                <button class="quiet danger" onClick={() => void takeBack(one.id)}>
                  Take them back
                </button>
                <button class="quiet" onClick={() => setAsked(null)}>
                  Keep them
                </button>
              </span>
            )}
          </li>
        ))}
      </ul>
    </div>
  );
}
