import { useEffect, useRef, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Link } from '../parts/link.js';
import { Refusal } from '../parts/refusal.js';
import { isOfficer } from '../session/roles.js';
import { all } from '../session/session.js';
import { CheckDesk, OwnChecks } from './checks.js';
import { KindSection } from './kind-section.js';
import { KINDS } from './kinds.js';
import './papers.css';
import type { PaperDocument, PapersHold } from './types.js';
import { VerifyQueue } from './verify-queue.js';

/** One's own papers; for officers, those that wait to be verified. */
export function PapersPage({ me }: { me: Me }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [documents, setDocuments] = useState<PaperDocument[]>([]);
  const [problem, setProblem] = useState<string | null>(null);
  const [hold, setHold] = useState<PapersHold | null>(null);
  const own = `/members/${me.memberId}`;
  const readHold = () =>
    void attempt(setProblem, async () => setHold(await call<PapersHold>('GET', `${own}/papers-hold`)));
  const reload = () =>
    void attempt(setProblem, async () => setDocuments(await all<PaperDocument>(`${own}/documents`)));
  useEffect(() => {
    heading.current?.focus();
    reload();
    readHold();
  }, []);
  const officer = isOfficer(me.roles);
  return (
    <main class="page papers">
      <h2 ref={heading} tabIndex={-1}>
        Papers
      </h2>
      <Refusal problem={problem} />
      <div class={officer ? 'two' : 'alone'}>
        <div aria-label="Your papers" role="group">
          <p class="hint">
            You, and the officers who verify, read what is here; each reading of a document is noted. Of
            medical papers only class, dates and limitations are kept: cover the rest before you take a photo.
            All of it together is under <Link to="/my-data">Your data</Link>.
          </p>
          <div class="kinds">
            {KINDS.map((kind) => (
              <KindSection
                key={kind.path}
                {...{
                  kind,
                  memberId: me.memberId,
                  documents,
                  documentsChanged: reload,
                  zone: me.club.zone,
                  officer,
                  hold,
                  entered: readHold,
                }}
              />
            ))}
            <OwnChecks me={me} />
          </div>
          {hold && <p class="hint">{hold.caution}</p>}
        </div>
        {officer && (
          <div>
            <VerifyQueue me={me} />
            <CheckDesk me={me} />
          </div>
        )}
      </div>
    </main>
  );
}
