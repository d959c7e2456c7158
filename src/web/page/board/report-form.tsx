import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { today } from '../parts/time.js';
import { Steps } from './steps.js';
import type { Told } from './types.js';

/** Tells of a hazard or an occurrence, and what came of one told in confidence. */
export function ReportForm({ me, filed }: { me: Me; filed: () => void }) {
  const [confidential, setConfidential] = useState(false);
  const [receipt, setReceipt] = useState<string | null>(null);
  const [said, setSaid] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const send = (form: HTMLFormElement) =>
    attempt(setProblem, async () => {
      setSaid(false);
      const told = Object.fromEntries(new FormData(form)) as Record<string, string>;
      const body = { ...told, place: told['place']?.trim() || null, confidential };
      const answer = await call<{ receipt: string | null }>('POST', '/safety-reports', body);
      form.reset();
      setConfidential(false);
      setReceipt(answer.receipt);
      setSaid(true);
      if (answer.receipt === null) filed();
    });
  return (
    <section class="sheet" aria-labelledby="tell">
      <h3 id="tell">Tell of a hazard or an occurrence</h3>
      {said && receipt === null && <p role="status">Told. Thank you; the safety officer sees it now.</p>}
      {receipt !== null && (
        <p role="status" class="receipt">
          Told in confidence. Your receipt, shown this once: <code>{receipt}</code> Keep it: nobody can find
          it again, and it alone opens what comes of your report.
        </p>
      )}
      <details>
        <summary>Write a report</summary>
        <form
          class="fields"
          onSubmit={(event) => {
            event.preventDefault();
            void send(event.currentTarget);
          }}
        >
          <label>
            It is
            <select name="kind">
              <option value="hazard">a hazard: it could hurt somebody</option>
              <option value="occurrence">an occurrence: it happened</option>
            </select>
          </label>
          <label>
            On
            <input
              name="happenedOn"
              type="date"
              required
              max={today(me.club.zone)}
              defaultValue={today(me.club.zone)}
            />
          </label>
          <label>
            Where
            <input name="place" maxLength={200} />
          </label>
          <label>
            In a few words
            <input name="title" required maxLength={200} />
          </label>
          <label>
            What happened
            <textarea name="narrative" required rows={5} maxLength={8000} />
          </label>
          <label class="tick">
            <input
              type="checkbox"
              checked={confidential}
              onChange={(event) => setConfidential(event.currentTarget.checked)}
            />
            In confidence: my name is not kept, not even for the officers
          </label>
          {confidential && (
            <p class="hint">Name nobody in the text. What you write there is what the officers read.</p>
          )}
          <Refusal problem={problem} />
          <button class="main">Send the report</button>
        </form>
      </details>
      <ByReceipt />
    </section>
  );
}

function ByReceipt() {
  const [receipt, setReceipt] = useState('');
  const [told, setTold] = useState<Told | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  return (
    <details>
      <summary>What came of my confidential report?</summary>
      <form
        class="fields"
        onSubmit={(event) => {
          event.preventDefault();
          setTold(null);
          void attempt(setProblem, async () =>
            setTold(await call<Told>('POST', '/safety-reports/by-receipt', { receipt: receipt.trim() })),
          );
        }}
      >
        <label>
          Receipt
          <input
            value={receipt}
            required
            autocomplete="off"
            onInput={(event) => setReceipt(event.currentTarget.value)}
          />
        </label>
        <Refusal problem={problem} />
        <button class="main">Look</button>
      </form>
      {told && (
        <div role="status">
          <p>
            <b>{told.title}</b>: {told.state}
          </p>
          {told.finding && <p>{told.finding}</p>}
          <Steps of={told.steps} />
        </div>
      )}
    </details>
  );
}
