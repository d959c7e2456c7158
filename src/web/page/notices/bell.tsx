import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Link } from '../parts/link.js';
import { useLive } from '../live/live.js';
import './bell.css';
import type { NoticesPageOf } from './types.js';

const unread = signal(0);

/** Counts again what is not read yet. Should the service be away, the page itself says so. */
export const countUnread = (): Promise<boolean> =>
  attempt(
    () => undefined,
    async () => {
      unread.value = (await call<NoticesPageOf>('GET', '/notices?unread=true&limit=1')).unread;
    },
  );

/** In the head of every page: how many notices are not read yet. */
export function Bell() {
  useEffect(() => void countUnread(), []);
  useLive(['notices'], () => void countUnread());
  const count = unread.value;
  return (
    <span class={count > 0 ? 'bell waiting' : 'bell'}>
      <Link to="/notices">
        <svg viewBox="0 0 24 24" aria-hidden="true">
          <path d="M5 17V11a7 7 0 0 1 14 0v6" />
          <path d="M3 17h18" />
          <circle cx="12" cy="20.5" r="1.7" />
        </svg>
        <span class="unseen">Notices</span>
        {count > 0 && (
          <span class="count">
            {count > 99 ? '99+' : count}
            <span class="unseen">not read yet</span>
          </span>
        )}
      </Link>
    </span>
  );
}
