import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Choice, DayInput, FigureInput, figureOf, typed } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { Day } from '../parts/said.js';
import type { LimitsSet, MemberLimits } from './types.js';
import { FIGURES } from './words.js';

const NIGHT = [
  ['', 'not limited'],
  ['none', 'none'],
] as const;

/** A whole set; what is left empty is not limited. */
export function LimitsForm({
  at,
  before,
  forStudent,
  looserFrom,
  saved,
}: {
  at: string;
  /** The set it begins with. */
  before: LimitsSet | null;
  forStudent: boolean;
  looserFrom: string;
  saved: (limits: MemberLimits) => void;
}) {
  const [fields, setFields] = useState<Record<string, string>>(
    Object.fromEntries(FIGURES.map(({ name }) => [name, typed(before?.[name])])),
  );
  const [night, setNight] = useState<string>(before?.night === false ? 'none' : '');
  const [through, setThrough] = useState(before?.bindsThrough ?? '');
  const [note, setNote] = useState(before?.note ?? '');
  const [problem, setProblem] = useState<string | null>(null);
  const send = () =>
    attempt(setProblem, async () => {
      const figures = Object.fromEntries(FIGURES.map(({ name }) => [name, figureOf(fields[name]!)]));
      const bound = forStudent ? { bindsThrough: through || null } : {};
      const body = { ...figures, night: night === 'none' ? false : null, note, ...bound };
      saved(await call<MemberLimits>('POST', at, body));
    });
  return (
    <section aria-labelledby="set">
      <h3 id="set">{forStudent ? 'Set limits as an instructor' : 'Set your own'}</h3>
      <p class="hint">
        {forStudent ? (
          'They hold at once. They bind a student’s flights without an instructor; in the logbook they are to stand as well.'
        ) : (
          <>
            Stricter figures hold at once, looser ones from <Day date={looserFrom} />: limits are not lowered
            for the flight of the day. They are held against each flight you ask about, as advice.
          </>
        )}
      </p>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void send();
        }}
      >
        <div class="row">
          {FIGURES.map(({ name, label, bound, unit, min, max, step }) => (
            <FigureInput
              key={name}
              label={`${label}, ${bound}, ${unit}`}
              value={fields[name]!}
              set={(value) => setFields({ ...fields, [name]: value })}
              {...{ min, max, step }}
            />
          ))}
          <Choice label="Flying at night" value={night} set={setNight} of={NIGHT} />
          {forStudent && <DayInput label="Binding a rated pilot through" value={through} set={setThrough} />}
        </div>
        <label>
          Note
          <textarea
            rows={2}
            maxLength={2000}
            value={note}
            onInput={(event) => setNote(event.currentTarget.value)}
          />
        </label>
        <button class="main">Set the limits</button>
      </form>
      <Refusal problem={problem} />
    </section>
  );
}
