import { useEffect, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { Said } from '../parts/said.js';
import { all, names } from '../session/session.js';
import { moneySays } from './money.js';
import { RateForm } from './rate-form.js';
import type { MoneyUnit, Rate } from './types.js';

interface Priced {
  id: string;
  name: string;
  /** Where its rates are. */
  at: string;
  aircraft: boolean;
}

const BASIS = { hobbs: 'by Hobbs', tachometer: 'by tachometer', clock: 'by the clock' };

/** What an hour of each aircraft and each instructor costs. */
export function RatesDesk({ unit, zone }: { unit: MoneyUnit; zone: string }) {
  const [priced, setPriced] = useState<Priced[]>([]);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    void attempt(setProblem, async () => {
      const fleet = await all<{ id: string; registration: string }>('/aircraft');
      const teachers = names.value.filter(({ instructor }) => instructor);
      setPriced([
        ...fleet.map(({ id, registration }) => ({
          ...{ id, name: registration, at: `/aircraft/${id}/rates`, aircraft: true },
        })),
        ...teachers.map(({ id, name }) => ({
          ...{ id, name, at: `/members/${id}/instruction-rates`, aircraft: false },
        })),
      ]);
    });
  }, []);
  return (
    <section aria-label="Rates">
      <h3>Rates for an hour</h3>
      <p class="hint">
        A flight is charged by the rate of the day it departs. What is charged stays as it is when a rate
        changes.
      </p>
      <Refusal problem={problem} />
      <ul>
        {priced.map((one) => (
          <RateCard key={one.id} {...{ one, unit, zone }} />
        ))}
      </ul>
    </section>
  );
}

function RateCard({ one, unit, zone }: { one: Priced; unit: MoneyUnit; zone: string }) {
  const [rates, setRates] = useState<Rate[] | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const read = () =>
    void attempt(setProblem, async () =>
      setRates((await call<{ items: Rate[] }>('GET', `${one.at}?limit=50`)).items),
    );
  useEffect(read, []);
  const holds = rates?.find(({ inForce }) => inForce);
  return (
    <li>
      <details class="card rate" data-rate={one.name}>
        <summary>
          <span>{one.name}</span>
          <span class="money">{holds ? rateSays(holds) : rates && 'no rate'}</span>
        </summary>
        <Refusal problem={problem} />
        {rates && rates.length > 0 && (
          <ul class="history">
            {rates.map((rate) => (
              <li key={rate.id}>
                <Said text={`From ${rate.validFrom}`} zone={zone} />: {rateSays(rate)}
                {rate.inForce && <strong> (holds today)</strong>}
              </li>
            ))}
          </ul>
        )}
        <RateForm
          key={rates?.length}
          {...{ at: one.at, aircraft: one.aircraft, holds, unit, zone, set: read }}
        />
      </details>
    </li>
  );
}

/** '$145.00 wet, by Hobbs' */
function rateSays(rate: Rate): string {
  const amount = moneySays(rate.perHourMinor, rate);
  return rate.basis === undefined ? amount : `${amount} ${rate.fuel ?? ''}, ${BASIS[rate.basis]}`;
}
