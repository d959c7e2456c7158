import type { Part } from './types.js';

const EMPTY: Part = { partNumber: '', serialNumber: null, name: '', quantity: 1 };

/** Parts used, one line each. */
export function PartsForm({ parts, change }: { parts: Part[]; change(parts: Part[]): void }) {
  const edit = (index: number, more: Partial<Part>) =>
    change(parts.map((part, at) => (at === index ? { ...part, ...more } : part)));
  return (
    <fieldset class="parts">
      <legend>Parts used</legend>
      {parts.map((part, index) => (
        <div key={index} class="part">
          <label>
            Part number
            <input
              required
              maxLength={80}
              value={part.partNumber}
              onInput={(event) => edit(index, { partNumber: event.currentTarget.value })}
            />
          </label>
          <label>
            Name
            <input
              required
              maxLength={200}
              value={part.name}
              onInput={(event) => edit(index, { name: event.currentTarget.value })}
            />
          </label>
          <label>
            Serial, if any
            <input
              maxLength={80}
              value={part.serialNumber ?? ''}
              onInput={(event) => edit(index, { serialNumber: event.currentTarget.value || null })}
            />
          </label>
          <label>
            How many
            <input
              required
              type="number"
              min="0.001"
              step="any"
              value={part.quantity}
              onInput={(event) => edit(index, { quantity: event.currentTarget.valueAsNumber })}
            />
          </label>
          <button
            type="button"
            class="quiet"
            onClick={() => change(parts.filter((_one, at) => at !== index))}
          >
            Remove part {index + 1}
          </button>
        </div>
      ))}
      <button type="button" class="quiet" onClick={() => change([...parts, EMPTY])}>
        Add a part
      </button>
    </fieldset>
  );
}
