import { ChangedBookings } from '../parts/changed-bookings.js';
import { Said } from '../parts/said.js';
import { kindWords, type ChangeResult, type WeightOf } from './types.js';

const figure = (value: number | null, unit: string): string =>
  value === null ? 'not known' : `${value.toFixed(2).replace(/\.?0+$/, '')} ${unit}`;

/** What a change would do: weight, items, members to be shown, bookings answered otherwise. */
export function Preview({ result, zone }: { result: ChangeResult; zone: string }) {
  const { weight, kinds, lost, gained, itemsEnded, itemsBegun, members, bookings, bookingsJudged } = result;
  const toShow = members.filter(({ exempt }) => !exempt);
  return (
    <div class="preview" role="status">
      <h4>It would do this</h4>
      <table>
        <thead>
          <tr>
            <td />
            <th scope="col">before</th>
            <th scope="col">after</th>
          </tr>
        </thead>
        <tbody>
          <Weights
            title="Empty weight"
            of={weight}
            value={({ emptyWeightLb }) => figure(emptyWeightLb, 'lb')}
          />
          <Weights title="Its arm" of={weight} value={({ emptyArmIn }) => figure(emptyArmIn, 'in')} />
          <Weights title="Useful load" of={weight} value={({ usefulLoadLb }) => figure(usefulLoadLb, 'lb')} />
        </tbody>
      </table>
      {weight.because && <p class="hint">The weight after is not known: {weight.because}.</p>}
      <ul>
        {kinds
          .filter(({ before, after }) => before?.verdict !== after?.verdict)
          .map(({ kind, title, after }) => (
            <li key={kind}>
              {title}:{' '}
              <strong>
                {after?.verdict === 'yes'
                  ? 'possible again'
                  : after?.verdict === 'no'
                    ? 'no more possible'
                    : 'no more certain'}
              </strong>
              {after !== null && after.says.length > 0 && (
                <span class="says">
                  {' '}
                  <Said text={after.says.join(' ')} zone={zone} />
                </span>
              )}
            </li>
          ))}
        {lost.length > 0 && <li>No more: {lost.map(kindWords).join(', ')}.</li>}
        {gained.length > 0 && <li>New: {gained.map(kindWords).join(', ')}.</li>}
        {itemsEnded.length > 0 && <li>Ends: {itemsEnded.map(({ title }) => title).join('; ')}.</li>}
        {itemsBegun.length > 0 && <li>Begins: {itemsBegun.map(({ title }) => title).join('; ')}.</li>}
        {members.length > 0 && (
          <li>
            {toShow.length === 0
              ? 'Nobody needs to be shown it.'
              : `To be shown it before flying alone: ${toShow.map(({ memberName }) => memberName).join(', ')}.`}
            {members.length > toShow.length &&
              ` Shown the same elsewhere: ${members
                .filter(({ exempt }) => exempt)
                .map(({ memberName }) => memberName)
                .join(', ')}.`}
          </li>
        )}
        <li>
          {bookings.length === 0
            ? `None of ${bookingsJudged} booked flights is answered otherwise.`
            : `Of ${bookingsJudged} booked flights ${bookings.length} ${bookings.length === 1 ? 'is' : 'are'} answered otherwise:`}
        </li>
      </ul>
      <ChangedBookings bookings={bookings} zone={zone} />
      <p class="caution">{result.caution}</p>
    </div>
  );
}

function Weights({
  title,
  of,
  value,
}: {
  title: string;
  of: ChangeResult['weight'];
  value: (weight: WeightOf) => string;
}) {
  return (
    <tr>
      <th scope="row">{title}</th>
      <td>{value(of.before)}</td>
      <td>{value(of.after)}</td>
    </tr>
  );
}
