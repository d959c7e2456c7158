import { useEffect, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { DayInput } from '../parts/fields.js';
import { Link } from '../parts/link.js';
import { Refusal } from '../parts/refusal.js';
import { Day, Said } from '../parts/said.js';
import { today } from '../parts/time.js';
import { countedAt, type Recency, type Requirement } from './types.js';
import { flightsSay } from './words.js';

interface Props {
  whose: string;
  reader: string;
  zone: string;
}

/** What lapses next and when, as of any day; each count opens to its entries. */
export function Lapses({ whose, reader, zone }: Props) {
  const [on, setOn] = useState(today(zone));
  const [recency, setRecency] = useState<Recency | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    if (on === '') return;
    void attempt(setProblem, async () =>
      setRecency(await call<Recency>('GET', `/members/${whose}/recency?on=${on}`)),
    );
  }, [on]);
  const of = (which: (one: Requirement) => boolean) => recency?.requirements.filter(which) ?? [];
  const lines = (some: Requirement[]) => (
    <ul class="lines">
      {some.map((one) => (
        <Line key={`${one.rule}${one.says}${one.aircraft}${one.flights}`} {...{ one, whose, reader, zone }} />
      ))}
    </ul>
  );
  const lapsing = of(({ lapsesOn }) => lapsesOn !== null);
  const lacking = of(({ lapsesOn, holds }) => lapsesOn === null && !holds);
  const lasting = of(({ lapsesOn, holds }) => lapsesOn === null && holds);
  return (
    <section aria-labelledby="lapses" class="lapses">
      <h3 id="lapses">What lapses next</h3>
      <DayInput label="As of" value={on} set={setOn} />
      <Refusal problem={problem} />
      {recency === null ? (
        <p class="hint">Looking…</p>
      ) : (
        <>
          {lapsing.length === 0 && <p class="hint">Nothing that holds on that day lapses within a year.</p>}
          {lines(lapsing)}
          <details>
            <summary>Does not hold on that day: {lacking.length}</summary>
            {lines(lacking)}
          </details>
          <details>
            <summary>Holds for a year or longer: {lasting.length}</summary>
            {lines(lasting)}
          </details>
          <p class="small">{recency.caution}</p>
        </>
      )}
    </section>
  );
}

function Line({ one, whose, reader, zone }: { one: Requirement } & Props) {
  const { entryIds, lapsesOn } = one;
  return (
    <li data-rule={one.rule}>
      <p>
        {lapsesOn !== null && (
          <strong class="lapse-day">
            <Day date={lapsesOn} /> <small>in {one.inDays} days</small>
          </strong>
        )}
        <strong>{one.title}.</strong> <Said text={one.says} zone={zone} />
      </p>
      <p class="small">
        {one.weight === 'law' ? one.citation : 'Club rule'}; {flightsSay(one.flights)}
        {one.aircraft && `; ${one.aircraft.join(', ')}`}
        {entryIds.length > 0 && (
          <>
            .{' '}
            <Link to={countedAt(whose, reader, entryIds)}>
              {`Open the ${entryIds.length === 1 ? 'entry' : `${entryIds.length} entries`} counted`}
              <span class="unseen"> for {one.title}</span>
            </Link>
          </>
        )}
      </p>
    </li>
  );
}
