import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Choice, DayInput, FigureInput, LongText, TextInput, Tick } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import {
  bodyOf,
  entryTexts,
  FIGURES,
  textsOf,
  timesOf,
  type EntryTexts,
  type ReturnTexts,
} from './return-texts.js';
import { METER_WORD, type Entry, type Flight } from './types.js';
import { roleWord } from './words.js';

interface Props {
  me: Me;
  flight: Flight;
  /** Why the last one was refused. */
  refused: string | null;
  /** What was filled in before, on a page that was closed meanwhile. */
  begun: ReturnTexts | null;
  send(body: object, texts: ReturnTexts): void;
}

/** After the flight: times, landings, meters, fuel, and what goes into whose log. With a return there already, its correction. */
export function ReturnForm({ me, flight, refused, begun, send }: Props) {
  const { zone } = me.club;
  const correcting = flight.return !== null;
  const [texts, setTexts] = useState<ReturnTexts>(() => begun ?? textsOf(flight, zone));
  const [because, setBecause] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const set = (part: Partial<ReturnTexts>) => setTexts({ ...texts, ...part });
  const times = timesOf(texts, zone);
  const at = `/flights/${flight.booking.id}/return`;

  const propose = async () => {
    if (!times) return setProblem('Give both times; one that a clock change skips or repeats, a minute off.');
    const told = {
      ...{ ...times, fromAirfield: texts.from, toAirfield: texts.to },
      ...{ landings: Number(texts.landings), fullStopLandings: Number(texts.fullStops) },
    };
    const went = await attempt(setProblem, async () => {
      const { entries } = await call<{ entries: (Entry & { name: string })[] }>(
        'POST',
        `${at}/proposal`,
        told,
      );
      set({ entries: entries.map((entry) => entryTexts(entry, entry.name)) });
    });
    // Without a network the figures are typed in.
    if (!went && texts.entries.length === 0) set({ entries: [byHand(flight, texts)] });
  };
  const submit = () => {
    if (!times) return setProblem('Give both times; one that a clock change skips or repeats, a minute off.');
    const body = bodyOf(texts, times, flight);
    if (correcting) return send({ ...body, replacesId: flight.return!.id, because }, texts);
    const squawks = texts.squawk.trim() ? [{ title: texts.squawk, detail: texts.squawkDetail }] : [];
    return send({ ...body, squawks }, texts);
  };
  return (
    <form
      aria-label={correcting ? 'Correct the return' : 'Return'}
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <fieldset>
        <legend>The flight</legend>
        <div class="row">
          <DayInput label="Day" value={texts.day} set={(day) => set({ day })} required />
          <Clock label="Off blocks" value={texts.off} set={(off) => set({ off })} />
          <Clock label="On blocks" value={texts.on} set={(on) => set({ on })} />
          <TextInput label="From" value={texts.from} set={(from) => set({ from })} max={40} required />
          <TextInput label="To" value={texts.to} set={(to) => set({ to })} max={40} required />
          {!correcting && (
            <>
              <FigureInput
                label="Landings"
                value={texts.landings}
                set={(landings) => set({ landings })}
                {...WHOLE}
              />
              <FigureInput
                label="Full stops"
                value={texts.fullStops}
                set={(fullStops) => set({ fullStops })}
                {...WHOLE}
              />
            </>
          )}
        </div>
        <p class="small">Times in the club’s zone, {zone}; on blocks before off blocks is the next day.</p>
      </fieldset>
      <fieldset>
        <legend>The aircraft</legend>
        <div class="row">
          {flight.dispatch!.meters.map(({ kind, shownH }) => (
            <FigureInput
              key={kind}
              label={`${METER_WORD[kind]} (out ${shownH.toFixed(1)}), h`}
              value={texts.meters[kind] ?? ''}
              set={(value) => set({ meters: { ...texts.meters, [kind]: value } })}
              {...{ required: true, min: 0, step: '0.1' }}
            />
          ))}
          <FigureInput
            label="Fuel left, US gal"
            value={texts.fuelLeft}
            set={(fuelLeft) => set({ fuelLeft })}
            {...GALLONS}
          />
          <FigureInput
            label="Oil added, US qt"
            value={texts.oilAdded}
            set={(oilAdded) => set({ oilAdded })}
            {...GALLONS}
          />
          <FigureInput
            label="Fuel bought, US gal"
            value={texts.fuelBought}
            set={(fuelBought) => set({ fuelBought })}
            {...GALLONS}
          />
          <FigureInput
            label="Paid for it"
            value={texts.fuelPaid}
            set={(fuelPaid) => set({ fuelPaid })}
            {...{ min: 0, step: '0.01' }}
          />
        </div>
        {flight.booking.people.length > 1 && (
          <Choice
            label="Goes on the account of"
            value={texts.payer ?? flight.booking.memberId}
            set={(payer) => set({ payer })}
            of={flight.booking.people.map(({ memberId, name }) => [memberId, name] as const)}
          />
        )}
        {refused?.startsWith('meters') && (
          <Tick value={texts.confirmJump} set={(confirmJump) => set({ confirmJump })}>
            I read the meters twice; they are right
          </Tick>
        )}
        {!correcting && (
          <details>
            <summary>Something wrong with it?</summary>
            <TextInput
              label="What is wrong, in a few words"
              value={texts.squawk}
              set={(squawk) => set({ squawk })}
            />
            <LongText
              label="When it shows, what you tried"
              value={texts.squawkDetail}
              set={(squawkDetail) => set({ squawkDetail })}
              {...{ max: 4000, rows: 3 }}
            />
          </details>
        )}
      </fieldset>
      {!correcting && (
        <button
          type="button"
          class={texts.entries.length === 0 ? 'main wide' : 'quiet'}
          onClick={() => void propose()}
        >
          {texts.entries.length === 0 ? 'Go on to the log' : 'Propose the log anew'}
        </button>
      )}
      {texts.entries.map((entry, index) => (
        <LogFields
          key={entry.memberId}
          entry={entry}
          set={(next) => set({ entries: texts.entries.map((one, place) => (place === index ? next : one)) })}
        />
      ))}
      {correcting && (
        <TextInput label="Why it is corrected" value={because} set={setBecause} max={500} required />
      )}
      <Refusal problem={problem ?? refused} />
      {texts.entries.length > 0 && (
        <button class="main wide">{correcting ? 'Correct the return' : 'Bring it back'}</button>
      )}
    </form>
  );
}

const WHOLE = { required: true, min: 0, max: 200, step: '1' };
const GALLONS = { min: 0, step: '0.1' };
const USUAL = FIGURES.slice(0, 5);
const RARE = FIGURES.slice(5);

function Clock({ label, value, set }: { label: string; value: string; set: (value: string) => void }) {
  return (
    <label>
      {label}
      <input type="time" required value={value} onInput={(event) => set(event.currentTarget.value)} />
    </label>
  );
}

/** What one person logs: the usual figures first, and the rest open where something of it is not known. */
function LogFields({ entry, set }: { entry: EntryTexts; set(entry: EntryTexts): void }) {
  const input = ([field, label, required]: (typeof FIGURES)[number]) => (
    <FigureInput
      key={field}
      label={label}
      value={entry.figures[field]}
      set={(value) => set({ ...entry, figures: { ...entry.figures, [field]: value } })}
      {...{ required, min: 0, step: field.endsWith('H') ? '0.1' : '1' }}
    />
  );
  const open = RARE.some(([field, , required]) => required && entry.figures[field] === '');
  return (
    <fieldset class="entry">
      <legend>
        Into the log of {entry.name}: {roleWord(entry.role)}
      </legend>
      <div class="row">{USUAL.map(input)}</div>
      <details open={open}>
        <summary>Night, cross-country, instruments</summary>
        <div class="row">{RARE.map(input)}</div>
        <Tick value={entry.soleManipulator} set={(soleManipulator) => set({ ...entry, soleManipulator })}>
          sole manipulator of the controls
        </Tick>
      </details>
    </fieldset>
  );
}

/** The pilot's entry with nothing worked out. */
function byHand({ booking }: Flight, texts: ReturnTexts): EntryTexts {
  const taught = booking.people.some(({ role }) => role === 'instructor');
  return entryTexts(
    {
      ...{ memberId: booking.memberId, role: taught ? 'dual-received' : 'pilot-in-command' },
      ...{ landings: Number(texts.landings), takeoffs: Number(texts.landings) },
      fullStopLandings: Number(texts.fullStops),
    },
    booking.memberName,
  );
}
