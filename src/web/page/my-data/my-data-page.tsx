import { useEffect, useRef, useState } from 'preact/hooks';
import { fetchFile } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { save } from '../parts/save.js';
import { EraseMember } from './erase-member.js';
import './my-data.css';
import { inWords } from './words.js';

/** What is on record about who reads, to look at and to take along; for administrators, erasing a member. */
export function MyDataPage({ me }: { me: Me }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [counts, setCounts] = useState<[what: string, count: number][] | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => heading.current?.focus(), []);

  const takeOut = () =>
    void attempt(setProblem, async () => {
      const file = await fetchFile('/my-record');
      const { records } = JSON.parse(await file.text()) as { records: Record<string, unknown[]> };
      setCounts(Object.entries(records).map(([what, rows]) => [what, rows.length]));
      save(file, 'my-record.json');
    });

  return (
    <main class="page my-data">
      <h2 ref={heading} tabIndex={-1}>
        Your data
      </h2>
      <section aria-labelledby="take-out">
        <h3 id="take-out">Take it out</h3>
        <p>
          Everything the club has on record about you, in one file (JSON, an open format): papers, log,
          checkouts, practice, bookings, decisions and who has read your documents. The documents themselves
          are listed; open each under Papers. Only you can take it out, and that you did is noted.
        </p>
        <Refusal problem={problem} />
        <button class="main" onClick={takeOut}>
          Take out everything on record about you
        </button>
        <div aria-live="polite">
          {counts && (
            <>
              <p>Saved as my-record.json. In it:</p>
              <dl class="counts">
                {counts
                  .filter(([, count]) => count > 0)
                  .map(([what, count]) => (
                    <div key={what}>
                      <dt>{inWords(what)}</dt>
                      <dd>{count}</dd>
                    </div>
                  ))}
              </dl>
            </>
          )}
        </div>
      </section>
      <section aria-labelledby="erased">
        <h3 id="erased">Have it erased</h3>
        <p>
          An administrator erases a member’s data on request. Papers, documents, practice, account and name
          go. What safety and other people’s records rest on stays under a name that says nothing: before it
          is done, the page tells what that is, and why.
        </p>
        {me.roles.includes('administrator') ? (
          <EraseMember me={me} />
        ) : (
          <p class="hint">Ask an administrator of your club.</p>
        )}
      </section>
    </main>
  );
}
