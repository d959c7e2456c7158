import { useState } from 'preact/hooks';
import { ApiProblem, call } from '../api/client.js';
import type { Problem } from '../api/types.js';
import { ImportPreview } from './import-preview.js';
import type { ImportResult } from './types.js';

const SECTIONS = [
  { value: '', words: 'as its column “section” says' },
  { value: 'item', words: 'inspections and other items' },
  { value: 'directive', words: 'directives' },
  { value: 'equipment', words: 'equipment' },
  { value: 'meter', words: 'meter readings' },
  { value: 'weight', words: 'empty weights' },
];
const DATES = [
  { value: 'year-first', words: '2026-03-09 or 9 Mar 2026' },
  { value: 'day-first', words: '09/03/2026 is the ninth of March' },
  { value: 'month-first', words: '03/09/2026 is the ninth of March' },
];

/** A file or a pasted list, looked at before it is taken over. */
export function ImportForm({
  aircraftId,
  zone,
  taken,
}: {
  aircraftId: string;
  zone: string;
  taken: () => void;
}) {
  const [csv, setCsv] = useState('');
  const [section, setSection] = useState('');
  const [dates, setDates] = useState('year-first');
  const [preview, setPreview] = useState<ImportResult | null>(null);
  const [done, setDone] = useState<ImportResult | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [busy, setBusy] = useState(false);
  // One key for each preview: sent again after a lost answer, it is not written twice.
  const [key, setKey] = useState('');

  const changed = (change: () => void) => {
    change();
    setPreview(null);
    setDone(null);
  };
  const send = async (what: 'preview' | 'take') => {
    setBusy(true);
    setProblem(null);
    const file = { csv, dates, ...(section === '' ? {} : { section }) };
    try {
      if (what === 'preview') {
        setPreview(await call<ImportResult>('POST', `/aircraft/${aircraftId}/status/import/preview`, file));
        setKey(crypto.getRandomValues(new Uint32Array(4)).join('-'));
      } else {
        const body = { ...file, preview: preview!.preview };
        setDone(
          await call<ImportResult>('POST', `/aircraft/${aircraftId}/status/import`, body, {
            'Idempotency-Key': key,
          }),
        );
        setPreview(null);
        setCsv('');
        taken();
      }
    } catch (error) {
      if (!(error instanceof ApiProblem)) throw error;
      setProblem(error.problem);
    }
    setBusy(false);
  };

  return (
    <details class="import no-print">
      <summary>Take over an existing status from a file</summary>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void send('preview');
        }}
      >
        <p class="hint">
          CSV with a line of headings: meter readings, equipment, empty weights, and items with what was last
          done. It adds what is not on record and changes nothing that is. Nothing is written before you have
          seen it.
        </p>
        <label>
          File
          <input
            type="file"
            accept=".csv,.tsv,.txt,text/csv"
            onChange={(event) => {
              const file = event.currentTarget.files?.[0];
              if (file) void file.text().then((text) => changed(() => setCsv(text)));
            }}
          />
        </label>
        <label>
          or paste it
          <textarea
            rows={6}
            required
            spellcheck={false}
            value={csv}
            onInput={(event) => {
              const { value } = event.currentTarget;
              changed(() => setCsv(value));
            }}
          />
        </label>
        <div class="choices">
          <Choice
            label="Its rows are"
            of={SECTIONS}
            value={section}
            choose={(to) => changed(() => setSection(to))}
          />
          <Choice label="Dates" of={DATES} value={dates} choose={(to) => changed(() => setDates(to))} />
        </div>
        <button class="main" disabled={busy}>
          What would be written?
        </button>
      </form>
      {problem && (
        <div class="problem" role="alert">
          <p>{problem.detail}</p>
        </div>
      )}
      {preview && (
        <ImportPreview of={preview} zone={zone}>
          <button
            class="main"
            disabled={
              busy || preview.counts.refused > 0 || preview.counts.added + preview.counts.doneAgain === 0
            }
            onClick={() => void send('take')}
          >
            Take it over
          </button>
        </ImportPreview>
      )}
      {done && (
        <p role="status" class="taken">
          Taken over: {done.counts.added} new records, {done.counts.doneAgain} done again,{' '}
          {done.counts.unchanged} on record before.
        </p>
      )}
    </details>
  );
}

function Choice({
  label,
  of,
  value,
  choose,
}: {
  label: string;
  of: { value: string; words: string }[];
  value: string;
  choose: (to: string) => void;
}) {
  return (
    <label>
      {label}
      <select value={value} onChange={(event) => choose(event.currentTarget.value)}>
        {of.map((one) => (
          <option key={one.value} value={one.value}>
            {one.words}
          </option>
        ))}
      </select>
    </label>
  );
}
