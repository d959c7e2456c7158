import type { ComponentChildren } from 'preact';
import { Tick } from '../../parts/fields.js';
import type { Choices, Preview, Sums } from './types.js';
import { counted } from './words.js';

const ROWS: readonly (readonly [keyof Sums, string])[] = [
  ['flights', 'Flights'],
  ['totalH', 'Total, h'],
  ['nightH', 'Night, h'],
  ['crossCountryH', 'Cross-country, h'],
  ['actualInstrumentH', 'Actual instrument, h'],
  ['simulatedInstrumentH', 'Simulated instrument, h'],
  ['dualGivenH', 'Instruction given, h'],
  ['takeoffs', 'Take-offs'],
  ['landings', 'Landings'],
];

const figure = (name: keyof Sums, value: number): string =>
  name.endsWith('H') ? value.toFixed(1) : String(value);

/** What taking the file over would do: what comes, what is left out and why, and the totals before and after. */
export function WhatComes({
  of,
  choices,
  choose,
  busy,
  children,
}: {
  of: Preview;
  choices: Choices;
  choose: (change: Choices) => void;
  busy: boolean;
  children: ComponentChildren;
}) {
  const { counts, totals } = of;
  const span = of.firstFlownOn ? `, ${of.firstFlownOn} to ${of.lastFlownOn}` : '';
  return (
    <section class="what-comes" aria-label="What would be written">
      <p role="status">
        <strong>
          {counts.toWrite} of {counted(counts.rows, 'row')} would be written{span}.
        </strong>{' '}
        Not to be read: {counts.bad}. In the log already: {counts.same}, and perhaps {counts.alike} more. Sums
        of the sheet: {counts.sums}.
      </p>
      {counts.bad > 0 && (
        <div class="bad">
          <h4>{counted(counts.bad, 'row')} cannot be read</h4>
          <ul>
            {of.badReasons.map(({ column, because, rows }) => (
              <li key={`${column} ${because}`}>
                {rows} × {column === null ? because : `${column}: the cell ${because}`}
              </li>
            ))}
          </ul>
          <details>
            <summary>Line by line{counts.bad > of.bad.length && `, the first ${of.bad.length}`}</summary>
            <ol class="lines" tabIndex={0}>
              {of.bad.map(({ line, because }) => (
                <li key={line} value={line}>
                  <span>Line {line}:</span> {because}
                </li>
              ))}
            </ol>
          </details>
          <Tick value={choices.leaveOutBad === true} set={(leaveOutBad) => choose({ leaveOutBad })}>
            Leave out what cannot be read. Otherwise nothing is taken over before it is mended.
          </Tick>
        </div>
      )}
      {of.repeated.length > 0 && (
        <div class="repeated">
          <h4>{counted(counts.same + counts.alike, 'row')} may repeat a flight, or do</h4>
          <details>
            <summary>Line by line</summary>
            <ol class="lines" tabIndex={0}>
              {of.repeated.map(({ line, kind, earlierLine, flownOn }) => (
                <li key={line} value={line}>
                  <span>Line {line}:</span> {flownOn},{' '}
                  {kind === 'same' ? 'off blocks at the same time as' : 'same aircraft and hours as'}{' '}
                  {earlierLine === null ? 'an entry of the log' : `line ${earlierLine}`}
                </li>
              ))}
            </ol>
          </details>
          {counts.alike > 0 && (
            <Tick value={choices.takeAlike === true} set={(takeAlike) => choose({ takeAlike })}>
              The {counts.alike} of which only day, aircraft and hours are the same are other flights: take
              them over, too
            </Tick>
          )}
        </div>
      )}
      <div class="scroll" tabIndex={0} role="region" aria-label="Totals before and after">
        <table>
          <caption>Totals, devices included</caption>
          <thead>
            <tr>
              <th scope="col">Of</th>
              <th scope="col">Now</th>
              <th scope="col">Comes</th>
              <th scope="col">Then</th>
            </tr>
          </thead>
          <tbody>
            {ROWS.map(([name, words]) => (
              <tr key={name}>
                <th scope="row">{words}</th>
                <td>{figure(name, totals.before[name])}</td>
                <td>{figure(name, totals.added[name])}</td>
                <td>{figure(name, totals.after[name])}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {of.notes.length > 0 && (
        <ul class="notes">
          {of.notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
      <p class="caution">{of.caution}</p>
      <fieldset disabled={busy}>{children}</fieldset>
    </section>
  );
}
