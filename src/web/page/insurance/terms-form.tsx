import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Choice, DayInput, FigureInput, figureOf, TextInput, Tick } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { names } from '../session/session.js';
import { FIGURES } from './types.js';

const LEVELS = ['sport', 'recreational', 'lapl', 'private', 'commercial', 'atp'];
const EMPTY = {
  source: '',
  from: '',
  through: '',
  level: '',
  instrument: false,
  checkout: false,
  onlyNamed: false,
};

/** Enters the terms of a policy. */
export function TermsForm({ aircraftId, saved }: { aircraftId: string; saved: () => void }) {
  const [form, setForm] = useState(EMPTY);
  const [figures, setFigures] = useState<Record<string, string>>({});
  const [named, setNamed] = useState<string[]>([]);
  const [problem, setProblem] = useState<string | null>(null);
  const add = () =>
    attempt(setProblem, async () => {
      const minimums = {
        ...{
          leastLevel: form.level || null,
          instrumentRating: form.instrument,
          checkoutInModel: form.checkout,
        },
        ...Object.fromEntries(FIGURES.map(([name]) => [name, figureOf(figures[name] ?? '')])),
      };
      await call('POST', `/aircraft/${aircraftId}/insurance`, {
        ...{ source: form.source, validFrom: form.from, validThrough: form.through, namedPilotIds: named },
        minimums: form.onlyNamed ? null : minimums,
      });
      setForm(EMPTY);
      setFigures({});
      setNamed([]);
      saved();
    });
  return (
    <details>
      <summary>Enter the terms of a policy</summary>
      <form
        class="insurance-form"
        aria-label="Enter the terms of a policy"
        onSubmit={(event) => {
          event.preventDefault();
          void add();
        }}
      >
        <div class="in-line">
          <TextInput
            label="Where it stands (policy and clause)"
            required
            value={form.source}
            set={(source) => setForm({ ...form, source })}
          />
          <DayInput label="First day" required value={form.from} set={(from) => setForm({ ...form, from })} />
          <DayInput
            label="Last day"
            required
            value={form.through}
            set={(through) => setForm({ ...form, through })}
          />
        </div>
        <Tick value={form.onlyNamed} set={(onlyNamed) => setForm({ ...form, onlyNamed })}>
          It covers named pilots only
        </Tick>
        {!form.onlyNamed && (
          <fieldset>
            <legend>Asked of pilots it does not name; empty: not asked</legend>
            <div class="in-line">
              <Choice
                label="Certificate, at least"
                value={form.level}
                set={(level) => setForm({ ...form, level })}
                of={[['', 'any'], ...LEVELS.map((level) => [level, level] as const)]}
              />
              {FIGURES.map(([name, label]) => (
                <FigureInput
                  key={name}
                  label={label}
                  min={0}
                  step={name.endsWith('H') ? '0.1' : '1'}
                  value={figures[name] ?? ''}
                  set={(value) => setFigures({ ...figures, [name]: value })}
                />
              ))}
            </div>
            <Tick value={form.instrument} set={(instrument) => setForm({ ...form, instrument })}>
              Instrument rating
            </Tick>
            <Tick value={form.checkout} set={(checkout) => setForm({ ...form, checkout })}>
              Checkout in the model, signed by an instructor of the club
            </Tick>
          </fieldset>
        )}
        <label>
          Pilots it names
          <select
            multiple
            size={5}
            onChange={(event) => setNamed([...event.currentTarget.selectedOptions].map(({ value }) => value))}
          >
            {names.value.map(({ id, name }) => (
              <option key={id} value={id} selected={named.includes(id)}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <Refusal problem={problem} />
        <button class="main">Enter the terms</button>
      </form>
    </details>
  );
}
