import { useEffect, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { OwnTemplate } from './own-template.js';
import type { Template } from './types.js';

/** Items ready to be put on the aircraft. */
export function Templates({ aircraftId, changed }: { aircraftId: string; changed: () => void }) {
  const [templates, setTemplates] = useState<Template[] | null>(null);
  const [chosen, setChosen] = useState<Record<string, boolean>>({});
  const [told, setTold] = useState<{ added: string[]; left: string[] } | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    setTold(null);
    setChosen({});
  }, [aircraftId]);
  const open = () =>
    attempt(setProblem, async () =>
      setTemplates((await call<{ items: Template[] }>('GET', '/item-templates')).items),
    );
  const remove = ({ id, rowVersion }: Template) =>
    attempt(setProblem, async () => {
      await call('DELETE', `/item-templates/${id}`, undefined, { 'If-Match': `"${rowVersion}"` });
      await open();
    });
  const put = () =>
    attempt(setProblem, async () => {
      const codes = Object.keys(chosen).filter((code) => chosen[code]);
      const result = await call<{ added: { title: string }[]; leftOut: { code: string; because: string }[] }>(
        'POST',
        `/aircraft/${aircraftId}/items/from-templates`,
        { codes },
      );
      setTold({
        added: result.added.map(({ title }) => title),
        left: result.leftOut.map(({ because }) => because),
      });
      setChosen({});
      changed();
    });
  const nothing = !Object.values(chosen).some(Boolean);
  return (
    <details class="card" onToggle={(event) => event.currentTarget.open && templates === null && void open()}>
      <summary>Put items on the aircraft</summary>
      <form
        aria-label="Put items on the aircraft"
        onSubmit={(event) => {
          event.preventDefault();
          void put();
        }}
      >
        <div class="ticks">
          {templates?.map((one) => (
            <div key={one.code}>
              <label class="tick">
                <input
                  type="checkbox"
                  checked={chosen[one.code] ?? false}
                  onChange={(event) => setChosen({ ...chosen, [one.code]: event.currentTarget.checked })}
                />
                <span>
                  {one.title} <small>{everyWords(one)}</small>
                </span>
              </label>
              {one.id !== null && (
                <button
                  type="button"
                  class="quiet"
                  aria-label={`Delete the template ${one.title}`}
                  onClick={() => void remove(one)}
                >
                  Delete
                </button>
              )}
            </div>
          ))}
        </div>
        <button class="main" disabled={nothing}>
          Put them on
        </button>
      </form>
      {told && (
        <div role="status">
          {told.added.length > 0 && <p>Put on: {told.added.join(', ')}.</p>}
          {told.left.map((because) => (
            <p key={because} class="hint">
              {because}
            </p>
          ))}
        </div>
      )}
      <Refusal problem={problem} />
      {templates !== null && <OwnTemplate added={() => void open()} />}
    </details>
  );
}

function everyWords({ calendarMonths, plainMonths, days, intervalH }: Template): string {
  const each = [
    intervalH !== null && `${intervalH} h`,
    calendarMonths !== null && `${calendarMonths} calendar months`,
    plainMonths !== null && `${plainMonths} months`,
    days !== null && `${days} days`,
  ].filter(Boolean);
  return each.length === 0 ? '' : `every ${each.join(' or ')}`;
}
