import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { instantIn, plusDays, today } from '../parts/time.js';
import type { Squawk } from '../squawks/types.js';
import { isOpen } from '../squawks/words.js';
import { Effects } from './effects.js';
import type { Item, Line, StepResult, Wish } from './types.js';

type Pick = { kind: Line['kind']; aboutId: string | null; title: string };

const MORNING = '08:00';
const EVENING = '18:00';

/** Plans a visit: what is done, when, and whose flights make room. Nothing is kept before it has been looked at. */
export function PlanForm({
  aircraftId,
  zone,
  items,
  squawks,
  wishes,
  planned,
}: {
  aircraftId: string;
  zone: string;
  items: Item[];
  squawks: Squawk[];
  wishes: Wish[];
  planned: () => void;
}) {
  const [title, setTitle] = useState('');
  const [shop, setShop] = useState('');
  const [chosen, setChosen] = useState<Record<string, boolean>>({});
  const [other, setOther] = useState('');
  const [first, setFirst] = useState(plusDays(today(zone), 7));
  const [last, setLast] = useState(plusDays(today(zone), 9));
  const [timed, setTimed] = useState(true);
  const [shown, setShown] = useState<StepResult | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const set =
    <T,>(change: (value: T) => void) =>
    (value: T) => {
      change(value);
      setShown(null);
    };

  const picks: Pick[] = [
    ...items
      .filter(({ retiredOn }) => retiredOn === null)
      .map(({ id, title: what }) => ({ kind: 'item' as const, aboutId: id, title: what })),
    ...squawks
      .filter(({ state }) => isOpen(state))
      .map(({ id, title: what }) => ({ kind: 'squawk' as const, aboutId: id, title: `Squawk: ${what}` })),
    ...wishes
      .filter(({ doneOn }) => doneOn === null)
      .map(({ id, title: what }) => ({ kind: 'wish' as const, aboutId: id, title: `Upgrade: ${what}` })),
    { kind: 'weighing', aboutId: null, title: 'Weighing' },
  ];
  const keyOf = ({ kind, aboutId }: Pick): string => aboutId ?? kind;

  const body = (preview: string | null) => ({
    ...{ title: title.trim() || 'Shop visit', shop },
    lines: [
      ...picks
        .filter((one) => chosen[keyOf(one)])
        .map(({ kind, aboutId }) => (aboutId === null ? { kind } : { kind, aboutId })),
      ...(other.trim() === '' ? [] : [{ kind: 'other', title: other }]),
    ],
    ...(timed
      ? { from: instantIn(zone, first, MORNING), to: instantIn(zone, last, EVENING), displace: true }
      : {}),
    ...(preview === null ? {} : { preview }),
  });
  const send = async (where: '' | '/preview') => {
    setBusy(true);
    await attempt(setProblem, async () => {
      const path = `/aircraft/${aircraftId}/work-orders${where}`;
      const answer = await call<StepResult>(
        'POST',
        path,
        body(where === '' ? (shown?.preview ?? null) : null),
      );
      if (where === '/preview') return setShown(answer);
      setShown(null);
      setTitle('');
      setChosen({});
      setOther('');
      planned();
    });
    setBusy(false);
  };

  return (
    <form
      class="card"
      onSubmit={(event) => {
        event.preventDefault();
        void send('/preview');
      }}
    >
      <h3>Plan a visit</h3>
      <div class="fields">
        <label>
          What for
          <input
            required
            maxLength={200}
            value={title}
            placeholder="Annual inspection"
            onInput={(event) => set(setTitle)(event.currentTarget.value)}
          />
        </label>
        <label>
          Where
          <input
            maxLength={200}
            value={shop}
            placeholder="the shop’s name"
            onInput={(event) => set(setShop)(event.currentTarget.value)}
          />
        </label>
      </div>
      <fieldset>
        <legend>To be done</legend>
        <div class="ticks">
          {picks.map((one) => (
            <label key={keyOf(one)} class="tick">
              <input
                type="checkbox"
                checked={chosen[keyOf(one)] ?? false}
                onChange={(event) => set(setChosen)({ ...chosen, [keyOf(one)]: event.currentTarget.checked })}
              />
              {one.title}
            </label>
          ))}
        </div>
        <label>
          Something else
          <input
            maxLength={200}
            value={other}
            placeholder="new door seals"
            onInput={(event) => set(setOther)(event.currentTarget.value)}
          />
        </label>
      </fieldset>
      <fieldset>
        <legend>When</legend>
        <label class="tick">
          <input
            type="checkbox"
            checked={timed}
            onChange={(event) => set(setTimed)(event.currentTarget.checked)}
          />
          Take it off the calendar
        </label>
        {timed && (
          <div class="fields">
            <label>
              First day, from {MORNING}
              <input
                type="date"
                required
                value={first}
                onChange={(event) => set(setFirst)(event.currentTarget.value)}
              />
            </label>
            <label>
              Last day, until {EVENING}
              <input
                type="date"
                required
                min={first}
                value={last}
                onChange={(event) => set(setLast)(event.currentTarget.value)}
              />
            </label>
          </div>
        )}
      </fieldset>
      <Refusal problem={problem} />
      <button class="main" disabled={busy}>
        Whose flights would it move?
      </button>
      {shown && (
        <>
          <Effects of={shown} zone={zone} />
          <button type="button" class="main" disabled={busy} onClick={() => void send('')}>
            Plan it so
          </button>
        </>
      )}
    </form>
  );
}
