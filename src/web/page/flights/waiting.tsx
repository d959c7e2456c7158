import { sending, sendKept, type KeptReturn } from './kept-returns.js';

/** A return that is on its way: where it is kept, and what happens next. */
export function Waiting({ of }: { of: KeptReturn }) {
  const now = sending.value === of.bookingId;
  return (
    <div class="out waiting-return" role="status">
      <p>
        <strong>{now ? 'Sending the return…' : 'The return is not answered yet.'}</strong>{' '}
        {of.tries > 0 && !now && `Tried ${of.tries} ${of.tries === 1 ? 'time' : 'times'}. `}
        It is kept in this browser and sent again by itself until an answer comes, also after this page was
        closed and opened again. It is written once, however often it is sent.
      </p>
      {!now && (
        <button type="button" class="quiet" onClick={() => sendKept(of.memberId)}>
          Try now
        </button>
      )}
    </div>
  );
}
