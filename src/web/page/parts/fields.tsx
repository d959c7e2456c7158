import type { ComponentChildren } from 'preact';

/** A line of text with its label. */
export function TextInput({
  label,
  value,
  set,
  required = false,
  max = 200,
  placeholder,
}: {
  label: string;
  value: string;
  set: (value: string) => void;
  required?: boolean;
  max?: number;
  placeholder?: string;
}) {
  return (
    <label>
      {label}
      <input
        required={required}
        maxLength={max}
        value={value}
        placeholder={placeholder}
        onInput={(event) => set(event.currentTarget.value)}
      />
    </label>
  );
}

/** Several lines of text. */
export function LongText({
  label,
  value,
  set,
  required = false,
  min,
  max,
  rows,
}: {
  label: string;
  value: string;
  set: (value: string) => void;
  required?: boolean;
  min?: number;
  max: number;
  rows: number;
}) {
  return (
    <label>
      {label}
      <textarea
        required={required}
        minLength={min}
        maxLength={max}
        rows={rows}
        value={value}
        onInput={(event) => set(event.currentTarget.value)}
      />
    </label>
  );
}

/** A figure as it is typed; empty: none. */
export function FigureInput({
  label,
  value,
  set,
  required = false,
  min,
  max,
  step = 'any',
}: {
  label: string;
  value: string;
  set: (value: string) => void;
  required?: boolean;
  min?: number;
  max?: number;
  step?: string;
}) {
  return (
    <label>
      {label}
      <input
        type="number"
        inputMode="decimal"
        required={required}
        min={min}
        max={max}
        step={step}
        value={value}
        onInput={(event) => set(event.currentTarget.value)}
      />
    </label>
  );
}

/** A day; empty: none. */
export function DayInput({
  label,
  value,
  set,
  required = false,
  min,
  max,
}: {
  label: string;
  value: string;
  set: (value: string) => void;
  required?: boolean;
  min?: string;
  max?: string;
}) {
  return (
    <label>
      {label}
      <input
        type="date"
        required={required}
        min={min}
        max={max}
        value={value}
        onInput={(event) => set(event.currentTarget.value)}
      />
    </label>
  );
}

/** One of several. */
export function Choice<T extends string>({
  label,
  value,
  set,
  of,
}: {
  label: string;
  value: T;
  set: (value: T) => void;
  of: readonly (readonly [T, string])[];
}) {
  return (
    <label>
      {label}
      <select value={value} onChange={(event) => set(event.currentTarget.value as T)}>
        {of.map(([key, words]) => (
          <option key={key} value={key}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
}

/** Yes or no. */
export function Tick({
  value,
  set,
  children,
}: {
  value: boolean;
  set: (value: boolean) => void;
  children: ComponentChildren;
}) {
  return (
    <label class="tick">
      <input type="checkbox" checked={value} onChange={(event) => set(event.currentTarget.checked)} />
      <span>{children}</span>
    </label>
  );
}

/** What was typed as a figure; null: nothing. */
export const figureOf = (text: string): number | null => (text.trim() === '' ? null : Number(text));

/** A figure back as typed text. */
export const typed = (value: number | null | undefined): string =>
  value === null || value === undefined ? '' : String(value);
