import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Choice, DayInput, TextInput } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { today } from '../parts/time.js';
import { minorOf } from './money.js';
import type { MoneyUnit, Rate } from './types.js';

const BASES = [
  ['hobbs', 'Hobbs hours'],
  ['tachometer', 'Tachometer hours'],
  ['clock', 'Departure to arrival'],
] as const;
const FUELS = [
  ['wet', 'Wet: fuel is in it'],
  ['dry', 'Dry: fuel is charged'],
] as const;

/** Sets a rate from a day on; begun from the one that holds. */
export function RateForm({
  at,
  aircraft,
  holds,
  unit,
  zone,
  set,
}: {
  at: string;
  aircraft: boolean;
  holds: Rate | undefined;
  unit: MoneyUnit;
  zone: string;
  set: () => void;
}) {
  const text = (minor: number | undefined): string =>
    minor === undefined ? '' : (minor / unit.minorPerUnit).toFixed(String(unit.minorPerUnit).length - 1);
  const [validFrom, setValidFrom] = useState(today(zone));
  const [perHour, setPerHour] = useState(text(holds?.perHourMinor));
  const [basis, setBasis] = useState<(typeof BASES)[number][0]>(holds?.basis ?? 'hobbs');
  const [fuel, setFuel] = useState<(typeof FUELS)[number][0]>(holds?.fuel ?? 'wet');
  const [gallon, setGallon] = useState(text(holds?.fuelPerUsGalMinor));
  const [problem, setProblem] = useState<string | null>(null);
  const submit = async (event: Event) => {
    event.preventDefault();
    const [perHourMinor, fuelPerUsGalMinor] = [minorOf(perHour, unit), minorOf(gallon, unit)];
    if (perHourMinor === null) return setProblem('For an hour: give an amount in figures.');
    if (aircraft && fuelPerUsGalMinor === null)
      return setProblem('For a US gallon: give an amount in figures.');
    const went = await attempt(setProblem, () =>
      call<void>('POST', at, {
        ...{ validFrom, perHourMinor },
        ...(aircraft ? { basis, fuel, fuelPerUsGalMinor } : {}),
      }),
    );
    return went ? set() : undefined;
  };
  return (
    <form onSubmit={(event) => void submit(event)}>
      <div class="row">
        <DayInput label="From" value={validFrom} set={setValidFrom} required />
        <TextInput
          label={`For an hour, ${unit.currency}`}
          value={perHour}
          set={setPerHour}
          required
          max={12}
        />
      </div>
      {aircraft && (
        <div class="row">
          <Choice label="Hours" value={basis} set={setBasis} of={BASES} />
          <Choice label="Fuel" value={fuel} set={setFuel} of={FUELS} />
          <TextInput
            label={fuel === 'wet' ? 'Paid back at most for a US gal' : 'The club’s fuel, for a US gal'}
            {...{ value: gallon, set: setGallon, required: true, max: 12 }}
          />
        </div>
      )}
      <Refusal problem={problem} />
      <button>Set this rate</button>
    </form>
  );
}
