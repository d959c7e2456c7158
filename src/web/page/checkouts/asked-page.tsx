import { useEffect, useRef, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Choice, Tick } from '../parts/fields.js';
import { Link } from '../parts/link.js';
import { Refusal } from '../parts/refusal.js';
import { all } from '../session/session.js';
import './asked.css';
import { RequirementCard } from './requirement-card.js';
import { SyllabusForm } from './syllabus-form.js';
import type { Model, Requirement } from './types.js';
import { CONDITIONS, GROUPS, KIND } from './words.js';

/** For officers: what each checkout asks for, version by version, and the bank of questions. */
export function AskedPage({ me }: { me: Me }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [list, setList] = useState<Requirement[] | null>(null);
  const [models, setModels] = useState<Model[]>([]);
  const [retired, setRetired] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const reload = () =>
    attempt(setProblem, async () =>
      setList(await all(`/checkout-requirements${retired ? '?retired=true' : ''}`)),
    );
  useEffect(() => {
    heading.current?.focus();
    void attempt(setProblem, async () => setModels(await all('/models')));
  }, []);
  useEffect(() => void reload(), [retired]);
  return (
    <main class="page checkouts asked">
      <p>
        <Link to="/checkouts">Back to checkouts</Link>
      </p>
      <h2 ref={heading} tabIndex={-1}>
        What the club asks for
      </h2>
      <p class="hint">
        A published version never changes: writing the next one leaves what was signed under it as it is.
        Whether a flight is refused without a checkout is set in the club’s policy.
      </p>
      <Refusal problem={problem} />
      <Tick value={retired} set={setRetired}>
        Show those retired too
      </Tick>
      {list?.length === 0 && <p class="hint">Nothing is laid down yet.</p>}
      {list?.map((one) => (
        <RequirementCard
          key={one.id}
          {...{ one, models, me }}
          others={list.filter(({ id }) => id !== one.id)}
          changed={reload}
        />
      ))}
      {list && <NewRequirement {...{ list, models }} made={reload} />}
    </main>
  );
}

function NewRequirement({
  list,
  models,
  made,
}: {
  list: Requirement[];
  models: Model[];
  made: () => Promise<unknown>;
}) {
  const [open, setOpen] = useState(false);
  const [kind, setKind] = useState<keyof typeof KIND>('model');
  const [model, setModel] = useState('');
  const [group, setGroup] = useState<string>(GROUPS[0][0]);
  const [condition, setCondition] = useState<string>(CONDITIONS[0][0]);
  const modelId = model || models[0]?.id;
  if (!open)
    return (
      <button class="main" onClick={() => setOpen(true)}>
        Lay another checkout down
      </button>
    );
  return (
    <section aria-labelledby="another">
      <h3 id="another">Another checkout</h3>
      <div class="row">
        <Choice
          label="What it is for"
          value={kind}
          set={setKind}
          of={Object.entries(KIND) as [typeof kind, string][]}
        />
        {kind === 'model' && (
          <Choice
            label="Model"
            value={modelId ?? ''}
            set={setModel}
            of={models.map(({ id, makeModel }) => [id, makeModel] as const)}
          />
        )}
        {kind === 'equipment' && <Choice label="Equipment" value={group} set={setGroup} of={GROUPS} />}
        {kind === 'condition' && (
          <Choice label="Condition" value={condition} set={setCondition} of={CONDITIONS} />
        )}
      </div>
      <SyllabusForm
        key={kind}
        from={null}
        others={list}
        models={kind === 'model' ? models.filter(({ id }) => id !== modelId) : []}
        save="Keep it as a draft"
        send={async (syllabus) => {
          await call('POST', '/checkout-requirements', {
            ...syllabus,
            kind,
            modelId: kind === 'model' ? modelId : null,
            equipmentGroup: kind === 'equipment' ? group : null,
            condition: kind === 'condition' ? condition : null,
          });
          setOpen(false);
          await made();
        }}
        back={() => setOpen(false)}
      />
    </section>
  );
}
