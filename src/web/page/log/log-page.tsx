import { useEffect, useRef, useState } from 'preact/hooks';
import { fetchFile } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { go } from '../parts/route.js';
import { save } from '../parts/save.js';
import { all, names } from '../session/session.js';
import { EntryForm, type EntryFormProps } from './entry-form.js';
import { EntryList } from './entry-list.js';
import './log.css';
import { LogImport } from './import/log-import.js';
import { Lapses } from './lapses.js';
import { NeedForm } from './need-form.js';
import { TotalsTable } from './totals-table.js';
import { openedBy, readsOthers, type ClubAircraft, type ClubModel, type LogEntry } from './types.js';

/** A member's log: what lapses next, totals, entries, and what was counted where. */
export function LogPage({ me, part }: { me: Me; part: string }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const opened = openedBy(part);
  const [chosen, setChosen] = useState(me.memberId);
  const [editing, setEditing] = useState<LogEntry | null>(null);
  const [changes, setChanges] = useState(0);
  const [aircraft, setAircraft] = useState<ClubAircraft[]>([]);
  const [models, setModels] = useState<ClubModel[]>([]);
  const [problem, setProblem] = useState<string | null>(null);
  const whose = opened.whose ?? chosen;
  const own = whose === me.memberId;
  const writes = own || me.roles.includes('administrator');
  const at = `/members/${whose}/log`;
  const zone = me.club.zone;
  useEffect(() => {
    if (opened.ids.length === 0) heading.current?.focus();
    void attempt(setProblem, async () => {
      setAircraft(await all<ClubAircraft>('/aircraft'));
      setModels(await all<ClubModel>('/models'));
    });
  }, []);
  useEffect(() => setEditing(null), [whose]);
  const changed = () => {
    setEditing(null);
    setChanges(changes + 1);
  };
  const take = (form: 'csv' | 'json') =>
    void attempt(setProblem, async () => save(await fetchFile(`${at}/export.${form}`), `log.${form}`));
  return (
    <main class="page log">
      <h2 ref={heading} tabIndex={-1}>
        Log
      </h2>
      {readsOthers(me) && (
        <label class="whose">
          Whose
          <select
            value={whose}
            onChange={(event) => {
              setChosen(event.currentTarget.value);
              if (part) go('/log', 'stay');
            }}
          >
            {names.value.map(({ id, name }) => (
              <option key={id} value={id}>
                {id === me.memberId ? `${name} (you)` : name}
              </option>
            ))}
          </select>
        </label>
      )}
      <Refusal problem={problem} />
      <div class="two" key={whose}>
        <div>
          <Lapses key={changes} {...{ whose, reader: me.memberId, zone }} />
          <NeedForm {...{ whose, own, zone, aircraft }} />
          <TotalsTable {...{ at, zone, changes }} />
          <section aria-labelledby="files">
            <h3 id="files">Take the log out</h3>
            <p class="hint">Every entry that counts, with its hours in decimals and its times in UTC.</p>
            <div class="buttons">
              <button type="button" onClick={() => take('csv')}>
                As a table (CSV)
              </button>
              <button type="button" onClick={() => take('json')}>
                As data (JSON)
              </button>
            </div>
          </section>
        </div>
        <div>
          {writes && (
            <LogOne key={editing?.id ?? 'new'} {...{ at, zone, aircraft, models, changed, editing }} />
          )}
          <EntryList {...{ at, zone, writes, changes, models, changed, edit: setEditing, ids: opened.ids }} />
        </div>
      </div>
      {own && <LogImport me={me} changed={changed} />}
    </main>
  );
}

/** The form, once it is wanted: on a phone it is long. */
function LogOne(props: EntryFormProps) {
  const [open, setOpen] = useState(false);
  if (open || props.editing) return <EntryForm {...props} />;
  return (
    <p class="buttons">
      <button type="button" class="main" onClick={() => setOpen(true)}>
        Log a flight
      </button>
    </p>
  );
}
