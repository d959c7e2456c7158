import { useEffect, useState } from 'preact/hooks';
import { ApiProblem, call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Choice, FigureInput, figureOf, Tick } from '../parts/fields.js';
import { useKeyFor } from '../parts/key.js';
import { Refusal } from '../parts/refusal.js';
import { momentIn, now } from '../parts/time.js';
import { looksAfterOthers } from '../session/roles.js';
import { names } from '../session/session.js';
import { Answer, MeterOut, Squawks } from './dispatch-parts.js';
import { METER_WORD, type Flight, type Sheet } from './types.js';

const WEATHER = [
  ['windFromDeg', 'Wind from, degrees true', 0, 360],
  ['windKt', 'Wind, kt', 0, 200],
  ['gustKt', 'Gusts, kt', 0, 200],
  ['visibilitySm', 'Visibility, statute miles', 0, 100],
  ['ceilingFtAgl', 'Ceiling, ft above ground', 0, 60_000],
  ['temperatureC', 'Temperature, °C', -80, 60],
  ['altimeterInHg', 'Altimeter, inHg', 25, 33],
] as const;

/** What was typed of the weather, as observed when it was typed; nothing where nothing was. */
function weatherOf(typed: Record<string, string>, observedAt: string): object {
  const told = Object.entries(typed).filter(([, text]) => text.trim() !== '');
  if (told.length === 0) return {};
  return {
    weather: { observedAt, ...Object.fromEntries(told.map(([field, text]) => [field, Number(text)])) },
  };
}

interface Props {
  me: Me;
  flight: Flight;
  aircraft: { id: string; registration: string }[];
  out(flight: Flight): void;
}

/** Before the flight, at the aircraft: what is to be looked at, and each thing accepted by itself. */
export function DispatchForm({ me, flight, aircraft, out }: Props) {
  const { booking, planned } = flight;
  const { zone } = me.club;
  const [aircraftId, setAircraft] = useState(booking.aircraftId);
  const [persons, setPersons] = useState(String(planned?.personsOnBoard ?? 1));
  const [fuel, setFuel] = useState('');
  const [oil, setOil] = useState('');
  const [weather, setWeather] = useState<Record<string, string>>({});
  // The same sent again is the same: the time is when it was typed.
  const [observedAt, setObserved] = useState(now);
  const [sheet, setSheet] = useState<Sheet | null>(null);
  const [shown, setShown] = useState<Record<string, string>>({});
  const [gaps, setGaps] = useState<Record<string, { because: string; note: string }>>({});
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set());
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const keyFor = useKeyFor();
  const [memberId, setMember] = useState(booking.memberId);
  const swapped = {
    ...(aircraftId !== booking.aircraftId ? { aircraftId } : {}),
    ...(memberId !== booking.memberId ? { memberId } : {}),
  };
  const pilots = pilotsFor(me, booking);
  const at = `/flights/${booking.id}/dispatch`;

  /** The answer hangs on who and what is aboard, so it is asked again when that changes. */
  const look = () =>
    attempt(setProblem, async () => {
      const told = {
        ...swapped,
        ...weatherOf(weather, observedAt),
        personsOnBoard: Number(persons),
        ...(fuel ? { fuelUsGal: figureOf(fuel) } : {}),
      };
      setSheet(await call<Sheet>('POST', `${at}/sheet`, told));
    });
  useEffect(() => {
    setShown({});
    setGaps({});
    void look();
  }, [aircraftId, memberId]);

  const tick = (id: string) => (on: boolean) => {
    const next = new Set(ticked);
    if (on) next.add(id);
    else next.delete(id);
    setTicked(next);
  };
  const send = async () => {
    const body = {
      ...swapped,
      ...weatherOf(weather, observedAt),
      ...{ personsOnBoard: Number(persons), fuelUsGal: figureOf(fuel) },
      ...(oil ? { oilQt: figureOf(oil) } : {}),
      meters: metersOf(sheet!, shown, gaps),
      squawksSeen: sheet!.squawks.filter(({ id }) => ticked.has(id)).map(({ id }) => id),
      conditionsAccepted: sheet!.decision.conditions.filter((one) => ticked.has(one)),
      selfAssessed: ticked.has('self'),
    };
    const key = keyFor(JSON.stringify(body));
    setBusy(true);
    setProblem(null);
    try {
      const gone = await call<Flight | undefined>('POST', at, body, { 'Idempotency-Key': key });
      // A browser takes a head that was cut off for an answer without a body.
      if (!gone?.booking) throw new Error('half an answer');
      out(gone);
    } catch (error) {
      if (!(error instanceof ApiProblem))
        setProblem('The answer was cut off. Send it again: it is not done twice.');
      else {
        const { status, detail } = error.problem;
        setProblem(status === 0 ? `${detail} Sent again, it is not done twice.` : detail);
        // What was open may be another thing now.
        if (status === 409) await look().then(() => setProblem(detail));
      }
    } finally {
      setBusy(false);
    }
  };

  const early = sheet !== null && now() < sheet.from;
  return (
    <form
      aria-label="Dispatch"
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <div class="row">
        <Choice
          label="Aircraft"
          value={aircraftId}
          set={setAircraft}
          of={aircraft.map(
            ({ id, registration }) =>
              [id, id === booking.aircraftId ? `${registration}, as booked` : registration] as const,
          )}
        />
        {pilots.length > 1 && (
          <Choice
            label="Pilot"
            value={memberId}
            set={setMember}
            of={pilots.map(
              ({ id, name }) => [id, id === booking.memberId ? `${name}, as booked` : name] as const,
            )}
          />
        )}
        <FigureInput
          label="Persons on board"
          {...{ value: persons, set: setPersons, required: true, min: 1, max: 20, step: '1' }}
        />
        <FigureInput
          label="Fuel on board, US gal"
          {...{ value: fuel, set: setFuel, required: true, min: 0, max: 500, step: '0.1' }}
        />
        <FigureInput label="Oil, US qt" {...{ value: oil, set: setOil, min: 0, max: 60, step: '0.1' }} />
      </div>
      <details>
        <summary>Weather now, as you see or read it</summary>
        <div class="row">
          {WEATHER.map(([field, label, min, max]) => (
            <FigureInput
              key={field}
              {...{ label, min, max }}
              value={weather[field] ?? ''}
              set={(value) => {
                setWeather({ ...weather, [field]: value });
                setObserved(now());
              }}
            />
          ))}
        </div>
      </details>
      <button type="button" class="quiet" onClick={() => void look()}>
        Ask again with these figures
      </button>
      {sheet && (
        <>
          <Answer sheet={sheet} zone={zone} ticked={ticked} tick={tick} />
          <Squawks {...{ sheet, zone, ticked, tick }} />
          <fieldset>
            <legend>Meters before the flight</legend>
            {sheet.meters.map(({ kind, shownH, readAt }) => (
              <MeterOut
                key={kind}
                {...{ label: METER_WORD[kind], last: shownH, readAt, zone }}
                value={shown[kind] ?? ''}
                set={(value) => setShown({ ...shown, [kind]: value })}
                gap={gaps[kind] ?? { because: 'not-known', note: '' }}
                setGap={(gap) => setGaps({ ...gaps, [kind]: gap })}
              />
            ))}
          </fieldset>
          <fieldset>
            <legend>Yourself</legend>
            <ul class="self">
              {sheet.selfAssessment.map(({ item, asks }) => (
                <li key={item}>
                  <strong>{item}.</strong> {asks}
                </li>
              ))}
            </ul>
            <Tick value={ticked.has('self')} set={tick('self')}>
              I went through these and am fit to fly
            </Tick>
            <p class="small">{sheet.selfAssessmentSource}. Only that you went through them is kept.</p>
          </fieldset>
          <p class="caution">{sheet.caution}</p>
        </>
      )}
      <Refusal problem={problem} />
      <button class="main wide" disabled={busy || early || !sheet?.mayGo || !allTicked(sheet, ticked)}>
        {busy ? 'Handing out…' : 'Take the aircraft'}
      </button>
      {early && <p class="hint">It is handed out from {momentIn(zone, sheet.from)} on.</p>}
      {sheet && sheet.mayGo && !allTicked(sheet, ticked) && (
        <p class="hint">Tick each condition, each squawk and yourself first.</p>
      )}
    </form>
  );
}

/** Who may fly it in place of the pilot: whoever an instructor or officer puts there, or the second pilot who hands it out. */
function pilotsFor(
  me: Me,
  { memberId, memberName, people }: Flight['booking'],
): { id: string; name: string }[] {
  const booked = { id: memberId, name: memberName };
  if (looksAfterOthers(me.roles)) return [booked, ...names.value.filter(({ id }) => id !== memberId)];
  const aboard = me.memberId !== memberId && people.some((one) => one.memberId === me.memberId);
  return aboard ? [booked, { id: me.memberId, name: me.name }] : [booked];
}

function metersOf(
  sheet: Sheet,
  shown: Record<string, string>,
  gaps: Record<string, { because: string; note: string }>,
): object[] {
  return sheet.meters.map(({ kind, shownH }) => {
    const value = Number(shown[kind]);
    const gap = gaps[kind] ?? { because: 'not-known', note: '' };
    return value > shownH ? { kind, shownH: value, gap } : { kind, shownH: value };
  });
}

const allTicked = ({ decision, squawks }: Sheet, ticked: ReadonlySet<string>): boolean =>
  [...decision.conditions, ...squawks.map(({ id }) => id), 'self'].every((one) => ticked.has(one));
