import { useEffect, useRef, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { useLive } from '../live/live.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { isOfficer } from '../session/roles.js';
import { countUnread } from './bell.js';
import { FeedList } from './feed-list.js';
import { MailForm } from './mail-form.js';
import { NoticeList } from './notice-list.js';
import './notices.css';
import type { Notice, NoticesPageOf } from './types.js';
import { Undelivered } from './undelivered.js';

const AT_ONCE = 20;

/** What one was told; and how one wants to be told. */
export function NoticesPage({ me, part }: { me: Me; part: string }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const side = useRef<HTMLDivElement>(null);
  const [page, setPage] = useState<NoticesPageOf | null>(null);
  const [count, setCount] = useState(AT_ONCE);
  const [problem, setProblem] = useState<string | null>(null);
  const { zone } = me.club;
  const officer = isOfficer(me.roles);
  const reread = () =>
    attempt(setProblem, async () => setPage(await call<NoticesPageOf>('GET', `/notices?limit=${count}`)));
  useEffect(() => {
    if (part === 'mail') side.current?.scrollIntoView();
    else heading.current?.focus();
  }, []);
  useEffect(() => void reread(), [count]);
  useLive(['notices'], () => void reread());
  const read = (notice: Notice | null) =>
    attempt(setProblem, async () => {
      await call('POST', notice === null ? '/notices/read' : `/notices/${notice.id}/read`);
      await Promise.all([reread(), countUnread()]);
    });
  return (
    <main class="page notices">
      <h2 ref={heading} tabIndex={-1}>
        Notices
      </h2>
      <div class="two">
        <section aria-labelledby="told">
          <div class="head">
            <h3 id="told">What you were told</h3>
            {page !== null && page.unread > 1 && (
              <button class="quiet" onClick={() => void read(null)}>
                I have read all {page.unread}
              </button>
            )}
          </div>
          <Refusal problem={problem} />
          {page === null ? (
            problem === null && <p class="hint">Reading…</p>
          ) : page.items.length === 0 ? (
            <p class="hint">
              Nothing yet. When a booked flight of yours is answered otherwise, has to make room, or something
              of yours is about to lapse, it stands here.
            </p>
          ) : (
            <>
              <NoticeList notices={page.items} zone={zone} read={(notice) => void read(notice)} />
              {page.nextCursor !== null && count < 200 && (
                <button class="quiet" onClick={() => setCount(Math.min(200, count + 3 * AT_ONCE))}>
                  Older ones
                </button>
              )}
              <p class="caution">{page.caution}</p>
            </>
          )}
        </section>
        <div ref={side}>
          <MailForm />
          <FeedList />
          {officer && <Undelivered zone={zone} />}
        </div>
      </div>
    </main>
  );
}
