import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Choice, DayInput, FigureInput } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { today } from '../parts/time.js';
import { MANOEUVRES, MEASURES, titleOf, verdictSays } from './words.js';
import type { PracticeRecord } from './types.js';

const SAID = [
  ['', 'not said'],
  ['yes', 'yes'],
  ['no', 'no'],
] as const;

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
  const set = (name: string) => (value: string) => setFields({ ...fields, [name]: value });
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
          <DayInput label="Day flown" value={flownOn} set={setFlownOn} max={today(zone)} required />
          <Choice
            label="Manoeuvre"
            value={manoeuvre}
            set={setManoeuvre}
            of={MANOEUVRES.map((one) => [one, titleOf(one)])}
          />
          <Choice label="At night" value={fields.night ?? ''} set={set('night')} of={SAID} />
          <Choice label="To standard" value={fields.good ?? ''} set={set('good')} of={SAID} />
          <FigureInput
            label="Crosswind, kt"
            value={fields.crosswindKt ?? ''}
            set={set('crosswindKt')}
            {...{ min: 0, max: 80, step: '1' }}
          />
          <FigureInput
            label="Runway, ft"
            value={fields.runwayFt ?? ''}
            set={set('runwayFt')}
            {...{ min: 100, max: 20_000, step: '1' }}
          />
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
                  onInput={(event) => set(`${measure}.${end}`)(event.currentTarget.value)}
                />
              ))}
            </div>
          ))}
        </fieldset>
        <label>
          Note
          <textarea
            rows={2}
            maxLength={2000}
            value={fields.note ?? ''}
            onInput={(event) => set('note')(event.currentTarget.value)}
          />
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
