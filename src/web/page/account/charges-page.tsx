import { useEffect, useRef, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Link } from '../parts/link.js';
import { Refusal } from '../parts/refusal.js';
import { Said } from '../parts/said.js';
import { all } from '../session/session.js';
import './account.css';
import { ChargeForm } from './charge-form.js';
import { moneySays } from './money.js';
import { RatesDesk } from './rates-desk.js';
import type { Balance, MoneyUnit, Uncharged } from './types.js';
import { standsAt } from './words.js';

/** The treasurer's desk: who owes what, which flights wait to be charged, and what an hour costs. */
export function ChargesPage({ me }: { me: Me }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [balances, setBalances] = useState<Balance[] | null>(null);
  const [unit, setUnit] = useState<MoneyUnit | null>(null);
  const [waiting, setWaiting] = useState<Uncharged[]>([]);
  const [everybody, setEverybody] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const { zone } = me.club;
  const read = () =>
    void attempt(setProblem, async () => {
      setUnit(await call<MoneyUnit>('GET', '/charges/balances?limit=1'));
      setBalances(await all<Balance>('/charges/balances'));
      setWaiting(await all<Uncharged>('/charges/uncharged'));
    });
  useEffect(() => {
    heading.current?.focus();
    read();
  }, []);
  const shown = (balances ?? [])
    .filter(({ balanceMinor, overdueMinor }) => everybody || balanceMinor !== 0 || overdueMinor > 0)
    .sort((a, b) => b.overdueMinor - a.overdueMinor || b.balanceMinor - a.balanceMinor);
  return (
    <main class="page account">
      <h2 ref={heading} tabIndex={-1}>
        Accounts and rates
      </h2>
      <Refusal problem={problem} />
      {unit && balances ? (
        <div class="two">
          <section aria-label="Accounts">
            <h3>Flights to charge</h3>
            {waiting.length === 0 && <p class="hint">Every flight that came back is charged.</p>}
            <ul>
              {waiting.map((flight) => (
                <ChargeForm key={flight.bookingId} {...{ flight, unit, zone, charged: read }} />
              ))}
            </ul>
            <h3>Accounts</h3>
            <label class="tick">
              <input
                type="checkbox"
                checked={everybody}
                onChange={(event) => setEverybody(event.currentTarget.checked)}
              />
              <span>Those that stand at nothing, too</span>
            </label>
            {shown.length === 0 && <p class="hint">Nobody owes anything.</p>}
            <ul class="balances">
              {shown.map((one) => (
                <li key={one.memberId} data-overdue={one.overdueMinor > 0}>
                  <Link to={`/account#${one.memberId}`}>{one.memberName}</Link>
                  <span class="money">{standsAt(one.balanceMinor, unit)}</span>
                  {one.overdueMinor > 0 && (
                    <small>
                      <Said
                        text={`${moneySays(one.overdueMinor, unit)} overdue, the oldest of ${one.oldestUnpaidOn ?? ''}`}
                        zone={zone}
                      />
                    </small>
                  )}
                </li>
              ))}
            </ul>
          </section>
          <RatesDesk unit={unit} zone={zone} />
        </div>
      ) : (
        problem === null && <p class="hint">Reading…</p>
      )}
    </main>
  );
}
