import { useState } from 'preact/hooks';
import { Link } from '../parts/link.js';
import { Said } from '../parts/said.js';
import { momentIn } from '../parts/time.js';
import type { Notice } from './types.js';

const FIRST_ITEMS = 3;
const MAIL_SAYS: Record<Notice['mail'], string> = {
  gathering: 'Just in',
  none: 'On this page only',
  waiting: 'Mail goes out',
  sent: 'Mail went out',
  'given-up': 'Mail could not be delivered',
};
const PAGE_NAMES: Record<string, string> = {
  '/': 'To your flights',
  '/log': 'To the log',
  '/maintenance': 'To the hours left',
};

/** What one was told, newest first. */
export function NoticeList({
  notices,
  zone,
  read,
}: {
  notices: readonly Notice[];
  zone: string;
  read: (notice: Notice) => void;
}) {
  return (
    <ol class="told">
      {notices.map((notice) => (
        <li key={notice.id}>
          <One notice={notice} zone={zone} read={() => read(notice)} />
        </li>
      ))}
    </ol>
  );
}

function One({ notice, zone, read }: { notice: Notice; zone: string; read: () => void }) {
  const [whole, setWhole] = useState(false);
  const { items, mail, mailAt } = notice;
  const shown = whole ? items : items.slice(0, FIRST_ITEMS);
  const when = (mail === 'waiting' || mail === 'sent') && mailAt ? ` ${momentIn(zone, mailAt)}` : '';
  return (
    <article class={notice.readAt === null ? 'new' : undefined} aria-labelledby={`notice-${notice.id}`}>
      <h4 id={`notice-${notice.id}`}>
        {notice.readAt === null && <span class="mark-new">New</span>} {notice.heading}
      </h4>
      <p class="hint">
        <time dateTime={notice.occurredAt}>{momentIn(zone, notice.occurredAt)}</time>. {MAIL_SAYS[mail]}
        {when}.
      </p>
      <ul class="things">
        {shown.map((item) => (
          <li key={item.title}>
            <strong>
              <Said text={item.title} zone={zone} />
            </strong>
            {item.says.map((text) => (
              <p key={text}>
                <Said text={text} zone={zone} />
              </p>
            ))}
            {item.ways.length > 0 && (
              <>
                <p>What would make it a yes:</p>
                <ul class="ways-said">
                  {item.ways.map((text) => (
                    <li key={text}>
                      <Said text={text} zone={zone} />
                    </li>
                  ))}
                </ul>
              </>
            )}
          </li>
        ))}
      </ul>
      <p class="sure">
        {items.length > shown.length && (
          <button class="quiet" onClick={() => setWhole(true)}>
            {items.length - shown.length} more
          </button>
        )}
        {[...new Set(items.map(({ link }) => link))].map((link) => (
          <Link key={link} to={link}>
            {PAGE_NAMES[link] ?? 'Look at it'}
          </Link>
        ))}
        {notice.readAt === null && (
          <button class="quiet" aria-label={`I have read it: ${notice.heading}`} onClick={read}>
            I have read it
          </button>
        )}
      </p>
    </article>
  );
}
