import { FlightDetails } from './flight-details.js';
import type { FlightForm } from './flight.js';
import type { Airfield, PersonName } from '../api/types.js';

interface Props {
  form: FlightForm;
  airfields: Airfield[];
  /** For whom else the flight may be asked. */
  people: PersonName[];
  instructors: PersonName[];
  wrong: { field: string; message: string } | null;
  busy: boolean;
  change(part: Partial<FlightForm>): void;
  ask(): void;
}

/** The flight in one sentence. */
export function AskForm({ form, airfields, people, instructors, wrong, busy, change, ask }: Props) {
  const text = (name: keyof FlightForm) => (event: Event) =>
    change({ [name]: (event.currentTarget as HTMLInputElement).value } as Partial<FlightForm>);
  const invalid = (field: string) =>
    wrong?.field === field ? { 'aria-invalid': true, 'aria-describedby': 'ask-wrong' } : {};
  const instruction = form.purpose === 'dual' || form.purpose === 'checkout';
  const addLanding = (code: string) => code && change({ landings: [...form.landings, code] });

  return (
    <form
      class="ask"
      onSubmit={(event) => {
        event.preventDefault();
        ask();
      }}
    >
      <p class="sentence">
        <Who form={form} people={people} change={change} />
        <span class="glue">
          <select aria-label="What kind of flight" value={form.purpose} onChange={text('purpose')}>
            <option value="solo">alone</option>
            <option value="passengers">with passengers</option>
            <option value="dual">with an instructor</option>
            <option value="checkout">a checkout</option>
          </select>
          {form.purpose === 'passengers' && (
            <>
              {' ('}
              <select
                aria-label="How many passengers"
                value={form.passengers}
                onChange={(event) => change({ passengers: Number(event.currentTarget.value) })}
              >
                {[1, 2, 3, 4, 5].map((count) => (
                  <option value={count}>{count}</option>
                ))}
              </select>
              )
            </>
          )}
        </span>
        {instruction && (
          <span class="glue">
            with{' '}
            <select aria-label="Instructor" value={form.instructorId} onChange={text('instructorId')}>
              <option value="">an instructor to be named</option>
              {instructors.map((person) => (
                <option value={person.id}>{person.name}</option>
              ))}
            </select>
          </span>
        )}
        <span class="glue">
          on{' '}
          <input
            type="date"
            aria-label="Day"
            required
            value={form.date}
            onInput={text('date')}
            {...invalid('date')}
          />
          ,
        </span>
        <span class="glue">
          leaving at{' '}
          <input
            type="time"
            aria-label="Leaving at"
            required
            value={form.from}
            onInput={text('from')}
            {...invalid('from')}
          />
        </span>
        <span class="glue">
          and back at{' '}
          <input
            type="time"
            aria-label="Back at"
            required
            value={form.to}
            onInput={text('to')}
            {...invalid('to')}
          />
          ,
        </span>
        <span>{form.landings.length === 0 ? 'from home and back' : 'landing at'}</span>
        {form.landings.map((code, index) => (
          <button
            type="button"
            class="landing"
            aria-label={`Leave out the landing at ${code}`}
            onClick={() => change({ landings: form.landings.filter((_, at) => at !== index) })}
          >
            {code} <span aria-hidden="true">✕</span>
          </button>
        ))}
        <span class="glue">
          <select
            aria-label="Add a landing"
            value=""
            onChange={(event) => addLanding(event.currentTarget.value)}
          >
            <option value="">+ landing</option>
            {airfields.map((airfield) => (
              <option value={airfield.code}>
                {airfield.code} {airfield.name}
              </option>
            ))}
          </select>
          ,
        </span>
        <span class="glue">
          under{' '}
          <select aria-label="Flight rules" value={form.flightRules} onChange={text('flightRules')}>
            <option>VFR</option>
            <option>IFR</option>
          </select>
          .
        </span>
      </p>
      <FlightDetails form={form} change={change} />
      {wrong && (
        <p class="problem" role="alert" id="ask-wrong">
          {wrong.message}
        </p>
      )}
      <button class="main" disabled={busy}>
        {busy ? 'Asking…' : 'Ask the club'}
      </button>
    </form>
  );
}

/** 'I want to fly'; whoever looks after others chooses who does. */
function Who({ form, people, change }: Pick<Props, 'form' | 'people' | 'change'>) {
  if (people.length === 0) return <span>I want to fly</span>;
  return (
    <span class="glue">
      <select
        aria-label="Who flies"
        value={form.memberId}
        onChange={(event) => change({ memberId: event.currentTarget.value, instructorId: '' })}
      >
        <option value="">I want</option>
        {people.map(({ id, name }) => (
          <option key={id} value={id}>
            {name} wants
          </option>
        ))}
      </select>{' '}
      to fly
    </span>
  );
}
