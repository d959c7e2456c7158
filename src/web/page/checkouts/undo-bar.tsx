import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';

/** What was just signed, and the request that takes it back. */
export interface Done {
  says: string;
  path: string;
  body: unknown;
}

/** Stays under the thumb after a tap: taking back is a record of its own, both remain. */
export function UndoBar({ done, undone }: { done: Done | null; undone: () => Promise<unknown> }) {
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  return (
    <div class="undo" role="status">
      {done && (
        <>
          <span>{done.says}</span>
          <button
            class="quiet"
            disabled={busy}
            onClick={async () => {
              setBusy(true);
              await attempt(setProblem, async () => {
                await call('POST', done.path, done.body);
                await undone();
              });
              setBusy(false);
            }}
          >
            Take back
          </button>
          <Refusal problem={problem} />
        </>
      )}
    </div>
  );
}
