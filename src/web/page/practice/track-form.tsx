import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { TrackProposals } from './track-proposals.js';
import type { TrackReading } from './types.js';

/** A recorded track, looked at before anything of it is entered. */
export function TrackForm({ at, zone, entered }: { at: string; zone: string; entered: () => void }) {
  const [reading, setReading] = useState<TrackReading | null>(null);
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const [done, setDone] = useState<string | null>(null);
  const read = async (file: File) => {
    setBusy(true);
    setDone(null);
    setReading(null);
    await attempt(setProblem, async () => {
      const form = new FormData();
      form.append('track', file, 'track.gpx');
      setReading(await call<TrackReading>('POST', `${at}/track`, form));
    });
    setBusy(false);
  };
  return (
    <section aria-labelledby="track">
      <h3 id="track">From a recorded track</h3>
      <label>
        GPX file of one flight
        <input
          type="file"
          accept=".gpx,application/gpx+xml"
          disabled={busy}
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            if (file) void read(file);
          }}
        />
      </label>
      <p class="hint">Nothing is stored before you have looked at it and chosen.</p>
      {busy && <p role="status">Reading the track…</p>}
      <Refusal problem={problem} />
      {reading && (
        <TrackProposals
          key={reading.trackSha256}
          at={at}
          zone={zone}
          reading={reading}
          entered={(words) => {
            setReading(null);
            setDone(words);
            entered();
          }}
        />
      )}
      {done && <p role="status">{done}</p>}
    </section>
  );
}
