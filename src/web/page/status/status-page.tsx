import { useEffect, useRef, useState } from 'preact/hooks';
import { ApiProblem, call, fetchFile } from '../api/client.js';
import type { Me } from '../api/types.js';
import { Link } from '../parts/link.js';
import { Day, Said } from '../parts/said.js';
import { today } from '../parts/time.js';
import { ImportForm } from './import-form.js';
import { save } from '../parts/save.js';
import { Moment, Sections } from './sections.js';
import './status.css';
import type { Status } from './types.js';
import { Refusal } from '../parts/refusal.js';

const IMPORTERS = ['maintenance-coordinator', 'safety-officer', 'administrator'];

/** An aircraft's status on one page, as of a day: to read, to print, to take away, and to take over from a file. */
export function StatusPage({ me, aircraftId }: { me: Me; aircraftId: string }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [on, setOn] = useState(today(me.club.zone));
  const [status, setStatus] = useState<Status | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [reads, setReads] = useState(0);

  useEffect(() => {
    heading.current?.focus();
  }, []);

  const told = async (work: () => Promise<void>) => {
    setProblem(null);
    try {
      await work();
    } catch (error) {
      if (!(error instanceof ApiProblem)) throw error;
      setProblem(error.problem.detail);
    }
  };

  useEffect(() => {
    if (on === '') return undefined;
    let current = true;
    // The status of another day must not stand under the day that was chosen.
    setStatus(null);
    void told(async () => {
      const found = await call<Status>('GET', `/aircraft/${aircraftId}/status?on=${on}`);
      if (current) setStatus(found);
    });
    return () => {
      current = false;
    };
  }, [aircraftId, on, reads]);

  const name = status === null ? 'status' : `status-${status.aircraft.registration}-${status.on}`;
  const take = (below: string, ending: string) =>
    void told(async () => {
      const file = await fetchFile(`/aircraft/${aircraftId}/status/${below}?on=${on}`);
      save(file, `${name}.${ending}`);
    });

  return (
    <main class="page status">
      <p class="no-print">
        <Link to="/maintenance">Hours and days left</Link>
      </p>
      <h2 ref={heading} tabIndex={-1}>
        Status {status && `of ${status.aircraft.registration}`}{' '}
        {status && <small>{status.aircraft.makeModel}</small>}
      </h2>
      <form class="finder no-print" onSubmit={(event) => event.preventDefault()}>
        <label>
          As of the end of
          <input
            type="date"
            value={on}
            max={today(me.club.zone)}
            required
            onInput={(event) => setOn(event.currentTarget.value)}
          />
        </label>
        {status && (
          <span class="takes">
            <button type="button" class="main" onClick={() => print()}>
              Print
            </button>
            <button type="button" class="quiet" onClick={() => take('pdf', 'pdf')}>
              PDF
            </button>
            <button type="button" class="quiet" onClick={() => take('csv', 'csv')}>
              CSV
            </button>
            <button
              type="button"
              class="quiet"
              onClick={() =>
                save(
                  new Blob([JSON.stringify(status, null, 2)], { type: 'application/json' }),
                  `${name}.json`,
                )
              }
            >
              JSON
            </button>
          </span>
        )}
      </form>
      <Refusal problem={problem} />
      {status === null && !problem && <p class="hint">Reading…</p>}
      {status && (
        <div class="sheet">
          <p class="of">
            As of <Day date={status.on} />
            {status.aircraft.serialNumber && `, serial number ${status.aircraft.serialNumber}`}
            {status.aircraft.manufacturedOn && (
              <>
                , manufactured <Day date={status.aircraft.manufacturedOn} />
              </>
            )}
          </p>
          {status.cautions.length > 0 && (
            <ul class="cautions" aria-label="Before relying on this page">
              {status.cautions.map((says) => (
                <li key={says}>
                  <Said text={says} zone={status.zone} />
                </li>
              ))}
            </ul>
          )}
          <Sections of={status} />
          <p class="caution">{status.caution}</p>
          <p class="printed">
            Printed by {status.printedBy}, <Moment zone={status.zone} at={status.printedAt} /> ({status.zone}
            ). A copy of the records as of that day, worthless once anything changes.
          </p>
        </div>
      )}
      {me.roles.some((role) => IMPORTERS.includes(role)) && (
        <ImportForm aircraftId={aircraftId} zone={me.club.zone} taken={() => setReads(reads + 1)} />
      )}
    </main>
  );
}
