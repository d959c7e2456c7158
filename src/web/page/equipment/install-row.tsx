import { BASES, KINDS, kindWords, type Row } from './types.js';

/** One piece that is put in. */
export function InstallRow({
  row,
  change,
  remove,
}: {
  row: Row;
  change: (row: Row) => void;
  remove: () => void;
}) {
  const text = (field: keyof Row, label: string, more: { type?: 'number'; hint?: string } = {}) => (
    <label>
      {label}
      <input
        inputMode={more.type === 'number' ? 'decimal' : 'text'}
        pattern={more.type === 'number' ? '-?[0-9]*[.]?[0-9]+' : undefined}
        title={more.type === 'number' ? 'a number' : undefined}
        value={row[field]}
        placeholder={more.hint}
        onInput={(event) => change({ ...row, [field]: event.currentTarget.value })}
      />
    </label>
  );
  return (
    <div class="piece">
      <label>
        Kind
        <select value={row.kind} onChange={(event) => change({ ...row, kind: event.currentTarget.value })}>
          {KINDS.map((kind) => (
            <option key={kind} value={kind}>
              {kindWords(kind)}
            </option>
          ))}
        </select>
      </label>
      {text('name', 'Name')}
      <label>
        On what ground
        <select value={row.basis} onChange={(event) => change({ ...row, basis: event.currentTarget.value })}>
          {BASES.map(({ basis, words }) => (
            <option key={basis} value={basis}>
              {words}
            </option>
          ))}
        </select>
      </label>
      {text('document', 'Paper', { hint: 'number or date' })}
      {text('weightLb', 'Weight, lb (empty: negligible)', { type: 'number' })}
      {text('armIn', 'Arm, in aft of datum', { type: 'number' })}
      {text('itemTitle', 'To be done again and again', { hint: 'backup battery check' })}
      {text('itemMonths', 'every … calendar months', { type: 'number', hint: '12' })}
      <button type="button" class="quiet" onClick={remove}>
        Remove this row
      </button>
    </div>
  );
}
