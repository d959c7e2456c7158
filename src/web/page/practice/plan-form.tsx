import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Choice, DayInput, FigureInput, TextInput, Tick } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { Said } from '../parts/said.js';
import { today } from '../parts/time.js';
import { groupsOf } from './record-typed.js';
import type { Plan } from './types.js';

const NIGHT = [
  ['', 'not known yet'],
  ['no', 'no'],
  ['yes', 'yes'],
] as const;

const FIGURES = [
  { name: 'crosswindKt', label: 'Crosswind, kt', min: 0, max: 80 },
  { name: 'gustSpreadKt', label: 'Gusts over the wind, kt', min: 0, max: 80 },
  { name: 'runwayFt', label: 'Runway, ft', min: 100, max: 20_000 },
  { name: 'transitMinutes', label: 'Minutes to the practice area and back', min: 0, max: 240 },
];

/** The next practice flight, made when asked for. */
export function PlanForm({ at, zone }: { at: string; zone: string }) {
  const [on, setOn] = useState(today(zone));
  const [minutes, setMinutes] = useState('60');
  const [instructor, setInstructor] = useState(false);
  const [night, setNight] = useState<string>('');
  const [offers, setOffers] = useState<Record<string, string>>({});
  const [plan, setPlan] = useState<Plan | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const ask = () =>
    attempt(setProblem, async () => {
      const known = {
        ...(night === '' ? {} : { night: night === 'yes' }),
        ...Object.fromEntries(
          FIGURES.flatMap(({ name }) => (offers[name] ? [[name, Number(offers[name])]] : [])),
        ),
        ...(groupsOf(offers['equipment'] ?? '') ? { equipment: groupsOf(offers['equipment']!) } : {}),
      };
      setPlan(await call<Plan>('POST', `${at}/plan`, { on, minutes: Number(minutes), instructor, ...known }));
    });
  return (
    <section aria-labelledby="plan">
      <h3 id="plan">The next practice flight</h3>
      <form
        class="row"
        onSubmit={(event) => {
          event.preventDefault();
          void ask();
        }}
      >
        <DayInput label="Day" value={on} set={setOn} required />
        <FigureInput
          label="Minutes"
          value={minutes}
          set={setMinutes}
          {...{ min: 10, max: 480, step: '1' }}
          required
        />
        <Choice label="At night" value={night} set={setNight} of={NIGHT} />
        <Tick value={instructor} set={setInstructor}>
          An instructor is aboard
        </Tick>
        <details class="wide">
          <summary>Wind, runway, equipment: what the flight offers, as far as you know</summary>
          <div class="row">
            {FIGURES.map(({ name, label, ...bounds }) => (
              <FigureInput
                key={name}
                label={label}
                value={offers[name] ?? ''}
                set={(value) => setOffers({ ...offers, [name]: value })}
                {...bounds}
                step="1"
              />
            ))}
            <TextInput
              label="Equipment aboard, with commas"
              value={offers['equipment'] ?? ''}
              set={(value) => setOffers({ ...offers, equipment: value })}
              placeholder="autopilot"
            />
          </div>
        </details>
        <button class="main">Plan it</button>
      </form>
      <Refusal problem={problem} />
      {plan && <PlanShown plan={plan} zone={zone} />}
    </section>
  );
}

function PlanShown({ plan, zone }: { plan: Plan; zone: string }) {
  return (
    <div class="plan" aria-live="polite">
      {plan.items.length === 0 ? (
        <p>Nothing is planned: nothing rusty or wanted fits this flight.</p>
      ) : (
        <p>
          <strong>{plan.totalH} h</strong> ({plan.totalMinutes} min, {plan.transitMinutes} of them to the
          practice area and back), {plan.dual ? 'with an instructor' : 'no instructor needed'}.
        </p>
      )}
      {plan.notes.map((text) => (
        <p key={text}>
          <Said text={text} zone={zone} />
        </p>
      ))}
      <ol>
        {plan.items.map((item) => (
          <li key={`${item.manoeuvre}${item.condition}`}>
            <strong>
              {item.times} × {item.title}
            </strong>{' '}
            {item.condition}, {item.minutes} min{item.withInstructor && ', with an instructor'}
            {item.tolerances.length > 0 && (
              <p class="tolerance">
                {item.tolerances.join(', ')} <small>({item.document})</small>
              </p>
            )}
            <Why why={item.why} zone={zone} />
          </li>
        ))}
      </ol>
      {plan.leftOut.length > 0 && (
        <details>
          <summary>Left out: {plan.leftOut.length}</summary>
          <ul>
            {plan.leftOut.map((one) => (
              <li key={`${one.title}${one.condition}`}>
                <strong>{one.title}</strong> {one.condition}
                <Why why={one.why} zone={zone} />
              </li>
            ))}
          </ul>
        </details>
      )}
      {plan.cautions.map((text) => (
        <p key={text} class="caution">
          {text}
        </p>
      ))}
    </div>
  );
}

const Why = ({ why, zone }: { why: string[]; zone: string }) => (
  <ul class="why-list">
    {why.map((text) => (
      <li key={text}>
        <Said text={text} zone={zone} />
      </li>
    ))}
  </ul>
);
