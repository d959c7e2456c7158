import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { Day } from '../parts/said.js';
import type { Standing } from './types.js';

const WORDS: Record<Standing['state'], string> = {
  applies: 'Applies',
  unclear: 'Look it up',
  not: 'Does not apply',
};

/** How each directive stands to the aircraft and its pieces, and what somebody found about it. */
export function Directives({
  aircraftId,
  standings,
  mayFind,
  changed,
}: {
  aircraftId: string;
  standings: Standing[];
  mayFind: boolean;
  changed: () => void;
}) {
  const unclear = standings.filter(({ state }) => state === 'unclear').length;
  const [open, setOpen] = useState(unclear > 0);
  return (
    <details class="card" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        Directives <span class="chip">{standings.length}</span>
        {unclear > 0 && <span class="chip alarm">{unclear} to look up</span>}
      </summary>
      <ul class="standings">
        {standings.map((one) => (
          <One
            key={`${one.directiveId} ${one.equipmentId}`}
            of={one}
            aircraftId={aircraftId}
            mayFind={mayFind}
            changed={changed}
          />
        ))}
        {standings.length === 0 && <li class="hint">None on record concern this aircraft.</li>}
      </ul>
    </details>
  );
}

function One({
  of,
  aircraftId,
  mayFind,
  changed,
}: {
  of: Standing;
  aircraftId: string;
  mayFind: boolean;
  changed: () => void;
}) {
  const [form, setForm] = useState<{ applies: boolean; because: string; signedBy: string } | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const record = () =>
    attempt(setProblem, async () => {
      const path = `/aircraft/${aircraftId}/directives/${of.directiveId}/findings`;
      await call('POST', path, { ...form, equipmentId: of.equipmentId });
      setForm(null);
      changed();
    });
  return (
    <li>
      <strong>{of.number}</strong> {of.title}{' '}
      <span class={`chip${of.state === 'unclear' ? ' alarm' : ''}`}>{WORDS[of.state]}</span>
      <span class="says">
        {' '}
        {of.because}
        {of.lastDoneOn !== null && (
          <>
            {' '}
            Last complied with on <Day date={of.lastDoneOn} />.
          </>
        )}
        {of.until !== null && (
          <>
            {' '}
            In force until <Day date={of.until} />.
          </>
        )}
      </span>
      {mayFind && form === null && (
        <button
          class="quiet"
          onClick={() => setForm({ applies: false, because: '', signedBy: '' })}
          aria-label={`Somebody has looked it up: ${of.number}`}
        >
          Somebody has looked it up
        </button>
      )}
      {form !== null && (
        <form
          class="in-line"
          aria-label={`Finding on ${of.number}`}
          onSubmit={(event) => {
            event.preventDefault();
            void record();
          }}
        >
          <label>
            It
            <select
              value={form.applies ? 'yes' : 'no'}
              onChange={(event) => setForm({ ...form, applies: event.currentTarget.value === 'yes' })}
            >
              <option value="no">does not apply</option>
              <option value="yes">applies</option>
            </select>
          </label>
          <label>
            Because
            <input
              required
              minLength={5}
              maxLength={1000}
              value={form.because}
              onInput={(event) => setForm({ ...form, because: event.currentTarget.value })}
            />
          </label>
          <label>
            Who looked, with certificate
            <input
              required
              maxLength={200}
              value={form.signedBy}
              onInput={(event) => setForm({ ...form, signedBy: event.currentTarget.value })}
            />
          </label>
          <button class="main">Record the finding</button>
          <button type="button" class="quiet" onClick={() => setForm(null)}>
            Leave it
          </button>
        </form>
      )}
      <Refusal problem={problem} />
    </li>
  );
}
