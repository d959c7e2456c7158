import { useState } from 'preact/hooks';
import { FigureInput, figureOf, TextInput, typed } from '../parts/fields.js';
import { distanceDraft, DistanceFields, distanceOf } from './distance-fields.js';
import { GridFault } from './grid.js';
import type { SheetForm } from './sheet-form.js';
import type { PerformanceSheet } from './types.js';

/** Take-off and landing distances as the handbook tabulates them. */
export function PerformanceForm({ sheet, mayWrite, refuse, save, remove }: SheetForm<PerformanceSheet>) {
  const [source, setSource] = useState(sheet?.source ?? '');
  const [liftOff, setLiftOff] = useState(typed(sheet?.liftOffKias));
  const [takeoff, setTakeoff] = useState(distanceDraft(sheet?.takeoff));
  const [landing, setLanding] = useState(distanceDraft(sheet?.landing));
  const keep = () => {
    try {
      void save({
        ...{ source, liftOffKias: figureOf(liftOff) },
        ...{ takeoff: distanceOf(takeoff, 'Take-off'), landing: distanceOf(landing, 'Landing') },
      });
    } catch (error) {
      if (!(error instanceof GridFault)) throw error;
      refuse(error.message);
    }
  };
  return (
    <form
      class="sign"
      aria-labelledby="performance"
      onSubmit={(event) => {
        event.preventDefault();
        keep();
      }}
    >
      <fieldset disabled={!mayWrite} class="plain">
        <div class="fields">
          <TextInput label="Document and section" value={source} set={setSource} required />
          <FigureInput label="Speed at lift-off, knots indicated" value={liftOff} set={setLiftOff} min={1} />
        </div>
        <p class="hint">
          Tables may be pasted from a spreadsheet: the first line the temperatures in °C, each line after it a
          pressure altitude in feet and its distances in feet.
        </p>
        <DistanceFields title="Take-off" draft={takeoff} set={setTakeoff} mayWrite={mayWrite} />
        <DistanceFields title="Landing" draft={landing} set={setLanding} mayWrite={mayWrite} />
      </fieldset>
      {mayWrite && (
        <p class="in-line">
          <button class="main">{sheet ? 'Put them in place of the old ones' : 'Keep the tables'}</button>
          {sheet && (
            <button type="button" class="quiet" onClick={() => void remove()}>
              Take them off the record
            </button>
          )}
        </p>
      )}
    </form>
  );
}
