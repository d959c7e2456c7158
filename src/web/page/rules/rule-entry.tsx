import { useEffect, useRef, useState } from 'preact/hooks';
import { ApiProblem, call } from '../api/client.js';
import type { Rule, RuleListed } from '../api/why-types.js';
import { RuleView } from './rule-view.js';
import { Refusal } from '../parts/refusal.js';

interface Props {
  rule: RuleListed;
  on: string;
  zone: string;
  open: boolean;
  toggled(open: boolean): void;
}

/** One rule of the list; opens to the whole of it. */
export function RuleEntry({ rule, on, zone, open, toggled }: Props) {
  const entry = useRef<HTMLDetailsElement>(null);
  const [isOpen, setOpen] = useState(open);
  const [whole, setWhole] = useState<Rule | null>(null);
  const [problem, setProblem] = useState<string | null>(null);

  useEffect(() => {
    if (open) setOpen(true);
  }, [open]);

  // Whoever comes for this rule is taken to it; whoever opens it here is there already.
  useEffect(() => {
    if (!open) return;
    entry.current?.scrollIntoView({ block: 'start' });
    entry.current?.querySelector('summary')?.focus({ preventScroll: true });
  }, []);

  useEffect(() => {
    if (!isOpen) return;
    let current = true;
    setProblem(null);
    call<{ rule: Rule }>('GET', `/rules/${rule.id}?on=${on}`).then(
      (answer) => current && setWhole(answer.rule),
      (error: unknown) => {
        if (!(error instanceof ApiProblem)) throw error;
        if (current) setProblem(error.problem.detail);
      },
    );
    return () => {
      current = false;
    };
  }, [isOpen, on, rule.id]);

  return (
    <li data-rule={rule.id}>
      <details
        ref={entry}
        class="rule"
        open={isOpen}
        onToggle={(event) => {
          setOpen(event.currentTarget.open);
          toggled(event.currentTarget.open);
        }}
      >
        <summary>
          <span class="title">{rule.title}</span>{' '}
          <span class="source">{rule.inForce ? rule.inForce.citation.text : 'not in force on that day'}</span>
        </summary>
        <Refusal problem={problem} />
        {whole ? <RuleView rule={whole} zone={zone} /> : !problem && <p class="hint">Reading…</p>}
      </details>
    </li>
  );
}
