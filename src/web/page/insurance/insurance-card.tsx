import { useEffect, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { DayInput, TextInput } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { Day } from '../parts/said.js';
import { today } from '../parts/time.js';
import { all, names } from '../session/session.js';
import './insurance.css';
import { TermsForm } from './terms-form.js';
import { asked, type Terms } from './types.js';

const KEEPERS = ['maintenance-coordinator', 'safety-officer', 'administrator'];

/** Which pilots the aircraft's insurance covers: the terms on record, and for those who keep them, entering and ending. */
export function InsuranceCard({ aircraftId, me }: { aircraftId: string; me: Me }) {
  const [terms, setTerms] = useState<Terms[] | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const read = () =>
    void attempt(setProblem, async () => setTerms(await all<Terms>(`/aircraft/${aircraftId}/insurance`)));
  useEffect(read, [aircraftId]);
  const keeps = me.roles.some((role) => KEEPERS.includes(role));
  const standing = [...(terms ?? [])]
    .filter(({ voidedAt }) => voidedAt === null)
    .sort((a, b) => (a.validFrom < b.validFrom ? 1 : -1));
  const day = today(me.club.zone);
  const now = standing.find(({ validFrom, validThrough }) => validFrom <= day && day <= validThrough);
  return (
    <details class="card insurance">
      <summary>
        Pilots the insurance covers{' '}
        {terms !== null && (
          <span class="chip">
            {now ? (
              <>
                through <Day date={now.validThrough} />
              </>
            ) : standing.length === 0 ? (
              'none on record'
            ) : (
              'none today'
            )}
          </span>
        )}
      </summary>
      <p class="hint">
        As entered from the policy, which itself decides. Once terms are on record they bind every flight, and
        a day without any is not flown.
      </p>
      {standing.length === 0 && terms !== null && <p class="hint">No terms are on record.</p>}
      {standing.map((one) => (
        <TermsEntry key={one.id} {...{ one, aircraftId, keeps, changed: read }} />
      ))}
      <Refusal problem={problem} />
      {keeps && <TermsForm key={aircraftId} aircraftId={aircraftId} saved={read} />}
    </details>
  );
}

function TermsEntry({
  one,
  aircraftId,
  keeps,
  changed,
}: {
  one: Terms;
  aircraftId: string;
  keeps: boolean;
  changed: () => void;
}) {
  const all = one.minimums === null ? [] : asked(one.minimums);
  const known = one.namedPilotIds.map(
    (id) => names.value.find((name) => name.id === id)?.name ?? 'a former member',
  );
  return (
    <article data-terms={one.source}>
      <h4>{one.source}</h4>
      <p>
        <Day date={one.validFrom} /> through <Day date={one.validThrough} />
        {one.endedBecause !== null && `, ended early: ${one.endedBecause}`}
      </p>
      {one.minimums === null ? (
        <p>Named pilots only.</p>
      ) : all.length === 0 ? (
        <p>Asks nothing of other pilots.</p>
      ) : (
        <ul aria-label={`Asked by ${one.source}`}>
          {all.map((says) => (
            <li key={says}>{says}</li>
          ))}
        </ul>
      )}
      {one.namedPilots > 0 && (
        <p>
          {known.length === one.namedPilots
            ? `Names ${known.join(', ')}.`
            : `Names ${one.namedPilots === 1 ? 'one pilot' : `${one.namedPilots} pilots`}${known.length > 0 ? ', you among them' : ''}.`}
        </p>
      )}
      {keeps && <EndForm {...{ one, aircraftId, changed }} />}
    </article>
  );
}

function EndForm({ one, aircraftId, changed }: { one: Terms; aircraftId: string; changed: () => void }) {
  const [through, setThrough] = useState('');
  const [because, setBecause] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const end = () =>
    attempt(setProblem, async () => {
      await call('POST', `/aircraft/${aircraftId}/insurance/${one.id}/end`, {
        through: through || null,
        because,
      });
      changed();
    });
  return (
    <details>
      <summary aria-label={`End or take back: ${one.source}`}>End or take back</summary>
      <form
        class="in-line"
        aria-label={`End or take back ${one.source}`}
        onSubmit={(event) => {
          event.preventDefault();
          void end();
        }}
      >
        <DayInput
          label="New last day; empty: they never held"
          value={through}
          set={setThrough}
          max={one.validThrough}
        />
        <TextInput label="Because" required max={500} value={because} set={setBecause} />
        <button class="main">{through === '' ? 'Take them back' : 'End them'}</button>
      </form>
      <Refusal problem={problem} />
    </details>
  );
}
