import { useEffect, useRef, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Choice, DayInput, FigureInput, TextInput, Tick } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { bodyOf, changesOf, textsOf, type EntryTexts } from './entry-body.js';
import type { ClubAircraft, ClubModel, LogEntry } from './types.js';
import { CATEGORIES, classesOf, COUNTS, DEVICES, HOURS, ROLES } from './words.js';

export interface EntryFormProps {
  at: string;
  zone: string;
  aircraft: ClubAircraft[];
  models: ClubModel[];
  /** The entry that is changed; null: a new one. */
  editing: LogEntry | null;
  changed: () => void;
}

/** A flight of one's own, here or elsewhere. */
export function EntryForm({ at, zone, aircraft, models, editing, changed }: EntryFormProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [texts, setTexts] = useState<EntryTexts>(() => textsOf(editing, zone));
  const [problem, setProblem] = useState<string | null>(null);
  const [done, setDone] = useState(false);
  const set = (part: Partial<EntryTexts>) => {
    setTexts({ ...texts, ...part });
    setDone(false);
  };
  useEffect(() => {
    heading.current?.focus();
  }, []);
  const send = () => {
    const body = bodyOf(texts, zone);
    if (typeof body === 'string') return setProblem(body);
    return attempt(setProblem, async () => {
      if (editing) {
        const before = bodyOf(textsOf(editing, zone), zone) as Record<string, unknown>;
        const match = { 'If-Match': `"${editing.rowVersion}"` };
        await call('PATCH', `${at}/${editing.id}`, changesOf(before, body), match);
      } else {
        await call('POST', at, body);
        setTexts({ ...textsOf(null, zone), day: texts.day, aircraft: texts.aircraft });
        setDone(true);
      }
      changed();
    });
  };
  return (
    <section aria-labelledby="entry">
      <h3 id="entry" ref={heading} tabIndex={-1}>
        {editing ? `Change ${editing.fromAirfield} to ${editing.toAirfield}` : 'Log a flight'}
      </h3>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void send();
        }}
      >
        <div class="row">
          <DayInput label="Day" value={texts.day} set={(day) => set({ day })} required />
          <Clock label="Off blocks" value={texts.off} set={(off) => set({ off })} />
          <Clock label="On blocks" value={texts.on} set={(on) => set({ on })} />
          <TextInput label="From" value={texts.from} set={(from) => set({ from })} max={40} required />
          <TextInput label="To" value={texts.to} set={(to) => set({ to })} max={40} required />
        </div>
        <p class="small">Times in the club’s zone, {zone}; on blocks before off blocks is the next day.</p>
        <AircraftFields {...{ texts, set, aircraft, models }} />
        <div class="row">
          <Choice
            label="Role"
            value={texts.role}
            set={(role) => set({ role })}
            of={ROLES.map(([key, words]) => [key as string, words] as const)}
          />
          <Choice
            label="Training device"
            value={texts.device}
            set={(device) => set({ device })}
            of={DEVICES.map(([key, words]) => [key as string, words] as const)}
          />
          {[...HOURS, ...COUNTS].map(([field, words]) => (
            <FigureInput
              key={field}
              label={
                field.endsWith('H')
                  ? `${words}, h`
                  : words === 'to a full stop'
                    ? 'Full-stop landings'
                    : words
              }
              value={texts.figures[field] ?? ''}
              set={(value) => set({ figures: { ...texts.figures, [field]: value } })}
              {...{ min: 0, step: field.endsWith('H') ? '0.1' : '1', required: field === 'totalH' }}
            />
          ))}
        </div>
        <p class="small">
          Night hours between evening and morning twilight; take-offs and full stops by night from an hour
          after sunset to an hour before sunrise.
        </p>
        <div class="row">
          <Tick value={texts.soleManipulator} set={(soleManipulator) => set({ soleManipulator })}>
            sole manipulator
          </Tick>
          <Tick value={texts.holding} set={(holding) => set({ holding })}>
            holding
          </Tick>
          <Tick value={texts.interceptTrack} set={(interceptTrack) => set({ interceptTrack })}>
            intercepting and tracking
          </Tick>
        </div>
        <TextInput label="Remarks" value={texts.remarks} set={(remarks) => set({ remarks })} max={2000} />
        <Refusal problem={problem} />
        <div class="buttons">
          <button class="main">{editing ? 'Save the change' : 'Log it'}</button>
          {editing && (
            <button type="button" class="quiet" onClick={changed}>
              Leave it as it was
            </button>
          )}
        </div>
        {done && <p role="status">Logged.</p>}
      </form>
    </section>
  );
}

function Clock({ label, value, set }: { label: string; value: string; set: (value: string) => void }) {
  return (
    <label>
      {label}
      <input type="time" required value={value} onInput={(event) => set(event.currentTarget.value)} />
    </label>
  );
}

/** One of the club's aircraft or models, or any other in words. */
function AircraftFields({
  texts,
  set,
  aircraft,
  models,
}: {
  texts: EntryTexts;
  set: (part: Partial<EntryTexts>) => void;
} & Pick<EntryFormProps, 'aircraft' | 'models'>) {
  return (
    <div class="row">
      <Choice
        label="Aircraft"
        value={texts.aircraft}
        set={(chosen) => set({ aircraft: chosen })}
        of={[
          ['', 'another, not the club’s'],
          ...aircraft.map(({ id, registration }) => [`a:${id}`, registration] as const),
          ...models.map(({ id, makeModel }) => [`m:${id}`, `another ${makeModel}`] as const),
        ]}
      />
      {texts.aircraft === '' && (
        <>
          <TextInput
            {...{ label: 'Which aircraft', value: texts.aircraftWords, max: 120, required: true }}
            set={(aircraftWords) => set({ aircraftWords })}
          />
          <Choice
            label="Category"
            value={texts.category}
            set={(category) => set({ category, class: classesOf(category)[0]![0] })}
            of={CATEGORIES.map(([key, words]) => [key as string, words] as const)}
          />
          <Choice
            label="Class"
            value={texts.class}
            set={(of) => set({ class: of })}
            of={classesOf(texts.category)}
          />
          <Tick value={texts.tailwheel} set={(tailwheel) => set({ tailwheel })}>
            tailwheel
          </Tick>
        </>
      )}
    </div>
  );
}
