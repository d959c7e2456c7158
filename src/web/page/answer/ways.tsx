import { useEffect, useState } from 'preact/hooks';
import { DONE_AT_ONCE, FURTHER_WAYS } from '../../../rules/explain/sentences.js';
import { ApiProblem, call } from '../api/client.js';
import type { Decision } from '../api/types.js';
import { Said } from '../parts/said.js';
import { dayIn, momentIn } from '../parts/time.js';
import type { Cost, Way, WaySortie, WayStep, WaysToYes } from './ways-types.js';
import './ways.css';
import { Refusal } from '../parts/refusal.js';

const BY: Record<WayStep['by'], string> = {
  member: 'you',
  instructor: 'an instructor',
  examiner: 'an examiner',
  'medical-examiner': 'a medical examiner',
  'maintenance-coordinator': 'the maintenance coordinator',
  mechanic: 'a mechanic',
  officer: 'an officer',
  administrator: 'the club’s office',
};

/** Searched for when somebody asks, or at once: the cheapest ways that make the answer yes, side by side. */
export function Ways({
  decision,
  zone,
  atOnce = false,
}: {
  decision: Decision;
  zone: string;
  atOnce?: boolean;
}) {
  const [state, setState] = useState<'closed' | 'looking' | 'open'>('closed');
  const [found, setFound] = useState<WaysToYes | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const yes = decision.answer === 'yes' || decision.answer === 'yes-with-conditions';
  useEffect(() => {
    if (atOnce && !yes) void look();
  }, [decision.id]);
  if (yes) return null;

  async function look() {
    setState('looking');
    setProblem(null);
    try {
      setFound(await call<WaysToYes>('GET', `/decisions/${decision.id}/ways`));
      setState('open');
    } catch (error) {
      if (!(error instanceof ApiProblem)) throw error;
      setProblem(error.problem.detail);
      setState('closed');
    }
  }

  if (!found) {
    return (
      <div class="to-yes">
        <button class="seek" disabled={state === 'looking'} onClick={() => void look()}>
          {state === 'looking' ? 'Looking for ways…' : 'What would make it a yes?'}
        </button>
        <Refusal problem={problem} />
      </div>
    );
  }
  return (
    <section class="to-yes" aria-label={`Ways to yes for ${decision.aircraft.registration}`}>
      <Found found={found} zone={zone} />
    </section>
  );
}

function Found({ found, zone }: { found: WaysToYes; zone: string }) {
  const { plans, none, later, bound, currency, caution } = found;
  return (
    <>
      {plans.length > 0 && <h4>{plans.length === 1 ? 'One way to yes' : `${plans.length} ways to yes`}</h4>}
      {plans.length > 0 && (
        <ol class="plans">
          {plans.map((way, index) => (
            <Plan
              key={index}
              way={way}
              currency={currency}
              zone={zone}
              cheapest={index === 0 && plans.length > 1}
            />
          ))}
        </ol>
      )}
      {none && (
        <>
          <h4>{none.says}</h4>
          <ul class="no-way">
            {none.because.map(({ rule, title, says, why }) => (
              <li key={rule}>
                <strong>{title}.</strong> <Said text={`${says} ${why}`} zone={zone} />
              </li>
            ))}
          </ul>
        </>
      )}
      {later && (
        <>
          <h4>
            <Said text={later.says} zone={zone} />
          </h4>
          <ol class="plans">
            <Plan way={later.way} currency={currency} zone={zone} cheapest={false} />
          </ol>
        </>
      )}
      {bound && plans.length > 0 && <p class="hint">{FURTHER_WAYS}</p>}
      <p class="small">{caution}</p>
    </>
  );
}

function Plan({
  way,
  currency,
  zone,
  cheapest,
}: {
  way: Way;
  currency: string;
  zone: string;
  cheapest: boolean;
}) {
  const { steps, sorties, cost, restSays, conditions } = way;
  const done = steps
    .map(({ doneBy }) => doneBy)
    .sort()
    .at(-1);
  return (
    <li class={`plan ${way.rests.length > 0 ? 'rests' : ''}`}>
      <p class="sum">
        <strong>{sumSays(cost, currency)}</strong>
        {cheapest && <span class="tag">cheapest</span>}
      </p>
      <ol class="steps">
        {groupsOf(steps, sorties).map(({ sortie, steps: together }) => (
          <li key={together[0]!.act}>
            {sortie && (
              <p class="flown">
                <time dateTime={sortie.departs}>{momentIn(zone, sortie.departs)}</time>: {sortie.says}
              </p>
            )}
            {together.map((step) => (
              <Step key={step.act + step.title} step={step} zone={zone} currency={currency} />
            ))}
          </li>
        ))}
      </ol>
      {restSays.map((says) => (
        <p class="open" key={says}>
          {says}
        </p>
      ))}
      <p class="done">
        {done && cost.days > 0 ? (
          <>
            Done by <time dateTime={done}>{dayIn(zone, done)}</time>.
          </>
        ) : (
          DONE_AT_ONCE
        )}
      </p>
      <details>
        <summary>What it costs, and what remains</summary>
        <Costs cost={cost} currency={currency} />
        {conditions.length > 0 && (
          <>
            <p class="label">Before departure</p>
            <ul class="remains">
              {conditions.map((condition) => (
                <li key={condition}>
                  <Said text={condition} zone={zone} />
                </li>
              ))}
            </ul>
          </>
        )}
      </details>
    </li>
  );
}

function Step({ step, zone, currency }: { step: WayStep; zone: string; currency: string }) {
  const { money, clubMoney } = step.cost;
  const notes = [
    step.by === 'member' ? null : BY[step.by],
    step.sortie === null && step.cost.days > 0 ? dayIn(zone, step.doneBy) : null,
    money > 0 ? `${round(money)} ${currency}` : null,
    clubMoney > 0 ? `${round(clubMoney)} ${currency} of the club’s` : null,
  ].filter((note) => note !== null);
  return (
    <p class="todo">
      <Said text={step.title} zone={zone} />
      {notes.length > 0 && <span class="notes"> ({notes.join(', ')})</span>}
    </p>
  );
}

/** 'Costs 480 dollars and 3 h of your time'; what is only inconvenient says so. */
function sumSays(cost: Cost, currency: string): string {
  const parts = [
    cost.money > 0 ? `${round(cost.money)} ${currency}` : null,
    cost.hours > 0 ? `${round(cost.hours)} h of your time` : null,
    cost.days > 0 ? `${cost.days} day${cost.days === 1 ? '' : 's'}` : null,
  ].filter((part) => part !== null);
  if (parts.length > 0) return parts.join(', ');
  return cost.clubMoney > 0 ? 'Nothing to pay for you' : 'A change of plan';
}

function Costs({ cost, currency }: { cost: Cost; currency: string }) {
  const rows: [string, string][] = [
    ['You pay', `${round(cost.money)} ${currency}`],
    ['The club pays', `${round(cost.clubMoney)} ${currency}`],
    ['Your time', `${round(cost.hours)} h`],
    ['Waiting', `${cost.days} day${cost.days === 1 ? '' : 's'}`],
    ['Inconvenience', `${round(cost.points)} points`],
    ['Counted as', `${round(cost.total)} ${currency}`],
  ];
  return (
    <dl class="costs">
      {rows.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

const round = (value: number): string => String(Math.round(value * 10) / 10);

/** Steps in their order, those of one practice flight together. */
function groupsOf(
  steps: readonly WayStep[],
  sorties: readonly WaySortie[],
): { sortie: WaySortie | null; steps: WayStep[] }[] {
  const groups: { sortie: WaySortie | null; steps: WayStep[] }[] = [];
  for (const step of steps) {
    const sortie = sorties.find(({ number }) => number === step.sortie) ?? null;
    const group = sortie && groups.find((one) => one.sortie === sortie);
    if (group) group.steps.push(step);
    else groups.push({ sortie, steps: [step] });
  }
  return groups;
}
