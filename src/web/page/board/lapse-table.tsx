import { useState } from 'preact/hooks';
import { Day, Said } from '../parts/said.js';
import { momentIn } from '../parts/time.js';
import type { Lapse } from './types.js';

const AT_FIRST = 25;
const MORE = 100;

/** The lapses in words, soonest first, with what each costs. */
export function LapseTable({ lapses, zone }: { lapses: Lapse[]; zone: string }) {
  const [most, setMost] = useState(AT_FIRST);
  return (
    <>
      <div class="wide" tabIndex={0} role="region" aria-label="Lapses, soonest first">
        <table class="lapses">
          <thead>
            <tr>
              <th scope="col">No longer on</th>
              <th scope="col">Member</th>
              <th scope="col">Requirement</th>
              <th scope="col">Booked flights</th>
            </tr>
          </thead>
          <tbody>
            {lapses.slice(0, most).map((one) => (
              <tr key={`${one.memberId}${one.rule}${one.on}${one.aircraft?.join() ?? ''}`}>
                <td>
                  <Day date={one.on} />
                  <small>in {one.inDays} days</small>
                </td>
                <th scope="row">{one.memberName}</th>
                <td>
                  {one.title} <small>{one.weight === 'law' ? 'law' : 'club rule'}</small>
                  <small>
                    <Said text={one.says} zone={zone} />
                  </small>
                  {one.aircraft && <small>In {one.aircraft.join(', ')}</small>}
                </td>
                <td>
                  {one.costs.length === 0 ? 'none lost' : `${one.costs.length} lost`}
                  <ul>
                    {one.costs.map((cost) => (
                      <li key={cost.bookingId}>
                        {momentIn(zone, cost.departs)}, {cost.registration}
                        <small>
                          {cost.alone ? 'nothing else in its way' : 'something else is in its way, too'}
                        </small>
                      </li>
                    ))}
                  </ul>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {lapses.length > most && (
        <button type="button" class="quiet" onClick={() => setMost(most + MORE)}>
          Show {Math.min(MORE, lapses.length - most)} more of {lapses.length} lapses
        </button>
      )}
    </>
  );
}
