import type { ColumnChoice, FileColumn } from './types.js';
import { FIELDS, FORMS } from './words.js';

/** Columns of the file with some of their cells, and what each is taken for. */
export function ColumnList({
  of,
  columns,
  set,
}: {
  of: FileColumn[];
  columns: ColumnChoice[];
  set: (columns: ColumnChoice[]) => void;
}) {
  const choiceOf = (index: number): ColumnChoice =>
    columns.find((column) => column.index === index) ?? { index, field: null };
  // Each field is one column's: chosen for another, it is taken from the first.
  const change = (index: number, what: Partial<ColumnChoice>) =>
    set(
      of.map((column) => {
        const choice = choiceOf(column.index);
        if (column.index === index) return { ...choice, ...what };
        return what.field && choice.field === what.field ? { index: column.index, field: null } : choice;
      }),
    );
  return (
    <ul class="file-columns">
      {of.map(({ index, heading, samples, note }) => {
        const { field, form } = choiceOf(index);
        const name = heading || `Column ${index + 1}`;
        return (
          <li key={index}>
            <div class="sample">
              <strong>{name}</strong>
              <small>{samples.length === 0 ? 'no cell says anything' : samples.join(' · ')}</small>
              {note && <small>{note}</small>}
            </div>
            <select
              aria-label={`${name} is`}
              value={field ?? ''}
              onChange={({ currentTarget: { value } }) =>
                change(index, { field: value === '' ? null : value, form: null })
              }
            >
              <option value="">not taken over</option>
              {FIELDS.map(([group, fields]) => (
                <optgroup key={group} label={group}>
                  {fields.map(([value, words]) => (
                    <option key={value} value={value}>
                      {words}
                    </option>
                  ))}
                </optgroup>
              ))}
            </select>
            {field?.endsWith('H') && (
              <select
                aria-label={`${name} is written in`}
                value={form ?? ''}
                onChange={({ currentTarget: { value } }) => change(index, { form: value || null })}
              >
                <option value="">find out how it is written</option>
                {FORMS.map(([value, words]) => (
                  <option key={value} value={value}>
                    {words}
                  </option>
                ))}
              </select>
            )}
          </li>
        );
      })}
    </ul>
  );
}
