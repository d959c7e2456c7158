import { momentIn } from '../parts/time.js';
import { nameOf } from './return-texts.js';
import { METER_WORD, type Flight } from './types.js';
import { roleWord } from './words.js';

/** A flight that is back: what went where. */
export function Flown({ flight, zone }: { flight: Flight; zone: string }) {
  const back = flight.return!;
  return (
    <section aria-labelledby="flown">
      <h2 id="flown">Back</h2>
      <p role="status">
        {back.fromAirfield} to {back.toAirfield}, {momentIn(zone, back.departedAt)} to{' '}
        {momentIn(zone, back.arrivedAt)}. Log, meters and squawks are written.
      </p>
      <dl class="flown">
        {back.meters.map(({ kind, shownH, flownH }) => (
          <div key={kind}>
            <dt>{METER_WORD[kind]}</dt>
            <dd>
              {shownH.toFixed(1)} h, {flownH.toFixed(1)} h flown
            </dd>
          </div>
        ))}
        {back.entries.map((entry) => (
          <div key={entry.memberId}>
            <dt>{nameOf(flight, entry.memberId)}</dt>
            <dd>
              {roleWord(entry.role)}, {entry.totalH.toFixed(1)} h
              {entry.nightH > 0 && `, ${entry.nightH.toFixed(1)} h by night`}, {entry.landings}{' '}
              {entry.landings === 1 ? 'landing' : 'landings'}
              {entry.nightFullStopLandings > 0 && `, ${entry.nightFullStopLandings} full stops by night`}
            </dd>
          </div>
        ))}
        {back.fuelUsGal !== null && (
          <div>
            <dt>Fuel left</dt>
            <dd>{back.fuelUsGal.toFixed(1)} US gal</dd>
          </div>
        )}
        {back.because && (
          <div>
            <dt>Corrected</dt>
            <dd>{back.because}</dd>
          </div>
        )}
      </dl>
    </section>
  );
}
