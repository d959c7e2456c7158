import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import type { Kind } from './kinds.js';
import { PaperForm } from './paper-form.js';
import type { Paper } from './types.js';

interface Props {
  kind: Kind;
  memberId: string;
  paper: Paper;
  /** An officer may delete a paper that is verified. */
  officer: boolean;
  changed(): void;
}

/** Changing and deleting one paper of one's own. */
export function PaperActions({ kind, memberId, paper, officer, changed }: Props) {
  const [open, setOpen] = useState<'change' | 'delete' | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const name = kind.names(paper);
  const mayDelete = paper.verified === null || officer;
  const toggle = (what: 'change' | 'delete') => setOpen(open === what ? null : what);
  const remove = () =>
    void attempt(setProblem, async () => {
      await call('DELETE', `/members/${memberId}/${kind.path}/${paper.id}`, undefined, {
        'If-Match': `"${paper.rowVersion}"`,
      });
      changed();
    });
  return (
    <div class="actions">
      <button
        type="button"
        class="quiet"
        aria-expanded={open === 'change'}
        aria-label={`Change ${name}`}
        onClick={() => toggle('change')}
      >
        Change
      </button>
      {mayDelete && (
        <button
          type="button"
          class="quiet"
          aria-expanded={open === 'delete'}
          aria-label={`Delete ${name}`}
          onClick={() => toggle('delete')}
        >
          Delete
        </button>
      )}
      {open === 'change' && (
        <>
          {paper.verified !== null && (
            <p class="hint">
              Once you change it, it is not verified any more: an officer has to see the original again.
              {!mayDelete && ' Only an officer deletes a verified paper.'}
            </p>
          )}
          <PaperForm
            {...{ kind, memberId, paper }}
            saved={() => {
              setOpen(null);
              changed();
            }}
          />
        </>
      )}
      {open === 'delete' && (
        <p>
          Delete it, and the documents with it, for good?{' '}
          <button type="button" class="quiet danger" onClick={remove}>
            Delete for good
          </button>
          <button type="button" class="quiet" onClick={() => setOpen(null)}>
            Keep it
          </button>
        </p>
      )}
      <Refusal problem={problem} />
    </div>
  );
}
