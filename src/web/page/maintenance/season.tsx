import { useState } from 'preact/hooks';
import { ApiProblem, call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { Day, Said } from '../parts/said.js';
import { AcceptSeason } from './accept-season.js';
import { SeasonPicture } from './season-picture.js';
import type { Beside, Season, SeasonVisit } from './season-types.js';
import { Refusal } from '../parts/refusal.js';
import { Working } from '../parts/working.js';

/** How long the service searches unless it is asked to go on. */
const USUAL_SECONDS = 45;
/** A search that is asked to go on. */
const LONGER_SECONDS = 240;

/** Plans the shop visits of half a year, shows them as a picture, and says of each why it is when it is. */
export function SeasonPlan({ me }: { me: Me }) {
  const [season, setSeason] = useState<Season | null>(null);
  const [busy, setBusy] = useState(false);
  const [searching, setSearching] = useState(USUAL_SECONDS);
  const [problem, setProblem] = useState<string | null>(null);
  const [pins, setPins] = useState<{ aircraftId: string; on: string }[]>([]);
  const [chosen, setChosen] = useState<string | null>(null);

  const plan = async (wanted: typeof pins, searchSeconds?: number) => {
    setBusy(true);
    setSearching(searchSeconds ?? USUAL_SECONDS);
    setProblem(null);
    setPins(wanted);
    try {
      setSeason(
        await call<Season>('POST', '/maintenance/season/plan', { weeks: 26, pins: wanted, searchSeconds }),
      );
    } catch (error) {
      if (!(error instanceof ApiProblem)) throw error;
      setProblem(error.problem.detail);
    }
    setBusy(false);
  };

  const visit = season?.visits.find((one) => keyOf(one) === chosen) ?? null;
  return (
    <section class="season" aria-labelledby="season">
      <h2 id="season">Plan the season</h2>
      <p class="hint">
        Half a year of shop visits: nothing overdue, the least flying displaced, upgrades riding along.
      </p>
      <button class="main" disabled={busy} onClick={() => void plan(pins)}>
        {busy ? 'Planning…' : season ? 'Plan again' : 'Plan'}
      </button>
      {pins.length > 0 && (
        <button class="quiet" disabled={busy} onClick={() => void plan([])}>
          Let go of {pins.length === 1 ? 'the pinned visit' : `${pins.length} pinned visits`}
        </button>
      )}
      <Refusal problem={problem} />
      {busy && <Working what="Looking for the season that costs least" atMost={searching} />}
      {season && (
        <div role="status">
          {season.because && (
            <p class="problem">
              <Said text={season.because} zone={me.club.zone} />
            </p>
          )}
          {season.tooSoon.map((says) => (
            <p key={says} class="warned">
              <Said text={says} zone={me.club.zone} />
            </p>
          ))}
          {(season.status === 'found' || season.status === 'stopped') && (
            <button class="quiet" disabled={busy} onClick={() => void plan(pins, LONGER_SECONDS)}>
              {busy ? 'Searching…' : `Search for up to ${LONGER_SECONDS / 60} minutes`}
            </button>
          )}
          {season.cost && (
            <>
              <Compared season={season} />
              <SeasonPicture season={season} chosen={chosen} choose={setChosen} keyOf={keyOf} />
            </>
          )}
        </div>
      )}
      {season && visit && (
        <VisitDetail
          visit={visit}
          me={me}
          pin={() => void plan([...pins, { aircraftId: visit.aircraftId, on: visit.from }])}
          pinned={pins.some((one) => one.aircraftId === visit.aircraftId && one.on === visit.from)}
        />
      )}
      {season?.cost && me.roles.includes('maintenance-coordinator') && (
        <AcceptSeason
          key={JSON.stringify(season.visits)}
          season={season}
          me={me}
          accepted={() => void plan([])}
        />
      )}
      {season && <p class="caution">{season.caution}</p>}
    </section>
  );
}

const keyOf = (visit: SeasonVisit): string => `${visit.aircraftId} ${visit.from}`;

function Compared({ season }: { season: Season }) {
  const { cost, leastPossible, byHand, asBooked, wishesLeft, visits } = season;
  const told = (beside: Beside): string =>
    beside.total === null
      ? `would leave undone: ${beside.left.join('; ')}`
      : `would cost ${beside.total.toFixed(1)}`;
  return (
    <ul class="compared">
      <li>
        <strong>
          {visits.length === 0
            ? 'Nothing has to go to the shop.'
            : season.status === 'optimal'
              ? `Costs ${cost!.total.toFixed(1)}, proven the least.`
              : `Costs ${cost!.total.toFixed(1)}, the best found in the time there was; the least possible is not below ${leastPossible!.toFixed(1)}.`}
        </strong>{' '}
        One is an hour taken from a member who booked it: booked {cost!.booked.toFixed(1)}, likely flown{' '}
        {cost!.expected.toFixed(1)}, life thrown away {cost!.life.toFixed(1)}, visits{' '}
        {cost!.visits.toFixed(1)}
        {cost!.waiting !== 0 && <>, waiting of what is overdue {cost!.waiting.toFixed(1)}</>}
        {cost!.wishes !== 0 && <>, upgrades {cost!.wishes.toFixed(1)}</>}
      </li>
      {byHand && <li>By due date, each as late as it goes, it {told(byHand)}.</li>}
      {asBooked && <li>With today’s shop bookings alone it {told(asBooked)}.</li>}
      {wishesLeft.length > 0 && <li>No place for: {wishesLeft.join('; ')}.</li>}
    </ul>
  );
}

function VisitDetail({
  visit,
  me,
  pin,
  pinned,
}: {
  visit: SeasonVisit;
  me: Me;
  pin: () => void;
  pinned: boolean;
}) {
  return (
    <div class="visit-detail" aria-live="polite">
      <h3>
        {visit.registration}, week of <Day date={visit.from} />
        {visit.to !== visit.from && (
          <>
            {' '}
            to that of <Day date={visit.to} />
          </>
        )}
      </h3>
      <ul>
        {visit.work.map((work) => (
          <li key={`${work.title} ${work.week}`}>
            {work.title} <small>({work.shopDays} shop days)</small>
            {work.dueWeek && (
              <>
                , due in the week of <Day date={work.dueWeek} />
              </>
            )}
            {work.kind === 'wish' && ', riding along'}
          </li>
        ))}
      </ul>
      {visit.why.map((says) => (
        <p key={says}>
          <Said text={says} zone={me.club.zone} />
        </p>
      ))}
      {!pinned && (
        <button class="quiet" onClick={pin}>
          Pin this visit to its week and plan the rest anew
        </button>
      )}
    </div>
  );
}
