import { useEffect, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { all } from '../session/session.js';
import { DocumentList } from './document-list.js';
import { KINDS } from './kinds.js';
import type { Paper, PaperDocument, Unverified } from './types.js';

/** For officers: papers that wait to be verified, the longest waiting first. */
export function VerifyQueue({ me }: { me: Me }) {
  const [waiting, setWaiting] = useState<Unverified[] | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const reload = () => void attempt(setProblem, async () => setWaiting(await all('/papers/unverified')));
  useEffect(reload, []);
  return (
    <section class="queue" aria-labelledby="to-verify">
      <h3 id="to-verify">To verify</h3>
      <p class="hint">Verifying says that you have seen the original. A scan is not the original.</p>
      <Refusal problem={problem} />
      {waiting?.length === 0 && <p class="hint">Nothing waits.</p>}
      {waiting?.map((one) => (
        <Waiting key={one.id} one={one} own={one.memberId === me.memberId} done={reload} />
      ))}
    </section>
  );
}

function Waiting({ one, own, done }: { one: Unverified; own: boolean; done(): void }) {
  const [paper, setPaper] = useState<Paper | null>(null);
  const [documents, setDocuments] = useState<PaperDocument[]>([]);
  const [problem, setProblem] = useState<string | null>(null);
  const kind = KINDS.find(({ path }) => path === one.kind)!;
  const look = () =>
    void attempt(setProblem, async () => {
      const papers = await all<Paper>(`/members/${one.memberId}/${one.kind}`);
      const scans = await all<PaperDocument>(`/members/${one.memberId}/documents`);
      setPaper(papers.find(({ id }) => id === one.id) ?? null);
      setDocuments(scans.filter(({ paperId }) => paperId === one.id));
    });
  const verify = ({ rowVersion }: Paper) =>
    void attempt(setProblem, async () => {
      const path = `/members/${one.memberId}/${one.kind}/${one.id}/verify`;
      await call('POST', path, {}, { 'If-Match': `"${rowVersion}"` });
      done();
    });
  const title = `${kind.title} of ${one.memberName}`;
  const invitation = `Look at it (${one.documents === 1 ? '1 document' : `${one.documents} documents`})`;
  return (
    <article data-waiting={title}>
      <h4>{title}</h4>
      {paper === null ? (
        <button class="quiet" onClick={look} aria-label={`${invitation}: ${title}`}>
          {invitation}
        </button>
      ) : (
        <>
          <p>{kind.names(paper)}</p>
          <dl>
            {Object.entries(paper)
              .filter(
                ([, value]) => ['string', 'number', 'boolean'].includes(typeof value) || Array.isArray(value),
              )
              .filter(([name]) => !['id', 'memberId', 'rowVersion', 'recordedAt'].includes(name))
              .filter(([, value]) => !Array.isArray(value) || value.every((part) => typeof part === 'string'))
              .filter(([, value]) => !Array.isArray(value) || value.length > 0)
              .map(([name, value]) => (
                <div key={name}>
                  <dt>{name.replace(/([A-Z])/g, ' $1').toLowerCase()}</dt>
                  <dd>{Array.isArray(value) ? value.join('; ') : String(value)}</dd>
                </div>
              ))}
          </dl>
          <DocumentList
            {...{ memberId: one.memberId, kind: one.kind, paperId: one.id, of: title, documents }}
            mayChange={false}
            changed={look}
          />
          {own ? (
            <p class="hint">Your own paper: another officer verifies it.</p>
          ) : (
            <button class="main" onClick={() => verify(paper)}>
              I have seen the original
            </button>
          )}
        </>
      )}
      <Refusal problem={problem} />
    </article>
  );
}
