import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { today } from '../parts/time.js';
import { InstallRow } from './install-row.js';
import { Preview } from './preview.js';
import { EMPTY_ROW, kindWords, type ChangeResult, type Piece, type Row } from './types.js';
import { Refusal } from '../parts/refusal.js';

interface Form {
  title: string;
  doneOn: string;
  statement: string;
  signedBy: string;
  group: string;
  out: Record<string, boolean>;
  rows: Row[];
}

/** A change of equipment: what goes, what comes, what it does, and only then the change itself. */
export function ChangeForm({
  aircraftId,
  fitted,
  zone,
  made,
}: {
  aircraftId: string;
  fitted: Piece[];
  zone: string;
  made: () => void;
}) {
  const blank = (): Form => ({
    ...{ title: '', doneOn: today(zone), statement: '', signedBy: '', group: '', out: {}, rows: [EMPTY_ROW] },
  });
  const [form, setForm] = useState<Form>(blank);
  const [result, setResult] = useState<ChangeResult | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const set = (change: Partial<Form>) => {
    setForm({ ...form, ...change });
    setResult(null);
  };

  const send = async (where: '' | '/preview') => {
    setBusy(true);
    await attempt(setProblem, async () => {
      const weightless = fitted.filter(({ weightLb }) => weightLb === null).map(({ id }) => id);
      const body = bodyOf(form, weightless, where === '' ? (result?.preview ?? null) : null);
      const path = `/aircraft/${aircraftId}/equipment-changes${where}`;
      const answer = await call<ChangeResult>('POST', path, body);
      if (where === '/preview') return setResult(answer);
      setForm(blank());
      setResult(null);
      made();
    });
    setBusy(false);
  };

  const text = (field: 'title' | 'statement' | 'signedBy' | 'group', label: string, hint = '') => (
    <label>
      {label}
      <input
        value={form[field]}
        placeholder={hint}
        required={field !== 'group'}
        onInput={(event) => set({ [field]: event.currentTarget.value })}
      />
    </label>
  );
  return (
    <form
      class="change"
      onSubmit={(event) => {
        event.preventDefault();
        void send('/preview');
      }}
    >
      <h3>Record a change</h3>
      <div class="fields">
        {text('title', 'What was done', 'Electronic instruments for the air-driven ones')}
        <label>
          Done on
          <input
            type="date"
            value={form.doneOn}
            max={today(zone)}
            required
            onChange={(event) => set({ doneOn: event.currentTarget.value })}
          />
        </label>
        {text('statement', 'Entry in the maintenance record')}
        {text('signedBy', 'Signed by, with certificate')}
      </div>
      <fieldset>
        <legend>Taken out</legend>
        {fitted.map((piece) => (
          <label key={piece.id} class="tick">
            <input
              type="checkbox"
              checked={form.out[piece.id] ?? false}
              onChange={(event) => set({ out: { ...form.out, [piece.id]: event.currentTarget.checked } })}
            />
            {piece.name} <small>{kindWords(piece.kind)}</small>
            {piece.weightLb === null && !piece.portable && (form.out[piece.id] ?? false) && (
              <small> · no weight on record: counted as negligible, if your mechanic agrees</small>
            )}
          </label>
        ))}
      </fieldset>
      <fieldset>
        <legend>Put in</legend>
        {form.rows.map((row, index) => (
          <InstallRow
            key={index}
            row={row}
            change={(changed) => set({ rows: form.rows.map((one, at) => (at === index ? changed : one)) })}
            remove={() => set({ rows: form.rows.filter((_one, at) => at !== index) })}
          />
        ))}
        <button type="button" class="quiet" onClick={() => set({ rows: [...form.rows, EMPTY_ROW] })}>
          One more piece
        </button>
      </fieldset>
      {text(
        'group',
        'Members have to be shown (leave empty where nothing needs showing)',
        'electronic panel',
      )}
      <Refusal problem={problem} />
      <button class="main" disabled={busy}>
        What would it do?
      </button>
      {result && (
        <>
          <Preview result={result} zone={zone} />
          <button type="button" class="main" disabled={busy} onClick={() => void send('')}>
            Record the change
          </button>
        </>
      )}
    </form>
  );
}

/** The request body. What has no weight is told as negligible, which the form says before. */
function bodyOf(form: Form, weightless: readonly string[], preview: string | null): object {
  const number = (typed: string): number | null => (typed.trim() === '' ? null : Number(typed));
  const { title, doneOn, statement, signedBy, group, out, rows } = form;
  return {
    ...{ title, doneOn, statement, signedBy },
    ...(preview === null ? {} : { preview }),
    removes: Object.keys(out)
      .filter((id) => out[id])
      .map((equipmentId) => ({ equipmentId, negligible: weightless.includes(equipmentId) })),
    installs: rows
      .filter(({ name }) => name.trim() !== '')
      .map((row) => ({
        ...{ kind: row.kind, name: row.name, basis: row.basis, document: row.document || null },
        ...{ weightLb: number(row.weightLb), armIn: number(row.armIn) },
        ...(row.weightLb.trim() === '' ? { negligible: true } : {}),
        items:
          row.itemTitle.trim() === ''
            ? []
            : [
                {
                  kind: 'club',
                  title: row.itemTitle,
                  scope: 'all',
                  calendarMonths: number(row.itemMonths) ?? 12,
                },
              ],
      })),
    difference: group.trim() === '' ? null : { title, equipmentGroup: group },
  };
}
