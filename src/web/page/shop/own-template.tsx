import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Choice, figureOf, TextInput, Tick } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { EQUIPMENT_CHOICES, SCOPES } from './directive-draft.js';
import { IntervalFields } from './interval-fields.js';

const EMPTY = {
  ...{ kind: 'club', title: '', reference: '', intervalH: '', calendarMonths: '', days: '' },
  ...{ scope: 'all' as string, hangsOn: '', recurring: true },
};

const KINDS: [string, string][] = [
  ['club', 'an item of the club’s own'],
  ['progressive', 'an inspection of a progressive programme'],
];

/** A template of the club’s own: what it wants done on aircraft after aircraft. */
export function OwnTemplate({ added }: { added: () => void }) {
  const [draft, setDraft] = useState(EMPTY);
  const [problem, setProblem] = useState<string | null>(null);
  const set = (change: Partial<typeof EMPTY>) => setDraft({ ...draft, ...change });
  const add = () =>
    attempt(setProblem, async () => {
      await call('POST', '/item-templates', {
        ...{ kind: draft.kind, title: draft.title, reference: draft.reference || null, scope: draft.scope },
        ...{ intervalH: figureOf(draft.intervalH), calendarMonths: figureOf(draft.calendarMonths) },
        ...{ days: figureOf(draft.days), recurring: draft.recurring, hangsOn: draft.hangsOn || null },
      });
      setDraft(EMPTY);
      added();
    });
  return (
    <form
      aria-label="A template of the club’s own"
      onSubmit={(event) => {
        event.preventDefault();
        void add();
      }}
    >
      <h4>Another of the club’s own</h4>
      <div class="fields">
        <Choice label="It is" value={draft.kind} set={(kind) => set({ kind })} of={KINDS} />
        <TextInput label="What is done" value={draft.title} set={(title) => set({ title })} required />
        <TextInput label="By what paper" value={draft.reference} set={(reference) => set({ reference })} />
        <IntervalFields of={draft} set={set} />
        <Choice
          label="When it lapses it binds"
          value={draft.scope}
          set={(scope) => set({ scope })}
          of={[
            ...SCOPES.map(([key, words]): [string, string] => [key, words]),
            ['advice', 'nothing: advice'],
          ]}
        />
        <Choice
          label="It hangs on"
          value={draft.hangsOn}
          set={(hangsOn) => set({ hangsOn })}
          of={[['', 'the aircraft'], ...EQUIPMENT_CHOICES]}
        />
        <Tick value={draft.recurring} set={(recurring) => set({ recurring })}>
          Again and again
        </Tick>
      </div>
      <Refusal problem={problem} />
      <button class="main">Keep the template</button>
    </form>
  );
}
