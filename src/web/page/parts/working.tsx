import { useEffect, useState } from 'preact/hooks';

/** What a short answer takes: nothing is shown for it, so that nothing flickers. */
const SOON_MS = 400;

/**
 * Work that may take a while: what is done, that it goes on, and for how long. Said once to who listens; the seconds are for who
 * looks.
 *
 * @param what   in words, such as 'Reading who lapses next'
 * @param atMost seconds after which it ends by itself, if it does
 */
export function Working({ what, atMost }: { what: string; atMost?: number }) {
  const [shown, setShown] = useState(false);
  const [seconds, setSeconds] = useState(0);
  useEffect(() => {
    const begin = setTimeout(() => setShown(true), SOON_MS);
    const tick = setInterval(() => setSeconds((was) => was + 1), 1000);
    return () => {
      clearTimeout(begin);
      clearInterval(tick);
    };
  }, []);
  return (
    <div class="working" role="status">
      {shown && (
        <>
          <span>{what}…</span>
          <progress aria-label={what} />
          <span aria-hidden="true">
            {seconds} s{atMost !== undefined && ` of at most ${atMost}`}
          </span>
        </>
      )}
    </div>
  );
}
