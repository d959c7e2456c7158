import { useEffect, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { momentIn } from '../parts/time.js';
import type { GivenUpMail } from './types.js';

/** For officers: mail that is not tried any more, so that somebody mends the address or the mail server. */
export function Undelivered({ zone }: { zone: string }) {
  const [mails, setMails] = useState<GivenUpMail[] | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const reread = async () =>
    setMails((await call<{ items: GivenUpMail[] }>('GET', '/undelivered-mail?limit=100')).items);
  useEffect(() => void attempt(setProblem, reread), []);
  const retry = (id: string) =>
    attempt(setProblem, async () => {
      await call('POST', `/undelivered-mail/${id}/retry`);
      await reread();
    });
  return (
    <section aria-labelledby="undelivered">
      <h3 id="undelivered">Mail that did not go out</h3>
      <Refusal problem={problem} />
      {mails?.length === 0 && <p class="hint">None: nothing was given up.</p>}
      <ul class="feeds">
        {mails?.map((mail) => (
          <li key={mail.id}>
            <span>
              <strong>{mail.memberName}</strong>, {momentIn(zone, mail.dueAt)}: {mail.about.join('; ')}
              <span class="hint fault">
                After {mail.attempts === 1 ? 'one attempt' : `${mail.attempts} attempts`}: {mail.fault}
              </span>
            </span>
            <button
              class="quiet"
              aria-label={`Try again to deliver to ${mail.memberName}`}
              onClick={() => void retry(mail.id)}
            >
              Try again
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
