import type { ComponentType } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Choice } from '../parts/fields.js';
import { Link } from '../parts/link.js';
import { Refusal } from '../parts/refusal.js';
import '../shop/shop.css';
import './handbook.css';
import { LoadingForm } from './loading-form.js';
import { PerformanceForm } from './performance-form.js';
import type { SheetForm } from './sheet-form.js';
import { useSheet } from './use-sheet.js';

interface AircraftHead {
  id: string;
  registration: string;
  modelId: string;
  model: { makeModel: string };
}

const WRITERS = ['maintenance-coordinator', 'administrator'];

/** What the handbook says of an aircraft’s loading and runways, for its model or for it alone. */
export function HandbookPage({ me, aircraftId }: { me: Me; aircraftId: string }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [aircraft, setAircraft] = useState<AircraftHead | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [owner, setOwner] = useState<'model' | 'aircraft'>('model');
  useEffect(() => {
    heading.current?.focus();
    void attempt(setProblem, async () =>
      setAircraft(await call<AircraftHead>('GET', `/aircraft/${aircraftId}`)),
    );
  }, [aircraftId]);
  const base = aircraft && (owner === 'model' ? `/models/${aircraft.modelId}` : `/aircraft/${aircraft.id}`);
  const mayWrite = me.roles.some((role) => WRITERS.includes(role));
  return (
    <main class="page shop handbook">
      <p>
        <Link to="/maintenance">Hours and days left</Link> · <Link to="/shop">Shop</Link>
      </p>
      <h2 ref={heading} tabIndex={-1}>
        Loading and distances {aircraft && `of ${aircraft.registration}`}{' '}
        {aircraft && <small>{aircraft.model.makeModel}</small>}
      </h2>
      <p class="hint">
        Copied from the approved handbook of this very aircraft, supplements included. Without them no flight
        is a plain yes: the answer says what has to be worked out by hand.
      </p>
      <Refusal problem={problem} />
      {aircraft && base && (
        <>
          <div class="which">
            <Choice
              label="For"
              value={owner}
              set={setOwner}
              of={[
                ['model', `every ${aircraft.model.makeModel} without its own`],
                ['aircraft', `${aircraft.registration} alone`],
              ]}
            />
          </div>
          <Sheet
            key={`loading ${base}`}
            path={`${base}/loading`}
            {...{ name: 'loading', title: 'Loading', form: LoadingForm, mayWrite }}
          />
          <Sheet
            key={`performance ${base}`}
            path={`${base}/performance`}
            {...{ name: 'performance', title: 'Take-off and landing distances' }}
            {...{ form: PerformanceForm, mayWrite }}
          />
          <p class="caution">
            The pilot in command works out the loading and the runways from the handbook itself before every
            flight. These figures are a copy, and Bellcrank is an aid.
          </p>
        </>
      )}
    </main>
  );
}

/** One kind of sheet: what is on record of it, or the form for it. */
function Sheet<T extends { rowVersion: number }>({
  path,
  name,
  title,
  form: Form,
  mayWrite,
}: {
  path: string;
  name: string;
  title: string;
  form: ComponentType<SheetForm<T>>;
  mayWrite: boolean;
}) {
  const { sheet, problem, save, remove, refuse } = useSheet<T>(path);
  return (
    <section class="card" aria-labelledby={name}>
      <h3 id={name}>{title}</h3>
      {sheet === undefined && problem === null && <p class="hint">Reading…</p>}
      {sheet === null && <p class="hint">None on record.</p>}
      {sheet !== undefined && (sheet || mayWrite) && (
        <Form key={sheet?.rowVersion ?? 'new'} {...{ sheet, mayWrite, refuse, save, remove }} />
      )}
      <Refusal problem={problem} />
    </section>
  );
}
