import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { TextInput, Tick } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { dayIn } from '../parts/time.js';
import { names } from '../session/session.js';
import { QuestionBank } from './question-bank.js';
import { SyllabusForm } from './syllabus-form.js';
import type { Model, Requirement, Version } from './types.js';
import { KIND } from './words.js';

/** One checkout laid down: the version in force, the draft of the next, who may sign it. */
export function RequirementCard({
  one,
  others,
  models,
  me,
  changed,
}: {
  one: Requirement;
  others: Requirement[];
  models: Model[];
  me: Me;
  changed: () => Promise<unknown>;
}) {
  const [open, setOpen] = useState<'write' | 'signers' | 'questions' | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const at = `/checkout-requirements/${one.id}`;
  const match = { 'If-Match': `"${one.rowVersion}"` };
  const step = (request: () => Promise<unknown>) =>
    attempt(setProblem, async () => {
      await request();
      setOpen(null);
      await changed();
    });
  const title = (one.inForce ?? one.draft)?.title ?? one.subject;
  const button = (words: string, act: () => void, of = 'quiet') => (
    <button class={of} aria-label={`${words}: ${title}`} onClick={act}>
      {words}
    </button>
  );
  return (
    <section class="asked-one" aria-labelledby={`asked-${one.id}`}>
      <h3 id={`asked-${one.id}`}>{title}</h3>
      <p class="hint">
        {KIND[one.kind]}
        {one.kind !== 'annual-check' && `: ${one.subject}`}. Signed by{' '}
        {one.instructors.length === 0
          ? 'every instructor'
          : one.instructors.map(({ name }) => name).join(', ')}
        .{one.retired && ' Retired: it is asked for no more.'}
      </p>
      {one.inForce ? (
        <VersionShown of={one.inForce} zone={me.club.zone} />
      ) : (
        <p>Nothing is in force yet: it is asked for once its draft is published.</p>
      )}
      {one.draft && open !== 'write' && <VersionShown of={one.draft} zone={me.club.zone} />}
      <Refusal problem={problem} />
      <div class="acts">
        {one.draft &&
          button(
            'Publish the draft',
            () => void step(() => call('POST', `${at}/publish`, undefined, match)),
            'main',
          )}
        {button(one.draft ? 'Change the draft' : 'Write the next version', () => setOpen('write'))}
        {one.draft &&
          button('Drop the draft', () => void step(() => call('DELETE', `${at}/draft`, undefined, match)))}
        {button('Who may sign', () => setOpen('signers'))}
        {button('Questions', () => setOpen(open === 'questions' ? null : 'questions'))}
        {button(
          one.retired ? 'Take it up again' : 'Retire',
          () => void step(() => call('PATCH', at, { retired: !one.retired }, match)),
        )}
      </div>
      {open === 'write' && (
        <SyllabusForm
          from={one.draft ?? one.inForce}
          {...{ others }}
          models={one.kind === 'model' ? models.filter(({ id }) => id !== one.modelId) : []}
          save="Keep as a draft"
          send={async (syllabus) => {
            await call('PUT', `${at}/draft`, syllabus, match);
            setOpen(null);
            await changed();
          }}
          back={() => setOpen(null)}
        />
      )}
      {open === 'signers' && (
        <Signers
          one={one}
          send={(changes) => void step(() => call('PATCH', at, changes, match))}
          back={() => setOpen(null)}
        />
      )}
      {open === 'questions' && <QuestionBank requirementId={one.id} of={title} />}
    </section>
  );
}

function VersionShown({ of, zone }: { of: Version; zone: string }) {
  const { number, publishedAt, goodDays, quiz, prerequisites, alsoModels, items } = of;
  return (
    <details>
      <summary>
        {publishedAt
          ? `In force: version ${number} since ${dayIn(zone, publishedAt)}`
          : `Draft of version ${number}`}
        , {items.length === 1 ? '1 item' : `${items.length} items`}
      </summary>
      <p>
        {goodDays === null ? 'A sign-off does not end.' : `Good for ${goodDays} days.`}
        {quiz && ` Quiz of ${quiz.questions} questions, ${quiz.passPercent} of 100 to be right.`}
        {prerequisites.length > 0 && ` First: ${prerequisites.map(({ title }) => title).join(', ')}.`}
        {alsoModels.length > 0 &&
          ` Counts for ${alsoModels.map(({ makeModel }) => makeModel).join(', ')} too.`}
      </p>
      <ol>
        {items.map(({ id, title, standard, required }) => (
          <li key={id}>
            <strong>{title}</strong>
            {required === false && ' (not required)'}: {standard}
          </li>
        ))}
      </ol>
    </details>
  );
}

function Signers({
  one,
  send,
  back,
}: {
  one: Requirement;
  send: (changes: { instructorIds: string[]; alsoCalled?: string[] }) => void;
  back: () => void;
}) {
  const [chosen, setChosen] = useState(one.instructors.map(({ id }) => id));
  const [called, setCalled] = useState(one.alsoCalled.join(', '));
  const words = called
    .split(',')
    .map((word) => word.trim())
    .filter(Boolean);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        send({ instructorIds: chosen, ...(one.kind === 'equipment' && { alsoCalled: words }) });
      }}
    >
      <fieldset>
        <legend>Instructors who may sign it; none ticked: every one</legend>
        {names.value
          .filter(({ instructor }) => instructor)
          .map(({ id, name }) => (
            <Tick
              key={id}
              value={chosen.includes(id)}
              set={(on) => setChosen(on ? [...chosen, id] : chosen.filter((other) => other !== id))}
            >
              {name}
            </Tick>
          ))}
      </fieldset>
      {one.kind === 'equipment' && (
        <TextInput
          label="Words by which changes of equipment mean it, with commas between"
          value={called}
          set={setCalled}
        />
      )}
      <div class="acts">
        <button class="main">Save</button>
        <button type="button" class="quiet" onClick={back}>
          Back
        </button>
      </div>
    </form>
  );
}
