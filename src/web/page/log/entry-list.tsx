import { useEffect, useRef, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Choice, DayInput, Tick } from '../parts/fields.js';
import { Link } from '../parts/link.js';
import { Refusal } from '../parts/refusal.js';
import { EntryItem } from './entry-item.js';
import type { ClubModel, LogEntry } from './types.js';
import { ROLES } from './words.js';

interface Props {
  at: string;
  zone: string;
  /** May change the entries. */
  writes: boolean;
  /** Counts the changes made on the page, after each of which the list is read anew. */
  changes: number;
  models: ClubModel[];
  /** Entries opened by id; none: the whole log. */
  ids: string[];
  edit: (entry: LogEntry) => void;
  changed: () => void;
}

interface Filters {
  from: string;
  to: string;
  modelId: string;
  role: string;
  flagged: boolean;
}

const PAGE = 10;
/** As many ids as an address takes. */
const AT_A_TIME = 100;

/** Entries, newest first, narrowed or opened by what counted them. */
export function EntryList({ at, zone, writes, changes, models, ids, edit, changed }: Props) {
  const [filters, setFilters] = useState<Filters>({
    from: '',
    to: '',
    modelId: '',
    role: '',
    flagged: false,
  });
  const [entries, setEntries] = useState<LogEntry[] | null>(null);
  const [next, setNext] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const set = (part: Partial<Filters>) => setFilters({ ...filters, ...part });
  const heading = useRef<HTMLHeadingElement>(null);
  const opened = ids.join(',');
  useEffect(() => {
    if (!opened) return;
    heading.current?.focus();
    heading.current?.scrollIntoView();
  }, [opened]);
  const read = (cursor: string | null) =>
    attempt(setProblem, async () => {
      const page = await call<{ items: LogEntry[]; nextCursor: string | null }>(
        'GET',
        `${at}?${queryOf(filters)}limit=${PAGE}${cursor ? `&cursor=${encodeURIComponent(cursor)}` : ''}`,
      );
      setEntries([...(cursor ? (entries ?? []) : []), ...page.items]);
      setNext(page.nextCursor);
    });
  useEffect(() => {
    void (opened ? attempt(setProblem, async () => setEntries(await byIds(at, ids))) : read(null));
    if (opened) setNext(null);
  }, [opened, changes, JSON.stringify(filters)]);
  return (
    <section aria-labelledby="entries">
      <h3 id="entries" ref={heading} tabIndex={-1}>
        {opened ? 'What was counted' : 'Flights'}
      </h3>
      {opened ? (
        <p class="hint">
          The entries a finding counted, as they are now. <Link to="/log">Show the whole log</Link>
        </p>
      ) : (
        <Narrow {...{ filters, set, models }} />
      )}
      <Refusal problem={problem} />
      <ul class="entries">
        {entries?.map((entry) => (
          <EntryItem key={entry.id} {...{ entry, at, zone, writes, edit, changed }} />
        ))}
      </ul>
      {entries?.length === 0 && <p class="hint">No flight like that is in the log.</p>}
      {next && (
        <button type="button" class="quiet" onClick={() => void read(next)}>
          Show more
        </button>
      )}
    </section>
  );
}

function queryOf({ flagged, ...texts }: Filters): string {
  const said = Object.entries(texts).filter(([, value]) => value !== '');
  return [...said, ...(flagged ? [['flagged', 'true']] : [])]
    .map(([name, value]) => `${name}=${value}&`)
    .join('');
}

async function byIds(at: string, ids: readonly string[]): Promise<LogEntry[]> {
  const found: LogEntry[] = [];
  for (let first = 0; first < ids.length; first += AT_A_TIME) {
    const some = ids.slice(first, first + AT_A_TIME).join(',');
    found.push(...(await call<{ items: LogEntry[] }>('GET', `${at}?ids=${some}&limit=${AT_A_TIME}`)).items);
  }
  return found;
}

function Narrow({
  filters,
  set,
  models,
}: {
  filters: Filters;
  set: (part: Partial<Filters>) => void;
  models: ClubModel[];
}) {
  return (
    <details class="narrow">
      <summary>Narrow the list</summary>
      <div class="row">
        <DayInput label="From" value={filters.from} set={(from) => set({ from })} />
        <DayInput label="To" value={filters.to} set={(to) => set({ to })} />
        <Choice
          label="Model"
          value={filters.modelId}
          set={(modelId) => set({ modelId })}
          of={[['', 'any'], ...models.map(({ id, makeModel }) => [id, makeModel] as const)]}
        />
        <Choice
          label="Role"
          value={filters.role}
          set={(role) => set({ role })}
          of={[['', 'any'], ...ROLES.map(([key, words]) => [key as string, words] as const)]}
        />
        <Tick value={filters.flagged} set={(flagged) => set({ flagged })}>
          only flagged ones
        </Tick>
      </div>
    </details>
  );
}
