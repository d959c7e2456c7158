import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { today } from '../parts/time.js';
import { MANOEUVRES, MEASURES, titleOf, verdictSays } from './words.js';
import type { PracticeRecord } from './types.js';

/** One manoeuvre, as flown. What is left empty is not recorded. */
export function RecordForm({
  at,
  zone,
  signs,
  recorded,
}: {
  at: string;
  zone: string;
  signs: boolean;
  recorded: () => void;
}) {
  const [flownOn, setFlownOn] = useState(today(zone));
  const [manoeuvre, setManoeuvre] = useState<string>('normal_landing');
  const [fields, setFields] = useState<Record<string, string>>({});
  const [done, setDone] = useState<PracticeRecord | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const set = (name: string) => (event: { currentTarget: { value: string } }) =>
    setFields({ ...fields, [name]: event.currentTarget.value });
  const number = (name: string): number | null => (fields[name] ? Number(fields[name]) : null);
  const yes = (name: string): boolean | null => (fields[name] ? fields[name] === 'yes' : null);
  const send = () =>
    attempt(setProblem, async () => {
      const measured = Object.fromEntries(
        MEASURES.flatMap(({ measure }) => {
          const [least, most] = [number(`${measure}.least`), number(`${measure}.most`)];
          return least === null && most === null
            ? []
            : [[measure, { least: least ?? most, most: most ?? least }]];
        }),
      );
      const conditions = {
        night: yes('night'),
        crosswindKt: number('crosswindKt'),
        runwayFt: number('runwayFt'),
      };
      const body = {
        flownOn,
        manoeuvre,
        measured,
        ...conditions,
        toStandard: yes('good'),
        note: fields.note ?? '',
      };
      setDone(await call<PracticeRecord>('POST', at, body));
      setFields({});
      recorded();
    });
  return (
    <section aria-labelledby="record">
      <h3 id="record">{signs ? 'Sign what you saw' : 'Record a manoeuvre'}</h3>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void send();
        }}
      >
        <div class="row">
          <label>
            Day flown
            <input
              type="date"
              required
              max={today(zone)}
              value={flownOn}
              onInput={(event) => setFlownOn(event.currentTarget.value)}
            />
          </label>
          <label>
            Manoeuvre
            <select value={manoeuvre} onChange={(event) => setManoeuvre(event.currentTarget.value)}>
              {MANOEUVRES.map((one) => (
                <option key={one} value={one}>
                  {titleOf(one)}
                </option>
              ))}
            </select>
          </label>
          <Choice label="At night" value={fields.night} change={set('night')} />
          <Choice label="To standard" value={fields.good} change={set('good')} />
          <label>
            Crosswind, kt
            <input
              type="number"
              min={0}
              max={80}
              value={fields.crosswindKt ?? ''}
              onInput={set('crosswindKt')}
            />
          </label>
          <label>
            Runway, ft
            <input
              type="number"
              min={100}
              max={20000}
              value={fields.runwayFt ?? ''}
              onInput={set('runwayFt')}
            />
          </label>
        </div>
        <fieldset>
          <legend>Measured: least and most</legend>
          {MEASURES.map(({ measure, label }) => (
            <div class="pair" key={measure}>
              <span>{label}</span>
              {(['least', 'most'] as const).map((end) => (
                <input
                  key={end}
                  type="number"
                  step="any"
                  aria-label={`${label}, ${end}`}
                  value={fields[`${measure}.${end}`] ?? ''}
                  onInput={set(`${measure}.${end}`)}
                />
              ))}
            </div>
          ))}
        </fieldset>
        <label>
          Note
          <textarea rows={2} maxLength={2000} value={fields.note ?? ''} onInput={set('note')} />
        </label>
        <button class="main">{signs ? 'Sign it' : 'Record it'}</button>
      </form>
      <Refusal problem={problem} />
      {done && (
        <p role="status">
          Recorded: {done.title}. {verdictSays(done)}
        </p>
      )}
    </section>
  );
}

function Choice({
  label,
  value = '',
  change,
}: {
  label: string;
  value?: string;
  change: (event: { currentTarget: { value: string } }) => void;
}) {
  return (
    <label>
      {label}
      <select value={value} onChange={change}>
        <option value="">not said</option>
        <option value="yes">yes</option>
        <option value="no">no</option>
      </select>
    </label>
  );
}
