import type { Me } from '../api/types.js';
import { Day, Said } from '../parts/said.js';
import { momentIn } from '../parts/time.js';
import { Link } from '../parts/link.js';
import { DueLine } from './due-line.js';
import { monthOf, monthsOf, across, type Scale } from './scale.js';
import type { AircraftForecast, ForecastItem } from './types.js';

/** One aircraft: its items on a line of weeks each, and how the hours were reckoned. */
export function AircraftLeft({ of, today, me }: { of: AircraftForecast; today: string; me: Me }) {
  const scale: Scale = { from: today, days: of.weeks.length * 7 };
  const open = of.items.filter(({ state }) => state !== 'settled');
  return (
    <section class="left-of" aria-labelledby={`left-${of.aircraftId}`} data-registration={of.registration}>
      <header>
        <h3 id={`left-${of.aircraftId}`}>
          {of.registration} <small>{of.makeModel}</small>
        </h3>
        <p>
          {of.meterH === null ? (
            'No reading of the inspection meter is on record.'
          ) : (
            <>
              Meter {of.meterH.toFixed(1)} h{of.readAt && <>, read {momentIn(me.club.zone, of.readAt)}</>}
            </>
          )}
          {of.slotOn !== null && (
            <>
              {' '}
              · shop visit <Day date={of.slotOn} />
            </>
          )}{' '}
          · <Link to={`/equipment#${of.aircraftId}`}>Equipment</Link> ·{' '}
          <Link to={`/handbook#${of.aircraftId}`}>Loading</Link> ·{' '}
          <Link to={`/shop#${of.registration}`}>Shop</Link> ·{' '}
          <Link to={`/status#${of.aircraftId}`}>Status on one page</Link>
        </p>
      </header>
      <div class="axis" aria-hidden="true">
        {monthsOf(scale).map((first) => (
          <span key={first} style={{ left: `${across(scale, first)}%` }}>
            {monthOf(first)}
          </span>
        ))}
      </div>
      <ul>
        {open.map((item) => (
          <Item key={item.id} item={item} scale={scale} slotOn={of.slotOn} zone={me.club.zone} />
        ))}
      </ul>
      {open.length === 0 && <p class="hint">Nothing that falls due is on record.</p>}
      <Reckoning of={of} />
    </section>
  );
}

const STATE_WORDS: Record<ForecastItem['state'], string> = {
  overdue: 'Overdue',
  'never-done': 'Never done',
  unknown: 'Not known',
  running: '',
  settled: 'Done',
};

function Item({
  item,
  scale,
  slotOn,
  zone,
}: {
  item: ForecastItem;
  scale: Scale;
  slotOn: string | null;
  zone: string;
}) {
  return (
    <li class={`item ${item.state}`} data-item={item.kind}>
      <div class="what">
        <strong>{item.title}</strong>
        {item.scope === 'advice' && <span class="chip">advice</span>}
        {STATE_WORDS[item.state] !== '' && <span class="chip alarm">{STATE_WORDS[item.state]}</span>}
        <span class="says">
          <Said text={item.says} zone={zone} />
        </span>
        {item.passing && (
          <span class="passes">The booking of {momentIn(zone, item.passing.departs)} would run past it.</span>
        )}
      </div>
      <DueLine item={item} scale={scale} slotOn={slotOn} />
      <p class="likely-when">
        {item.likelyOn === null ? (
          item.state === 'running' && 'beyond the weeks shown'
        ) : (
          <>
            likely <Day date={item.likelyOn} />
            {item.by === 'hours' && item.earliestOn !== null && (
              <>
                , between <Day date={item.earliestOn} /> and{' '}
                {item.latestOn === null ? 'later than shown' : <Day date={item.latestOn} />}
              </>
            )}
          </>
        )}
      </p>
    </li>
  );
}

function Reckoning({ of }: { of: AircraftForecast }) {
  return (
    <details class="reckoning">
      <summary>How the hours are reckoned</summary>
      <div class="scroll" tabIndex={0} role="group" aria-label={`Weeks of ${of.registration}`}>
        <table>
          <thead>
            <tr>
              <th scope="col">Week of</th>
              <th scope="col">Trend</th>
              <th scope="col">Booked</th>
              <th scope="col">In sum, likely</th>
              <th scope="col">Between</th>
            </tr>
          </thead>
          <tbody>
            {of.weeks.map((week) => (
              <tr key={week.monday}>
                <th scope="row">
                  <Day date={week.monday} />
                </th>
                <td>
                  {week.trendH.toFixed(1)} h{' '}
                  <small>{week.basis === 'last-year' ? 'last year’s week' : 'recent weeks'}</small>
                </td>
                <td>{week.bookedH.toFixed(1)} h</td>
                <td>{week.likelySumH.toFixed(1)} h</td>
                <td>
                  {week.leastSumH === null || week.mostSumH === null
                    ? 'not known'
                    : `${week.leastSumH.toFixed(1)} and ${week.mostSumH.toFixed(1)} h`}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}
