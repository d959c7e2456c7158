import { useEffect, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Choice, Tick } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import type { Delivery, Preferences } from './types.js';

const DELIVERY: readonly (readonly [Delivery, string])[] = [
  ['now', 'at once'],
  ['daily', 'with the day’s mail'],
  ['off', 'not by mail'],
];
const HOURS = Array.from(
  { length: 24 },
  (_, hour) => [String(hour), `${String(hour).padStart(2, '0')}:00`] as const,
);

/** Which notices come by mail, and when. */
export function MailForm() {
  const [wanted, setWanted] = useState<Preferences | null>(null);
  const [saved, setSaved] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    void attempt(setProblem, async () => setWanted(await call<Preferences>('GET', '/notice-preferences')));
  }, []);
  if (wanted === null) return <Refusal problem={problem} />;
  const change = (part: Partial<Preferences>) => {
    setWanted({ ...wanted, ...part });
    setSaved(false);
  };
  const send = () =>
    attempt(setProblem, async () => {
      const { choices, quietFrom, quietTo, digestHour, rowVersion } = wanted;
      const body = {
        choices: choices.map(({ kind, delivery }) => ({ kind, delivery })),
        ...{ quietFrom, quietTo, digestHour },
      };
      setWanted(
        await call<Preferences>('PUT', '/notice-preferences', body, { 'If-Match': `"${rowVersion}"` }),
      );
      setSaved(true);
    });
  const quiet = wanted.quietFrom !== null;
  return (
    <section aria-labelledby="mail">
      <h3 id="mail">By mail</h3>
      <p class="hint">
        {wanted.mailGoesOut
          ? `To ${wanted.email}. All of it stands on this page, too.`
          : 'The club has no mail server set up: notices stand on this page only. What you choose counts once it has.'}
      </p>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void send();
        }}
      >
        {wanted.choices.map((choice) => (
          <Choice
            key={choice.kind}
            label={choice.mayBeOff ? choice.title : `${choice.title} (always told)`}
            value={choice.delivery}
            set={(delivery) =>
              change({
                choices: wanted.choices.map((one) => (one.kind === choice.kind ? { ...one, delivery } : one)),
              })
            }
            of={DELIVERY.filter(([delivery]) => delivery !== 'off' || choice.mayBeOff)}
          />
        ))}
        <Choice
          label="The day’s mail goes out at"
          value={String(wanted.digestHour)}
          set={(hour) => change({ digestHour: Number(hour) })}
          of={HOURS}
        />
        <Tick
          value={quiet}
          set={(on) =>
            change(on ? { quietFrom: '22:00', quietTo: '07:00' } : { quietFrom: null, quietTo: null })
          }
        >
          Quiet hours: only what cannot wait comes through
        </Tick>
        {quiet && (
          <div class="pair">
            <label>
              From
              <input
                type="time"
                required
                value={wanted.quietFrom!}
                onInput={(event) => change({ quietFrom: event.currentTarget.value })}
              />
            </label>
            <label>
              To
              <input
                type="time"
                required
                value={wanted.quietTo!}
                onInput={(event) => change({ quietTo: event.currentTarget.value })}
              />
            </label>
          </div>
        )}
        <p class="hint">Hours are on the club’s clock ({wanted.zone}).</p>
        <button class="main">Save</button>
        <p role="status">{saved && 'Saved.'}</p>
      </form>
      <Refusal problem={problem} />
    </section>
  );
}
