import type { FlightForm } from './flight.js';

interface Props {
  form: FlightForm;
  change(part: Partial<FlightForm>): void;
}

type TextField = {
  [K in keyof FlightForm]: FlightForm[K] extends string ? K : never;
}[keyof FlightForm];

const LOADING: [TextField, string][] = [
  ['row1Lb', 'Front seats, lb'],
  ['row2Lb', 'Second row, lb'],
  ['row3Lb', 'Third row, lb'],
  ['baggage1Lb', 'Baggage, lb'],
  ['baggage2Lb', 'Second compartment, lb'],
  ['fuelUsGal', 'Fuel, US gal'],
  ['plannedHours', 'Meter hours'],
];
const WEATHER: [TextField, string][] = [
  ['visibilitySm', 'Visibility, statute miles'],
  ['ceilingFtAgl', 'Ceiling, ft above ground'],
  ['windFromDeg', 'Wind from, degrees true'],
  ['windKt', 'Wind, kt'],
  ['gustKt', 'Gusts, kt'],
  ['temperatureC', 'Temperature, °C'],
  ['altimeterInHg', 'Altimeter, inHg'],
];
const AIRSPACE = ['B', 'C', 'D', 'E', 'G'];

/** What settles conditions ahead of time. Anything left empty is unknown and is asked again before departure. */
export function FlightDetails({ form, change }: Props) {
  const input = ([name, label]: [TextField, string]) => (
    <label key={name}>
      {label}
      <input
        inputMode={name === 'temperatureC' ? 'text' : 'decimal'}
        pattern={name === 'temperatureC' ? '-?[0-9]+([.][0-9]+)?' : '[0-9]+([.][0-9]+)?'}
        value={form[name]}
        onInput={(event) => change({ [name]: event.currentTarget.value } as Partial<FlightForm>)}
      />
    </label>
  );
  const yesNo = (name: 'usesVor' | 'usesTransponder' | 'wet', label: string) => (
    <label>
      {label}
      <select
        value={form[name]}
        onChange={(event) => change({ [name]: event.currentTarget.value } as Partial<FlightForm>)}
      >
        <option value="">not said</option>
        <option value="yes">yes</option>
        <option value="no">no</option>
      </select>
    </label>
  );
  return (
    <details class="more">
      <summary>Loading, weather, route: settle the conditions now</summary>
      <fieldset>
        <legend>Loading</legend>
        <div class="fields">{LOADING.map(input)}</div>
      </fieldset>
      <fieldset>
        <legend>Weather</legend>
        <label class="pasted">
          Reports and forecasts (METAR, TAF) of the route, pasted
          <textarea
            rows={4}
            spellcheck={false}
            autocapitalize="characters"
            value={form.reports}
            onInput={(event) => change({ reports: event.currentTarget.value })}
          />
        </label>
        <p class="hint">
          Left empty, what the club’s weather source gives counts. Below: weather as it is now, told by hand
          for a flight within two hours; it goes before a report.
        </p>
        <div class="fields">
          {WEATHER.map(input)}
          {yesNo('wet', 'Runways wet')}
        </div>
      </fieldset>
      <fieldset>
        <legend>Route</legend>
        <div class="fields">
          {input(['maxAltitudeFtMsl', 'Highest altitude, ft MSL'])}
          {yesNo('usesVor', 'Navigate by VOR')}
          {yesNo('usesTransponder', 'Transponder on')}
          <span role="group" aria-label="Airspace" class="ticks">
            Airspace
            {AIRSPACE.map((name) => (
              <label key={name}>
                <input
                  type="checkbox"
                  checked={form.airspace.includes(name)}
                  onChange={(event) =>
                    change({
                      airspace: event.currentTarget.checked
                        ? [...form.airspace, name]
                        : form.airspace.filter((other) => other !== name),
                    })
                  }
                />
                {name}
              </label>
            ))}
          </span>
        </div>
      </fieldset>
    </details>
  );
}
