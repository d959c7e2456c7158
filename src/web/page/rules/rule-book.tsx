import { useEffect, useRef, useState } from 'preact/hooks';
import { ApiProblem, call } from '../api/client.js';
import type { RuleBook, RuleListed } from '../api/why-types.js';
import { go } from '../parts/route.js';
import { Day } from '../parts/said.js';
import { today } from '../parts/time.js';
import { matches } from './search.js';
import { RuleEntry } from './rule-entry.js';
import { Refusal } from '../parts/refusal.js';

const WEIGHTS = [
  { weight: 'law', title: 'The law' },
  { weight: 'club', title: 'The club’s own rules' },
  { weight: 'advice', title: 'Advice' },
] as const;

/** Every rule that judges the club's flights, with its text, its dates and its numbers; searched as one types. */
export function RuleBookPage({ zone, open }: { zone: string; open: string | null }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [on, setOn] = useState(() => today(zone));
  const [search, setSearch] = useState('');
  const [book, setBook] = useState<RuleBook | null>(null);
  const [problem, setProblem] = useState<string | null>(null);

  // The link that led here is hidden now; without this the keyboard would start over at the top.
  useEffect(() => {
    if (open === null) heading.current?.focus();
  }, []);

  useEffect(() => {
    let current = true;
    setProblem(null);
    call<RuleBook>('GET', `/rules?on=${on}`).then(
      (answer) => current && setBook(answer),
      (error: unknown) => {
        if (!(error instanceof ApiProblem)) throw error;
        if (current) setProblem(error.problem.detail);
      },
    );
    return () => {
      current = false;
    };
  }, [on]);

  const found = (book?.items ?? []).filter((rule) => matches(rule, search));
  return (
    <main class="page rule-book">
      <h2 ref={heading} tabIndex={-1}>
        Rule book
      </h2>
      <form role="search" class="finder" onSubmit={(event) => event.preventDefault()}>
        <label>
          Find
          <input
            type="search"
            value={search}
            placeholder="landings, 61.57, medical …"
            onInput={(event) => setSearch(event.currentTarget.value)}
          />
        </label>
        <label>
          As it stands on
          <input
            type="date"
            value={on}
            required
            onChange={(event) => event.currentTarget.value && setOn(event.currentTarget.value)}
          />
        </label>
      </form>
      <Refusal problem={problem} />
      {book === null && !problem && <p class="hint">Reading…</p>}
      {book && (
        <>
          <p class="hint" role="status">
            {found.length === book.items.length
              ? `${book.items.length} rules`
              : `${found.length} of ${book.items.length} rules`}{' '}
            on <Day date={book.on} />
          </p>
          {WEIGHTS.map(({ weight, title }) => (
            <Shelf
              key={weight}
              title={title}
              rules={found.filter((rule) => rule.weight === weight)}
              on={book.on}
              zone={zone}
              open={open}
            />
          ))}
          <p class="caution">{book.caution}</p>
        </>
      )}
    </main>
  );
}

interface ShelfOf {
  title: string;
  rules: RuleListed[];
  on: string;
  zone: string;
  open: string | null;
}

function Shelf({ title, rules, on, zone, open }: ShelfOf) {
  if (rules.length === 0) return null;
  return (
    <section class="shelf">
      <h3>{title}</h3>
      <ul>
        {rules.map((rule) => (
          <RuleEntry
            key={rule.id}
            rule={rule}
            on={on}
            zone={zone}
            open={rule.id === open}
            toggled={(isOpen) => {
              if (isOpen && rule.id !== open) go(`/rules#${rule.id}`, 'stay');
            }}
          />
        ))}
      </ul>
    </section>
  );
}
