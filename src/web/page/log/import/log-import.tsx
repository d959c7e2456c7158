import { useEffect, useRef, useState } from 'preact/hooks';
import { ApiProblem, call } from '../../api/client.js';
import type { Me } from '../../api/types.js';
import { attempt } from '../../parts/attempt.js';
import { Refusal } from '../../parts/refusal.js';
import { FileReading } from './file-reading.js';
import { ImportList } from './import-list.js';
import './import.css';
import { lookAt, takeForm } from './read-file.js';
import type { Choices, Imported, Preview } from './types.js';
import { WhatComes } from './what-comes.js';
import { counted } from './words.js';

/** A file of flights, looked at before it is taken over into one's own log; and those that were. */
export function LogImport({ me, changed }: { me: Me; changed: () => void }) {
  const at = `/members/${me.memberId}/log/import`;
  const [file, setFile] = useState<File | null>(null);
  const [preview, setPreview] = useState<Preview | null>(null);
  /** What was chosen since the preview; null: nothing. */
  const [edited, setEdited] = useState<Choices | null>(null);
  const [progress, setProgress] = useState<number | null>(null);
  const [taking, setTaking] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const [done, setDone] = useState<Imported | null>(null);
  const [imports, setImports] = useState<Imported[]>([]);
  // One key for each preview: sent again after a lost answer, it is not written twice.
  const [key, setKey] = useState('');
  /** The newest reading; an older one that ends later is not shown. */
  const turn = useRef(0);
  const input = useRef<HTMLInputElement>(null);

  const reload = () =>
    call<{ items: Imported[] }>('GET', `${at}?limit=20`).then(
      ({ items }) => setImports(items),
      (error: unknown) => {
        if (!(error instanceof ApiProblem)) throw error;
      },
    );
  useEffect(() => void reload(), [at]);

  const look = async (of: File, choices: Choices | null) => {
    turn.current += 1;
    const mine = turn.current;
    setProgress(0);
    setDone(null);
    await attempt(
      (words) => mine === turn.current && setProblem(words),
      async () => {
        const read = await lookAt(at, of, choices, (part) => mine === turn.current && setProgress(part));
        if (mine !== turn.current) return;
        setPreview(read);
        setEdited(null);
        setKey(crypto.getRandomValues(new Uint32Array(4)).join('-'));
      },
    );
    if (mine === turn.current) setProgress(null);
  };
  const choose = (of: File | undefined) => {
    if (!of) return;
    setFile(of);
    setPreview(null);
    void look(of, null);
  };
  const take = async () => {
    setTaking(true);
    const taken = await attempt(setProblem, async () => {
      const form = takeForm(file!, preview!);
      setDone(await call<Imported>('POST', at, form, { 'Idempotency-Key': key }));
    });
    setTaking(false);
    if (!taken) return;
    setPreview(null);
    setFile(null);
    if (input.current) input.current.value = '';
    void reload();
    changed();
  };

  return (
    <section class="log-import" aria-labelledby="log-import-title">
      <h3 id="log-import-title">Take flights over from a file</h3>
      <p class="hint">
        CSV from any spreadsheet, or what was exported here: one line of headings, a row for each flight, at
        most 20,000. Nothing is written before you have seen what would be.
      </p>
      <label>
        File of flights
        <input
          ref={input}
          type="file"
          accept=".csv,.tsv,.txt,.json,text/csv,application/json"
          disabled={taking}
          onChange={(event) => choose(event.currentTarget.files?.[0])}
        />
      </label>
      {progress !== null && (
        <p class="progress">
          <label>
            Reading {file?.name} <progress max={1} value={progress} />
          </label>
        </p>
      )}
      <Refusal problem={problem} />
      {done && (
        <p role="status" class="taken">
          Taken over: {counted(done.entries, 'flight')} from {done.firstFlownOn} to {done.lastFlownOn}.
        </p>
      )}
      {preview && file && (
        <>
          <FileReading of={preview} choices={edited ?? preview.choices} choose={setEdited} />
          {edited && (
            <p class="again">
              <button class="main" disabled={progress !== null} onClick={() => void look(file, edited)}>
                Read it again like this
              </button>
            </p>
          )}
          {preview.questions.length === 0 && (
            <WhatComes
              of={preview}
              choices={edited ?? preview.choices}
              choose={(change) => {
                const next = { ...(edited ?? preview.choices), ...change };
                setEdited(next);
                void look(file, next);
              }}
              busy={progress !== null || taking}
            >
              <button
                class="main"
                disabled={preview.preview === null || edited !== null || progress !== null || taking}
                onClick={() => void take()}
              >
                {taking ? 'Taking them over…' : `Take ${counted(preview.counts.toWrite, 'flight')} over`}
              </button>
            </WhatComes>
          )}
        </>
      )}
      <ImportList
        of={imports}
        at={at}
        zone={me.club.zone}
        changed={() => {
          void reload();
          changed();
        }}
      />
    </section>
  );
}
