import { momentIn, now, spanIn } from '../parts/time.js';
import type { Entry } from './types.js';

interface Props {
  entry: Entry;
  zone: string;
  answer(path: string, words: string, headers?: Record<string, string>): Promise<unknown>;
}

/** An entry: what is offered for it and until when, or how many wait longer. */
export function EntryItem({ entry, zone, answer }: Props) {
  const { id, departs, arrives, registration, rowVersion } = entry;
  const span = spanIn(zone, departs, arrives);
  const offer = entry.offer?.state === 'open' && entry.offer.expiresAt > now() ? entry.offer : null;
  const waits = entry.state === 'waiting';
  return (
    <li class={offer ? 'offered' : ''}>
      <p>
        <strong>{span}</strong> in {registration ?? 'any aircraft that will do'}
      </p>
      {offer && waits ? (
        <>
          <p>
            <strong>{offer.registration}</strong> is offered to you until {momentIn(zone, offer.expiresAt)}
            {offer.holds ? ', and kept for you until then.' : '. It is not kept: who books first has it.'}
          </p>
          <p class="actions">
            <button
              class="main"
              onClick={() =>
                void answer(
                  `/standby/offers/${offer.id}/accept`,
                  `${offer.registration} is booked for ${span}.`,
                )
              }
            >
              Take it
            </button>
            <button
              class="quiet"
              onClick={() =>
                void answer(`/standby/offers/${offer.id}/decline`, 'Left to the next who waits.')
              }
            >
              Leave it to the next
            </button>
          </p>
        </>
      ) : (
        <p class="hint">{stateSays(entry)}</p>
      )}
      {waits && (
        <button
          class="quiet"
          aria-label={`Wait no longer for ${span}`}
          onClick={() =>
            void answer(`/standby/${id}/withdraw`, 'You wait no longer.', { 'If-Match': `"${rowVersion}"` })
          }
        >
          Wait no longer
        </button>
      )}
    </li>
  );
}

function stateSays({ state, ahead, offer }: Entry): string {
  if (state === 'booked') return `Booked in ${offer?.registration ?? 'the aircraft'}.`;
  if (state !== 'waiting') return 'Over: nothing came free.';
  const last =
    offer?.state === 'declined'
      ? `You left ${offer.registration} to the next. `
      : offer?.state === 'expired' || offer?.state === 'open'
        ? `The offer of ${offer.registration} ran out. `
        : '';
  return `${last}Nothing is free yet. ${
    ahead === 0
      ? 'Nobody asked before you.'
      : `${ahead} ${ahead === 1 ? 'member' : 'members'} asked before you.`
  }`;
}
