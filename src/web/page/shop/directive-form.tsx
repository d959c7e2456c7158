import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Choice, DayInput, FigureInput, TextInput, Tick } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { bodyOf, draftOf, type Draft, EQUIPMENT_CHOICES, SCOPES } from './directive-draft.js';
import { Effects } from './effects.js';
import { IntervalFields } from './interval-fields.js';
import type { Directive, DirectiveResult, Model } from './types.js';

const STATE: Record<'applies' | 'unclear' | 'not', string> = {
  applies: 'applies',
  unclear: 'due until somebody looks it up',
  not: 'does not apply',
};

/** A directive as it is published. A new one is looked at before it is kept; a wrong entry is corrected. */
export function DirectiveForm({
  of,
  others,
  models,
  zone,
  done,
  leave,
}: {
  of: Directive | null;
  others: Directive[];
  models: Model[];
  zone: string;
  done: () => void;
  leave: () => void;
}) {
  const [draft, setDraft] = useState<Draft>(draftOf(of));
  const [shown, setShown] = useState<DirectiveResult | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const set = (change: Partial<Draft>) => {
    setDraft({ ...draft, ...change });
    setShown(null);
  };
  const look = () =>
    attempt(setProblem, async () =>
      setShown(await call<DirectiveResult>('POST', '/directives/preview', bodyOf(draft))),
    );
  const keep = () =>
    attempt(setProblem, async () => {
      if (of === null) {
        await call('POST', `/directives?preview=${shown!.preview}`, bodyOf(draft));
      } else {
        const { supersedes: _kept, ...changes } = bodyOf(draft);
        await call('PATCH', `/directives/${of.id}`, changes, { 'If-Match': `"${of.rowVersion}"` });
      }
      done();
    });
  return (
    <form
      class="sign"
      aria-label={of === null ? 'A directive' : `Correct ${of.number}`}
      onSubmit={(event) => {
        event.preventDefault();
        void (of === null && shown === null ? look() : keep());
      }}
    >
      <div class="fields">
        <TextInput
          label="Issued by"
          value={draft.issuer}
          set={(issuer) => set({ issuer })}
          max={40}
          required
        />
        <TextInput label="Number" value={draft.number} set={(number) => set({ number })} max={60} required />
        <TextInput label="Title" value={draft.title} set={(title) => set({ title })} required />
        <DayInput
          label="In force since"
          value={draft.effectiveOn}
          set={(effectiveOn) => set({ effectiveOn })}
          required
        />
        <Choice label="Flights it binds" value={draft.scope} set={(scope) => set({ scope })} of={SCOPES} />
        <Choice
          label="It applies to"
          value={draft.appliesTo}
          set={(appliesTo) => set({ appliesTo })}
          of={[
            ['aircraft', 'the aircraft'],
            ['equipment', 'equipment in it'],
          ]}
        />
        {draft.appliesTo === 'equipment' && (
          <Choice
            label="Kind of equipment"
            value={draft.equipmentKind}
            set={(equipmentKind) => set({ equipmentKind })}
            of={EQUIPMENT_CHOICES}
          />
        )}
      </div>
      <fieldset>
        <legend>Models it names (none: every model)</legend>
        {models.map(({ id, makeModel }) => (
          <Tick
            key={id}
            value={draft.modelIds.includes(id)}
            set={(wanted) =>
              set({
                modelIds: wanted ? [...draft.modelIds, id] : draft.modelIds.filter((one) => one !== id),
              })
            }
          >
            {makeModel}
          </Tick>
        ))}
      </fieldset>
      <div class="fields">
        <TextInput
          label="Part numbers, with commas (none: any)"
          value={draft.partNumbers}
          set={(partNumbers) => set({ partNumbers })}
          max={2000}
        />
        <TextInput
          label="Serial numbers, with commas (none: any)"
          placeholder="HL-100 to HL-250, HL-300"
          value={draft.serials}
          set={(serials) => set({ serials })}
          max={4000}
        />
      </div>
      <fieldset>
        <legend>First compliance (neither: before the next flight)</legend>
        <div class="fields">
          <FigureInput
            label="Days after it took effect"
            value={draft.withinDays}
            set={(withinDays) => set({ withinDays })}
            step="1"
          />
          <FigureInput
            label="Hours from now"
            value={draft.withinH}
            set={(withinH) => set({ withinH })}
            step="0.1"
          />
        </div>
      </fieldset>
      <fieldset>
        <legend>After that</legend>
        <Tick value={draft.recurring} set={(recurring) => set({ recurring })}>
          It is done again and again
        </Tick>
        {draft.recurring && (
          <div class="fields">
            <IntervalFields of={draft} set={set} />
          </div>
        )}
        <Tick value={draft.ferryProhibited} set={(ferryProhibited) => set({ ferryProhibited })}>
          It forbids special flight permits
        </Tick>
      </fieldset>
      <div class="fields">
        {of === null && (
          <Choice
            label="It takes the place of"
            value={draft.supersedes}
            set={(supersedes) => set({ supersedes })}
            of={[['', 'none'], ...others.map(({ id, number }): [string, string] => [id, number])]}
          />
        )}
        <DayInput
          label="Withdrawn on (leave empty while in force)"
          value={draft.withdrawnOn}
          set={(withdrawnOn) => set({ withdrawnOn })}
        />
      </div>
      {shown !== null && (
        <>
          <ul class="effects">
            {shown.standings.map((one) => (
              <li key={`${one.aircraftId} ${one.equipmentId}`}>
                <strong>{one.registration}</strong>: {STATE[one.state]}. {one.because}
              </li>
            ))}
            {shown.standings.length === 0 && <li>No aircraft of the club is concerned.</li>}
          </ul>
          <Effects of={{ ...shown, displaced: [] }} zone={zone} />
        </>
      )}
      <Refusal problem={problem} />
      <p class="in-line">
        <button class="main">
          {of !== null ? 'Keep the correction' : shown === null ? 'What would it do?' : 'Enter it so'}
        </button>
        <button type="button" class="quiet" onClick={leave}>
          Leave it
        </button>
      </p>
    </form>
  );
}
