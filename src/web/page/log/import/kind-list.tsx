import type { KindChoice, Preview } from './types.js';
import { CLASSES, counted } from './words.js';

const keyOf = (words: string): string => words.toUpperCase().replace(/\s+/g, ' ').trim();

/** Aircraft of the file that the club does not know: what they are is told here. */
export function KindList({
  of,
  told,
  set,
}: {
  of: Preview['kinds'];
  told: KindChoice[];
  set: (kinds: KindChoice[]) => void;
}) {
  const open = of.filter((kind) => !kind.told).length;
  const change = (words: string, what: Partial<KindChoice>) => {
    const others = told.filter((kind) => keyOf(kind.words) !== keyOf(words));
    const before = told.find((kind) => keyOf(kind.words) === keyOf(words));
    const next = { words, category: '', class: '', tailwheel: false, ...before, ...what };
    set(next.category === '' ? others : [...others, next]);
  };
  return (
    <details class="kinds" open={open > 0}>
      <summary>
        {counted(of.length, 'kind')} of aircraft that the club does not know
        {open > 0 && `: ${open} still to be told`}
      </summary>
      <ul>
        {of.map(({ words, rows }) => {
          const kind = told.find((one) => keyOf(one.words) === keyOf(words));
          return (
            <li key={words}>
              <span>
                <strong>{words}</strong> <small>{counted(rows, 'row')}</small>
              </span>
              <select
                aria-label={`${words} is`}
                value={kind ? `${kind.category} ${kind.class}` : ''}
                onChange={({ currentTarget: { value } }) => {
                  const [category = '', itsClass = ''] = value.split(' ');
                  change(words, { category, class: itsClass });
                }}
              >
                {CLASSES.map(([value, says]) => (
                  <option key={value} value={value}>
                    {says}
                  </option>
                ))}
              </select>
              {kind && (
                <label class="tick">
                  <input
                    type="checkbox"
                    aria-label={`${words} has a tailwheel`}
                    checked={kind.tailwheel}
                    onChange={({ currentTarget: { checked } }) => change(words, { tailwheel: checked })}
                  />
                  <span aria-hidden="true">tailwheel</span>
                </label>
              )}
            </li>
          );
        })}
      </ul>
    </details>
  );
}
