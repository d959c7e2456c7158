import { useEffect, useRef, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Link } from '../parts/link.js';
import { Refusal } from '../parts/refusal.js';
import { InsuranceCard } from '../insurance/insurance-card.js';
import { all } from '../session/session.js';
import type { Aircraft, Squawk } from '../squawks/types.js';
import { DirectiveBook } from './directive-book.js';
import { Directives } from './directives.js';
import { Meters } from './meters.js';
import { PlanForm } from './plan-form.js';
import './shop.css';
import { Signers } from './signers.js';
import { Templates } from './templates.js';
import type { Item, Signer, Standing, Weighing, Wish, WorkOrder } from './types.js';
import { Visit } from './visit.js';
import { Weighings } from './weighings.js';
import { Wishes } from './wishes.js';

interface Records {
  orders: WorkOrder[];
  items: Item[];
  squawks: Squawk[];
  wishes: Wish[];
  standings: Standing[];
  weighings: Weighing[];
  meters: string[];
}

const isOpen = ({ state, checkFlightBecause, checkFlownAt }: WorkOrder): boolean =>
  state === 'planned' || state === 'in-work' || (checkFlightBecause !== null && checkFlownAt === null);

/** One aircraft at the shop: visits from plan to signature, and what they are planned from. */
export function ShopPage({ me, open }: { me: Me; open: string | null }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [aircraft, setAircraft] = useState<Aircraft[] | null>(null);
  const [chosen, setChosen] = useState('');
  const [records, setRecords] = useState<Records | null>(null);
  const [signers, setSigners] = useState<Signer[]>([]);
  const [overToo, setOverToo] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const coordinates = me.roles.includes('maintenance-coordinator');

  const readSigners = () =>
    coordinates ? attempt(setProblem, async () => setSigners(await all<Signer>('/signers'))) : undefined;
  useEffect(() => {
    heading.current?.focus();
    void attempt(setProblem, async () => {
      const list = await all<Aircraft>('/aircraft');
      setAircraft(list);
      setChosen(list.find(({ registration }) => registration === open)?.id ?? list[0]?.id ?? '');
    });
    void readSigners();
  }, []);

  const read = () =>
    attempt(setProblem, async () => {
      const of = `/aircraft/${chosen}`;
      const [orders, items, squawks, wishes, directives, weighings, meters] = await Promise.all([
        all<WorkOrder>(`${of}/work-orders`),
        all<Item>(`${of}/items`),
        all<Squawk>(`${of}/squawks?state=open`),
        all<Wish>(`${of}/wishes`),
        call<{ items: Standing[] }>('GET', `${of}/directives`),
        all<Weighing>(`${of}/weighings`),
        call<{ items: { kind: string; countsForInspections: boolean }[] }>('GET', `${of}/meters`),
      ]);
      const kinds = [...meters.items].sort(
        (a, b) => Number(b.countsForInspections) - Number(a.countsForInspections),
      );
      setRecords({
        ...{ orders, items, squawks, wishes, weighings, standings: directives.items },
        meters: kinds.map(({ kind }) => kind),
      });
    });
  useEffect(() => {
    setRecords(null);
    if (chosen !== '') void read();
  }, [chosen]);

  const changed = () => void read();
  const orders = records?.orders.filter((order) => overToo || isOpen(order)) ?? [];
  return (
    <main class="page shop">
      <h2 ref={heading} tabIndex={-1}>
        The shop
      </h2>
      <label class="which">
        Aircraft
        <select value={chosen} onChange={(event) => setChosen(event.currentTarget.value)}>
          {aircraft?.map(({ id, registration, makeModel }) => (
            <option key={id} value={id}>
              {registration}, {makeModel}
            </option>
          ))}
        </select>
      </label>
      <Refusal problem={problem} />
      {records === null && problem === null && <p class="hint">Reading…</p>}
      {records && (
        <div class="two">
          <section aria-labelledby="visits">
            <h3 id="visits">Visits</h3>
            <label class="tick">
              <input
                type="checkbox"
                checked={overToo}
                onChange={(event) => setOverToo(event.currentTarget.checked)}
              />
              Those that are over too
            </label>
            {orders.length === 0 && <p class="hint">No visit is planned or under way.</p>}
            {orders.map((order) => (
              <Visit
                key={order.id}
                order={order}
                me={me}
                signers={signers}
                meters={records.meters}
                changed={changed}
              />
            ))}
            {coordinates && (
              <PlanForm
                key={chosen}
                aircraftId={chosen}
                zone={me.club.zone}
                items={records.items}
                squawks={records.squawks}
                wishes={records.wishes}
                planned={changed}
              />
            )}
          </section>
          <section aria-label="Planned from">
            <p>
              <Link to="/maintenance">Hours and days left</Link> ·{' '}
              <Link to={`/equipment#${chosen}`}>Equipment</Link> ·{' '}
              <Link to={`/handbook#${chosen}`}>Loading and distances</Link>
            </p>
            <Directives
              aircraftId={chosen}
              standings={records.standings}
              mayFind={coordinates}
              changed={changed}
            />
            <InsuranceCard aircraftId={chosen} me={me} />
            {coordinates && (
              <>
                <DirectiveBook zone={me.club.zone} changed={changed} />
                <Wishes aircraftId={chosen} wishes={records.wishes} changed={changed} />
                <Templates aircraftId={chosen} changed={changed} />
                <Weighings
                  aircraftId={chosen}
                  weighings={records.weighings}
                  zone={me.club.zone}
                  changed={changed}
                />
                <Meters key={chosen} aircraftId={chosen} zone={me.club.zone} />
                <Signers signers={signers} zone={me.club.zone} changed={() => void readSigners()} />
              </>
            )}
          </section>
        </div>
      )}
    </main>
  );
}
