import { useEffect, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Choice, DayInput, LongText, TextInput, Tick } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { today } from '../parts/time.js';
import { all } from '../session/session.js';
import { Steps } from './steps.js';
import type { Told } from './types.js';

const KINDS = [
  ['hazard', 'a hazard: it could hurt somebody'],
  ['occurrence', 'an occurrence: it happened'],
] as const;

/** A form not yet sent. */
const blank = (zone: string) => ({
  kind: 'hazard',
  happenedOn: today(zone),
  aircraftId: '',
  place: '',
  title: '',
  narrative: '',
  confidential: false,
});

/** Tells of a hazard or an occurrence, and what came of one told in confidence. */
export function ReportForm({ me, filed }: { me: Me; filed: () => void }) {
  const [form, setForm] = useState(() => blank(me.club.zone));
  const [fleet, setFleet] = useState<{ id: string; registration: string }[]>([]);
  const [receipt, setReceipt] = useState<string | null>(null);
  const [said, setSaid] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const set =
    <K extends keyof typeof form>(name: K) =>
    (value: (typeof form)[K]) =>
      setForm({ ...form, [name]: value });
  const of = <K extends 'kind' | 'happenedOn' | 'aircraftId' | 'place' | 'title' | 'narrative'>(name: K) => ({
    value: form[name],
    set: set(name) as (value: string) => void,
  });
  useEffect(() => {
    void attempt(setProblem, async () => setFleet(await all('/aircraft')));
  }, []);
  const send = () =>
    attempt(setProblem, async () => {
      setSaid(false);
      const body = { ...form, place: form.place.trim() || null, aircraftId: form.aircraftId || null };
      const answer = await call<{ receipt: string | null }>('POST', '/safety-reports', body);
      setForm(blank(me.club.zone));
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
            void send();
          }}
        >
          <Choice label="It is" {...of('kind')} of={KINDS} />
          <DayInput label="On" {...of('happenedOn')} max={today(me.club.zone)} required />
          <Choice
            label="Aircraft, if one has to do with it"
            {...of('aircraftId')}
            of={[['', 'none'], ...fleet.map(({ id, registration }) => [id, registration] as const)]}
          />
          <TextInput label="Where" {...of('place')} />
          <TextInput label="In a few words" {...of('title')} required />
          <LongText label="What happened" {...of('narrative')} required max={8000} rows={5} />
          <Tick value={form.confidential} set={set('confidential')}>
            In confidence: my name is not kept, not even for the officers
          </Tick>
          {form.confidential && (
            <p class="hint">
              Name nobody in the text. What you write there is what the officers read; with the aircraft and
              the day they may see who had it.
            </p>
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
        <TextInput label="Receipt" value={receipt} set={setReceipt} required />
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
