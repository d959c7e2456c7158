import { useEffect, useState } from 'preact/hooks';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { Said } from '../parts/said.js';
import { momentIn } from '../parts/time.js';
import { all } from '../session/session.js';
import { DocumentList } from './document-list.js';
import { HoldList } from './hold-list.js';
import type { Kind } from './kinds.js';
import { PaperActions } from './paper-actions.js';
import { PaperForm } from './paper-form.js';
import type { Paper, PaperDocument, PapersHold } from './types.js';

interface Props {
  kind: Kind;
  memberId: string;
  documents: PaperDocument[];
  documentsChanged(): void;
  zone: string;
  /** Whether the reader may delete papers that are verified. */
  officer: boolean;
  /** Until when papers hold; null while it is not read. */
  hold: PapersHold | null;
  /** A paper was entered. */
  entered(): void;
}

/** One's own papers of a kind: what each is, until when, verified or not, and what is with it. */
export function KindSection({
  kind,
  memberId,
  documents,
  documentsChanged,
  zone,
  officer,
  hold,
  entered,
}: Props) {
  const [papers, setPapers] = useState<Paper[] | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const reload = () =>
    void attempt(setProblem, async () => setPapers(await all<Paper>(`/members/${memberId}/${kind.path}`)));
  useEffect(reload, [memberId]);
  const heading = `papers-${kind.path}`;
  return (
    <section aria-labelledby={heading}>
      <h3 id={heading}>{kind.title}</h3>
      <Refusal problem={problem} />
      {papers?.length === 0 && <p class="hint">None on record.</p>}
      {papers?.map((paper) => {
        const name = kind.names(paper);
        return (
          <article key={paper.id} data-paper={name}>
            <h4>
              <Said text={name} zone={zone} />
            </h4>
            <p>
              <strong>{paper.verified ? 'Verified' : 'Not verified'}</strong>
              {paper.verified
                ? ` on ${momentIn(zone, paper.verified.at)}.`
                : ': an officer has to see the original.'}
            </p>
            <HoldList
              {...{ of: name, zone, on: hold?.on ?? '' }}
              holds={hold?.items.find(({ paperId }) => paperId === paper.id)?.holds ?? []}
            />
            <DocumentList
              {...{ memberId, kind: kind.path, paperId: paper.id, of: name }}
              documents={documents.filter(({ paperId }) => paperId === paper.id)}
              mayChange={paper.verified === null}
              changed={documentsChanged}
            />
            <PaperActions {...{ kind, memberId, paper, officer }} changed={reload} />
          </article>
        );
      })}
      <details>
        <summary>Enter one</summary>
        <PaperForm
          kind={kind}
          memberId={memberId}
          saved={() => {
            reload();
            entered();
          }}
        />
      </details>
    </section>
  );
}
