import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { Day } from '../parts/said.js';
import { momentIn, spanIn } from '../parts/time.js';
import { CheckFlightForm } from './check-flight-form.js';
import { Effects } from './effects.js';
import { SignForm } from './sign-form.js';
import { STATE_WORDS, type Line, type Signer, type StepResult, type WorkOrder } from './types.js';

/** One visit to the shop: what is done, where it stands, and the step that comes next. */
export function Visit({
  order,
  me,
  signers,
  meters,
  changed,
}: {
  order: WorkOrder;
  me: Me;
  signers: Signer[];
  meters: string[];
  changed: () => void;
}) {
  const { zone } = me.club;
  const coordinates = me.roles.includes('maintenance-coordinator');
  const [signing, setSigning] = useState(false);
  const [because, setBecause] = useState<string | null>(null);
  const [done, setDone] = useState<StepResult | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const step = (name: string, body: object) =>
    attempt(setProblem, async () => {
      const path = `/aircraft/${order.aircraftId}/work-orders/${order.id}/${name}`;
      setDone(await call<StepResult>('POST', path, body));
      changed();
    });
  const checkDue = order.checkFlightBecause !== null && order.checkFlownAt === null;
  return (
    <article class={`card visit-card ${order.state}`} data-order={order.title}>
      <header>
        <h3>{order.title}</h3> <span class="chip">{STATE_WORDS[order.state]}</span>
        {checkDue && <span class="chip alarm">Check flight due</span>}
      </header>
      <p class="hint">
        {order.from !== null && order.to !== null
          ? spanIn(zone, order.from, order.to)
          : 'No time in the calendar'}
        {order.shop !== '' && `, ${order.shop}`}
        {order.begunAt !== null && `, begun ${momentIn(zone, order.begunAt)}`}
      </p>
      <ul class="lines">
        {order.lines.map((line) => (
          <LineRow key={line.id} line={line} />
        ))}
        {order.lines.length === 0 && <li class="hint">Nothing is noted to be done.</li>}
      </ul>
      {order.cancelledBecause !== null && <p>{order.cancelledBecause}</p>}
      {order.signedBy !== null && (
        <p>
          Signed by {order.signedBy} on <Day date={order.signedOn!} />: “{order.statement}”
        </p>
      )}
      {order.checkFlightBecause !== null && (
        <p class={checkDue ? 'warned' : ''}>
          {checkDue
            ? `Nobody but required crew is carried until a check flight is made: ${order.checkFlightBecause}`
            : `Check flight made ${momentIn(zone, order.checkFlownAt!)}: ${order.checkEntry}`}
        </p>
      )}
      <Refusal problem={problem} />
      {coordinates && order.state === 'planned' && because === null && (
        <p class="in-line">
          <button class="main" onClick={() => void step('begin', {})}>
            The shop has begun
          </button>
          <button class="quiet" onClick={() => setBecause('')}>
            Call it off
          </button>
        </p>
      )}
      {because !== null && order.state === 'planned' && (
        <form
          class="in-line"
          onSubmit={(event) => {
            event.preventDefault();
            void step('cancel', { because }).then(() => setBecause(null));
          }}
        >
          <label>
            Why it is called off
            <input
              required
              minLength={5}
              maxLength={500}
              value={because}
              onInput={(event) => setBecause(event.currentTarget.value)}
            />
          </label>
          <button class="quiet danger">Call it off</button>
          <button type="button" class="quiet" onClick={() => setBecause(null)}>
            Keep it
          </button>
        </form>
      )}
      {coordinates && order.state === 'in-work' && !signing && (
        <button class="main" onClick={() => setSigning(true)}>
          Record the return to service
        </button>
      )}
      {signing && order.state === 'in-work' && (
        <SignForm
          order={order}
          zone={zone}
          signers={signers}
          meters={meters}
          signed={(result) => {
            setSigning(false);
            setDone(result);
            changed();
          }}
        />
      )}
      {checkDue && <CheckFlightForm order={order} me={me} log={(body) => step('check-flight', body)} />}
      {done && <Effects of={done} zone={zone} />}
    </article>
  );
}

function LineRow({ line }: { line: Line }) {
  const { outcome } = line;
  return (
    <li>
      {outcome !== null && <strong>{outcome === 'done' ? 'Done' : 'Not done'}: </strong>}
      {line.title}
      {line.note !== '' && <span class="says"> {line.note}</span>}
    </li>
  );
}
