import { useEffect, useRef, useState } from 'preact/hooks';
import type { Booking, Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { now, spanIn } from '../parts/time.js';
import { all } from '../session/session.js';
import { BlockForm } from './block-form.js';
import { BlockItem } from './block-item.js';
import './blocks.css';

export interface Aircraft {
  id: string;
  registration: string;
}

/** Time in which aircraft are not for flying: what is blocked, and a new block. For coordinators and administrators. */
export function BlocksPage({ me }: { me: Me }) {
  const { zone } = me.club;
  const heading = useRef<HTMLHeadingElement>(null);
  const [fleet, setFleet] = useState<Aircraft[]>([]);
  const [blocks, setBlocks] = useState<Booking[] | null>(null);
  const [told, setTold] = useState<string[]>([]);
  const [problem, setProblem] = useState<string | null>(null);
  const read = async () => {
    const found = await all<Booking>(`/bookings?from=${encodeURIComponent(now())}`);
    const standing = found.filter(
      ({ kind, status }) => (kind === 'maintenance' || kind === 'club') && status === 'booked',
    );
    setBlocks(standing.sort((a, b) => (a.departs < b.departs ? -1 : 1)));
  };
  useEffect(() => {
    heading.current?.focus();
    void attempt(setProblem, async () => {
      setFleet(await all<Aircraft>('/aircraft'));
      await read();
    });
  }, []);
  const done = async (displaced: { memberName: string; departs: string; arrives: string }[]) => {
    setTold(displaced.map((one) => `${one.memberName}, ${spanIn(zone, one.departs, one.arrives)}`));
    await read();
  };
  return (
    <main class="page blocks">
      <h2 ref={heading} tabIndex={-1}>
        Blocked time
      </h2>
      <p class="hint">
        For maintenance without a visit to the shop, and for the club’s own use. Visits to the shop are
        planned under Shop and stand here too.
      </p>
      <Refusal problem={problem} />
      {told.length > 0 && (
        <div class="told" role="status">
          <p>Made room and are told:</p>
          <ul>
            {told.map((one) => (
              <li key={one}>{one}</li>
            ))}
          </ul>
        </div>
      )}
      <div class="two">
        <section aria-labelledby="blocked">
          <h3 id="blocked">To come</h3>
          {blocks === null ? (
            <p class="hint">Reading…</p>
          ) : blocks.length === 0 ? (
            <p class="hint">Nothing is blocked.</p>
          ) : (
            <ul>
              {blocks.map((block) => (
                <BlockItem key={block.id} block={block} zone={zone} done={done} />
              ))}
            </ul>
          )}
        </section>
        <section aria-labelledby="block">
          <h3 id="block">Block an aircraft</h3>
          {fleet.length > 0 && <BlockForm fleet={fleet} zone={zone} done={done} />}
        </section>
      </div>
    </main>
  );
}
