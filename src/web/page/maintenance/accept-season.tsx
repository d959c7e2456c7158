import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { Day } from '../parts/said.js';
import { Effects } from '../shop/effects.js';
import type { StepEffects } from '../shop/types.js';
import type { Season, SeasonVisit } from './season-types.js';

const keyOf = ({ aircraftId, from }: SeasonVisit): string => `${aircraftId} ${from}`;

/** Puts visits of the plan into the calendar, after a look at whose flights make room. */
export function AcceptSeason({ season, me, accepted }: { season: Season; me: Me; accepted: () => void }) {
  const open = season.visits.filter(({ booked, work }) => !booked && work.length > 0);
  const [left, setLeft] = useState<Record<string, boolean>>({});
  const [shown, setShown] = useState<StepEffects | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const chosen = open.filter((visit) => !left[keyOf(visit)]);
  const send = async (where: '' | '/preview') => {
    setBusy(true);
    await attempt(setProblem, async () => {
      const visits = chosen.map(({ aircraftId, firstDay, lastDay, work }) => ({
        ...{ aircraftId, firstDay, lastDay, work: work.map(({ kind, id }) => ({ kind, id })) },
      }));
      const body = { visits, displace: true, ...(where === '' ? { preview: shown?.preview } : {}) };
      const answer = await call<StepEffects>('POST', `/maintenance/season/accept${where}`, body);
      if (where === '/preview') setShown(answer);
      else accepted();
    });
    setBusy(false);
  };
  if (open.length === 0)
    return season.visits.length === 0 ? null : (
      <p class="hint">Every visit of the plan is in the calendar.</p>
    );
  return (
    <form
      class="accept"
      aria-label="Put the plan into the calendar"
      onSubmit={(event) => {
        event.preventDefault();
        void send('/preview');
      }}
    >
      <h3>Put it into the calendar</h3>
      {open.map((visit) => (
        <label key={keyOf(visit)} class="tick">
          <input
            type="checkbox"
            checked={!left[keyOf(visit)]}
            onChange={(event) => {
              setLeft({ ...left, [keyOf(visit)]: !event.currentTarget.checked });
              setShown(null);
            }}
          />
          <span>
            <strong>{visit.registration}</strong> <Day date={visit.firstDay} /> to{' '}
            <Day date={visit.lastDay} />: {visit.work.map(({ title }) => title).join(', ')}
          </span>
        </label>
      ))}
      <Refusal problem={problem} />
      <button class="main" disabled={busy || chosen.length === 0}>
        Whose flights would it move?
      </button>
      {shown && (
        <>
          <Effects of={shown} zone={me.club.zone} />
          <button type="button" class="main" disabled={busy} onClick={() => void send('')}>
            Put {chosen.length === 1 ? 'the visit' : `${chosen.length} visits`} into the calendar
          </button>
        </>
      )}
    </form>
  );
}
