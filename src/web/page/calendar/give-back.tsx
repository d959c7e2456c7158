import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Booking, Series } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { TextInput } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';

/** Gives a flight back, or it and those after it. */
export function GiveBack({
  booking,
  done,
  keep,
}: {
  booking: Booking;
  done: () => Promise<void>;
  keep: () => void;
}) {
  const [reason, setReason] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const said = reason.trim() === '' ? {} : { reason };
  const one = () =>
    attempt(setProblem, async () => {
      await call('POST', `/bookings/${booking.id}/cancel`, said, { 'If-Match': `"${booking.rowVersion}"` });
      await done();
    });
  const following = () =>
    attempt(setProblem, async () => {
      const body = { ...said, fromBookingId: booking.id };
      const { occurrences } = await call<Series>('POST', `/booking-series/${booking.seriesId}/cancel`, body);
      const left = occurrences.find((each) => each.problem !== null);
      if (left) return setProblem(left.problem!.detail);
      await done();
    });
  return (
    <div class="act">
      <TextInput label="Why (the club asks when it is late)" value={reason} set={setReason} max={500} />
      <Refusal problem={problem} />
      <span class="sure">
        <button class="quiet danger" onClick={() => void one()}>
          Give it back
        </button>
        {booking.seriesId !== null && (
          <button class="quiet danger" onClick={() => void following()}>
            This and all after it
          </button>
        )}
        <button class="quiet" onClick={keep}>
          Keep it
        </button>
      </span>
    </div>
  );
}
