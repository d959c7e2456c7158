import { useEffect, useRef, useState } from 'preact/hooks';
import { ApiProblem, call } from '../api/client.js';
import type { Booking, Me } from '../api/types.js';
import { spanIn } from '../parts/time.js';
import { formOf, lighter } from './photos.js';
import { SimilarList } from './similar-list.js';
import type { Aircraft, Equipment, Similar, Squawk } from './types.js';
import { Refusal } from '../parts/refusal.js';

const MOST_PHOTOS = 6;
/** Rest after the last key before similar squawks are looked for. */
const PAUSE_MS = 400;

interface Props {
  me: Me;
  aircraft: Aircraft;
  equipment: Equipment[];
  flights: Booking[];
  reported(): void;
}

/** What is wrong, for whoever flew. */
export function ReportForm({ me, aircraft, equipment, flights, reported }: Props) {
  const [title, setTitle] = useState('');
  const [detail, setDetail] = useState('');
  const [equipmentId, setEquipmentId] = useState('');
  const [bookingId, setBookingId] = useState('');
  const [files, setFiles] = useState<File[]>([]);
  const [similar, setSimilar] = useState<Similar['items']>([]);
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const [done, setDone] = useState<string | null>(null);
  const chooser = useRef<HTMLInputElement>(null);
  const at = `/aircraft/${aircraft.id}/squawks`;
  const named = { title, detail, equipmentId: equipmentId || null };

  useEffect(() => {
    if (title.trim().length < 4) return setSimilar([]);
    let current = true;
    const timer = setTimeout(() => {
      call<Similar>('POST', `${at}/similar`, named).then(
        ({ items }) => current && setSimilar(items),
        // Only a help: the report itself says what is wrong with it.
        () => current && setSimilar([]),
      );
    }, PAUSE_MS);
    return () => {
      current = false;
      clearTimeout(timer);
    };
  }, [aircraft.id, title, detail, equipmentId]);

  const send = async () => {
    setBusy(true);
    setProblem(null);
    setDone(null);
    try {
      const squawk = await call<Squawk>('POST', at, { ...named, bookingId: bookingId || null });
      const refused = await sendPhotos(`${at}/${squawk.id}/attachments`, files);
      setDone(`Reported: “${squawk.title}”. The maintenance coordinator sees it now.`);
      if (refused.length > 0) setProblem(`The report is in, but not every photo: ${refused.join(' ')}`);
      for (const clear of [setTitle, setDetail, setEquipmentId, setBookingId]) clear('');
      setFiles([]);
      if (chooser.current) chooser.current.value = '';
      reported();
    } catch (error) {
      if (!(error instanceof ApiProblem)) throw error;
      setProblem(error.problem.detail);
    } finally {
      setBusy(false);
    }
  };

  return (
    <form
      class="report"
      aria-labelledby="report-title"
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <h3 id="report-title">Something wrong with {aircraft.registration}?</h3>
      <label>
        What is wrong, in a few words
        <input
          required
          maxLength={200}
          value={title}
          onInput={(event) => setTitle(event.currentTarget.value)}
        />
      </label>
      <SimilarList items={similar} zone={me.club.zone} />
      <label>
        When it shows, what you tried
        <textarea
          rows={3}
          maxLength={4000}
          value={detail}
          onInput={(event) => setDetail(event.currentTarget.value)}
        />
      </label>
      <label>
        What it is about, if you know
        <select value={equipmentId} onChange={(event) => setEquipmentId(event.currentTarget.value)}>
          <option value="">Not sure, or nothing on this list</option>
          {equipment.map((one) => (
            <option key={one.id} value={one.id}>
              {one.name}
            </option>
          ))}
        </select>
      </label>
      {flights.length > 0 && (
        <label>
          Found on this flight
          <select value={bookingId} onChange={(event) => setBookingId(event.currentTarget.value)}>
            <option value="">None of mine</option>
            {flights.map((one) => (
              <option key={one.id} value={one.id}>
                {spanIn(me.club.zone, one.departs, one.arrives)}
              </option>
            ))}
          </select>
        </label>
      )}
      <label>
        Photos, up to {MOST_PHOTOS} <small>(where they were taken is not kept)</small>
        <input
          ref={chooser}
          type="file"
          accept="image/jpeg,image/png,image/webp"
          capture="environment"
          multiple
          onChange={(event) => setFiles([...(event.currentTarget.files ?? [])].slice(0, MOST_PHOTOS))}
        />
      </label>
      <Refusal problem={problem} />
      <p class="hint" role="status">
        {done ?? ''}
      </p>
      <button class="main" disabled={busy}>
        {busy ? 'Sending…' : 'Report it'}
      </button>
      <p class="hint">
        In the air, fly the aircraft first. Before the next flight the pilot in command decides whether it is
        safe.
      </p>
    </form>
  );
}

/** Sends one after the other; what is refused is told, and does not keep back the rest. */
async function sendPhotos(at: string, files: readonly File[]): Promise<string[]> {
  const refused: string[] = [];
  for (const file of files) {
    try {
      await call('POST', at, formOf(await lighter(file)));
    } catch (error) {
      if (!(error instanceof ApiProblem)) throw error;
      refused.push(`${file.name}: ${error.problem.detail}`);
    }
  }
  return refused;
}
