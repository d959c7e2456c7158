import { Choice, DayInput, FigureInput, TextInput } from '../parts/fields.js';
import { today } from '../parts/time.js';
import type { Typed } from './record-typed.js';
import { LEVELS, MANOEUVRES, MEASURES, titleOf } from './words.js';

const SAID = [
  ['', 'not said'],
  ['yes', 'yes'],
  ['no', 'no'],
] as const;
const KNOTS = { min: 0, max: 80, step: '1' };

/** The fields of one manoeuvre as flown. */
export function RecordFields({
  zone,
  typed,
  change,
}: {
  zone: string;
  typed: Typed;
  change: (typed: Typed) => void;
}) {
  const set = (name: string) => (value: string) => change({ ...typed, [name]: value });
  const of = (name: string) => ({ value: typed[name] ?? '', set: set(name) });
  return (
    <>
      <div class="row">
        <DayInput label="Day flown" {...of('flownOn')} max={today(zone)} required />
        <Choice
          label="Manoeuvre"
          {...of('manoeuvre')}
          of={MANOEUVRES.map((one) => [one, titleOf(one)] as const)}
        />
        <Choice label="At night" {...of('night')} of={SAID} />
        <Choice label="To standard" {...of('good')} of={SAID} />
        <FigureInput label="Crosswind, kt" {...of('crosswindKt')} {...KNOTS} />
        <FigureInput label="Gusts over the wind, kt" {...of('gustSpreadKt')} {...KNOTS} />
        <FigureInput label="Runway, ft" {...of('runwayFt')} {...{ min: 100, max: 20_000, step: '1' }} />
        <Choice label="Held against" {...of('level')} of={LEVELS} />
      </div>
      <TextInput label="Equipment used, with commas between" {...of('equipment')} placeholder="autopilot" />
      <fieldset>
        <legend>Measured: least and most</legend>
        {MEASURES.filter(({ usual }) => usual).map((one) => (
          <Pair key={one.measure} {...one} of={of} />
        ))}
        <details>
          <summary>More measures</summary>
          {MEASURES.filter(({ usual }) => !usual).map((one) => (
            <Pair key={one.measure} {...one} of={of} />
          ))}
        </details>
      </fieldset>
      <label>
        Note
        <textarea
          rows={2}
          maxLength={2000}
          value={typed['note'] ?? ''}
          onInput={(event) => set('note')(event.currentTarget.value)}
        />
      </label>
    </>
  );
}

function Pair({
  measure,
  label,
  of,
}: {
  measure: string;
  label: string;
  of: (name: string) => { value: string; set: (value: string) => void };
}) {
  return (
    <div class="pair">
      <span>{label}</span>
      {(['least', 'most'] as const).map((end) => {
        const { value, set } = of(`${measure}.${end}`);
        return (
          <input
            key={end}
            type="number"
            step="any"
            aria-label={`${label}, ${end}`}
            value={value}
            onInput={(event) => set(event.currentTarget.value)}
          />
        );
      })}
    </div>
  );
}
