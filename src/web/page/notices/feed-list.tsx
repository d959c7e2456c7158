import { useEffect, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Choice } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { all } from '../session/session.js';
import type { Feed } from './types.js';

const SHOWS: readonly (readonly [Feed['shows'], string])[] = [
  ['own', 'my flights'],
  ['aircraft', 'one aircraft'],
  ['club', 'the whole club'],
];

/** Addresses by which a calendar program reads bookings. */
export function FeedList() {
  const [feeds, setFeeds] = useState<Feed[]>([]);
  const [aircraft, setAircraft] = useState<{ id: string; registration: string }[]>([]);
  const [shows, setShows] = useState<Feed['shows']>('own');
  const [aircraftId, setAircraftId] = useState('');
  const [made, setMade] = useState<{ id: string; title: string; address: string } | null>(null);
  const [copied, setCopied] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const reread = async () => setFeeds((await call<{ items: Feed[] }>('GET', '/feeds')).items);
  useEffect(() => {
    void attempt(setProblem, async () => {
      await reread();
      const found = await all<{ id: string; registration: string }>('/aircraft');
      setAircraft(found);
      setAircraftId(found[0]?.id ?? '');
    });
  }, []);
  const make = () =>
    attempt(setProblem, async () => {
      const body = { shows, ...(shows === 'aircraft' ? { aircraftId } : {}) };
      setMade(await call('POST', '/feeds', body));
      setCopied(false);
      await reread();
    });
  const takeBack = (id: string) =>
    attempt(setProblem, async () => {
      await call('DELETE', `/feeds/${id}`);
      if (made?.id === id) setMade(null);
      await reread();
    });
  return (
    <section aria-labelledby="calendar">
      <h3 id="calendar">In your calendar</h3>
      <p class="hint">
        A calendar program reads bookings from an address of your own. Whoever has the address reads them,
        too: take it back when it has got about.
      </p>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void make();
        }}
      >
        <Choice label="It shows" value={shows} set={setShows} of={SHOWS} />
        {shows === 'aircraft' && (
          <Choice
            label="Aircraft"
            value={aircraftId}
            set={setAircraftId}
            of={aircraft.map(({ id, registration }) => [id, registration] as const)}
          />
        )}
        <button class="main">Make an address</button>
      </form>
      <Refusal problem={problem} />
      <div role="status">
        {made && (
          <div class="address">
            <label>
              Address of “{made.title}”, shown this once
              <input readOnly value={made.address} onFocus={(event) => event.currentTarget.select()} />
            </label>
            <button
              class="quiet"
              onClick={() => void navigator.clipboard.writeText(made.address).then(() => setCopied(true))}
            >
              {copied ? 'Copied' : 'Copy it'}
            </button>
          </div>
        )}
      </div>
      {feeds.length > 0 && (
        <ul class="feeds">
          {feeds.map(({ id, title, shows: what }) => (
            <li key={id}>
              <span>
                <strong>{title}</strong> ({SHOWS.find(([name]) => name === what)![1]})
              </span>
              <button
                class="quiet danger"
                aria-label={`Take back ${title}`}
                onClick={() => void takeBack(id)}
              >
                Take back
              </button>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
