import type { Body, Derivation, WhyNumber } from '../api/why-types.js';
import { Day, Said } from '../parts/said.js';
import { Step } from './derivation-step.js';

/** The numbers that were read, each with its source and its dates. */
export function Numbers({ numbers, zone }: { numbers: WhyNumber[]; zone: string }) {
  if (numbers.length === 0) return null;
  return (
    <Step title="The numbers">
      <dl class="numbers">
        {numbers.map((number) => (
          <div key={number.id}>
            <dt>
              <Said text={number.says} zone={zone} />
            </dt>
            <dd>
              {number.title}{' '}
              <span class="small">
                {number.reference}
                {number.from && !number.ofClub && (
                  <>
                    , since <Day date={number.from} />
                  </>
                )}
                {number.to && (
                  <>
                    , until <Day date={number.to} />
                  </>
                )}
                {number.checkedOn && (
                  <>
                    ; checked <Day date={number.checkedOn} />
                  </>
                )}
              </span>
            </dd>
          </div>
        ))}
      </dl>
    </Step>
  );
}

/** The text in force on the day of the flight. */
export function Text({ why, zone }: { why: Derivation; zone: string }) {
  const { citation } = why.finding;
  return (
    <Step title="Where it is written">
      <p>
        <strong>{citation.text}</strong>
        {why.body && (
          <span class="small">
            {' '}
            <InForce body={why.body} />; {why.body.sourceWord}
          </span>
        )}
      </p>
      {citation.reading && (
        <p class="reading">
          <Said text={citation.reading} zone={zone} />
        </p>
      )}
    </Step>
  );
}

/** From when to when a text holds. */
export function InForce({ body }: { body: Body }) {
  if (body.from === null && body.to === null) return <>in force throughout</>;
  return (
    <>
      in force
      {body.from && (
        <>
          {' '}
          from <Day date={body.from} />
        </>
      )}
      {body.to && (
        <>
          {' '}
          until <Day date={body.to} />
        </>
      )}
    </>
  );
}
