import { useState } from 'preact/hooks';
import { EnvelopePicture } from '../answer/envelope-picture.js';
import '../answer/loading-work.css';
import { Choice, FigureInput, figureOf, TextInput, typed } from '../parts/fields.js';
import type { SheetForm } from './sheet-form.js';
import { StationRow, stationDraft, stationOf, type StationDraft } from './station-row.js';
import type { Envelope, LoadingSheet } from './types.js';

const CATEGORIES = [
  ['normal', 'Limits of the normal category: a corner to a line, arm and weight, in order round it'],
  ['utility', 'Limits of the utility category, where it has one'],
] as const;

const cornersText = (envelope: Envelope | undefined): string =>
  (envelope?.points ?? []).map(({ armIn, weightLb }) => `${armIn} ${weightLb}`).join('\n');

/** Corners as they are typed; a line without two figures is left for the service to refuse by name. */
function cornersOf(text: string): Envelope['points'] {
  return text
    .split(/\r?\n/)
    .map((line) => line.trim().split(/[\s;,]+/))
    .filter((parts) => parts[0] !== '')
    .map(([arm, weight]) => ({ armIn: Number(arm), weightLb: Number(weight) }));
}

/** The loading sheet: seat rows, tanks and lockers with their arms, and the limits of the centre of gravity, drawn as they are typed. */
export function LoadingForm({ sheet, mayWrite, save, remove }: SheetForm<LoadingSheet>) {
  const [source, setSource] = useState(sheet?.source ?? '');
  const [fuelKind, setFuelKind] = useState(sheet?.fuelKind ?? 'avgas');
  const [limits, setLimits] = useState({
    takeoff: typed(sheet?.maxTakeoffLb),
    landing: typed(sheet?.maxLandingLb),
    zeroFuel: typed(sheet?.maxZeroFuelLb),
  });
  const [stations, setStations] = useState<StationDraft[]>(
    sheet?.stations.map(stationDraft) ?? [stationDraft(null)],
  );
  const [corners, setCorners] = useState({
    normal: cornersText(sheet?.envelopes.find(({ category }) => category === 'normal')),
    utility: cornersText(sheet?.envelopes.find(({ category }) => category === 'utility')),
  });
  const envelopes = CATEGORIES.map(([category]) => ({
    category,
    points: cornersOf(corners[category]),
  })).filter(({ points }) => points.length > 0);
  const drawn = envelopes.map(({ category, points }) => ({
    category,
    points: points.filter(({ armIn, weightLb }) => Number.isFinite(armIn) && Number.isFinite(weightLb)),
  }));
  const body = () => ({
    ...{ source, fuelKind, stations: stations.map(stationOf), envelopes },
    maxTakeoffLb: figureOf(limits.takeoff),
    maxLandingLb: figureOf(limits.landing),
    maxZeroFuelLb: figureOf(limits.zeroFuel),
  });
  return (
    <form
      class="sign"
      aria-labelledby="loading"
      onSubmit={(event) => {
        event.preventDefault();
        void save(body());
      }}
    >
      <fieldset disabled={!mayWrite} class="plain">
        <div class="fields">
          <TextInput label="Document and section" value={source} set={setSource} required />
          <Choice
            label="Fuel"
            value={fuelKind}
            set={setFuelKind}
            of={[
              ['avgas', 'aviation gasoline'],
              ['jet', 'jet fuel'],
            ]}
          />
          <FigureInput
            label="Most at take-off, lb (empty: as the model)"
            value={limits.takeoff}
            set={(takeoff) => setLimits({ ...limits, takeoff })}
            min={1}
          />
          <FigureInput
            label="Most at landing, lb"
            value={limits.landing}
            set={(landing) => setLimits({ ...limits, landing })}
            min={1}
          />
          <FigureInput
            label="Most without fuel, lb"
            value={limits.zeroFuel}
            set={(zeroFuel) => setLimits({ ...limits, zeroFuel })}
            min={1}
          />
        </div>
        <h4>Seats from the front, tanks, lockers</h4>
        {stations.map((station, at) => (
          <StationRow
            key={at}
            at={at + 1}
            station={station}
            set={(changed) => setStations(stations.map((one, other) => (other === at ? changed : one)))}
            remove={
              mayWrite && stations.length > 1
                ? () => setStations(stations.filter((_one, other) => other !== at))
                : null
            }
          />
        ))}
        {mayWrite && (
          <button type="button" class="quiet" onClick={() => setStations([...stations, stationDraft(null)])}>
            Another station
          </button>
        )}
        <div class="corners loading">
          <div>
            {CATEGORIES.map(([category, label]) => (
              <label key={category}>
                {label}
                <textarea
                  rows={6}
                  value={corners[category]}
                  onInput={(event) => setCorners({ ...corners, [category]: event.currentTarget.value })}
                />
              </label>
            ))}
          </div>
          <EnvelopePicture envelopes={drawn} points={[]} />
        </div>
      </fieldset>
      {mayWrite && (
        <p class="in-line">
          <button class="main">{sheet ? 'Put it in place of the old one' : 'Keep the loading sheet'}</button>
          {sheet && (
            <button type="button" class="quiet" onClick={() => void remove()}>
              Take it off the record
            </button>
          )}
        </p>
      )}
    </form>
  );
}
