/**
 * Where the reader is. Addresses of pages are the page's own (the service gives it for each); what is open on one stands
 * behind a `#`, since the ids of rules have dots and an address that ends in one is taken for a file.
 */
import { signal } from '@preact/signals';

const here = () => ({ path: location.pathname, part: partOf(location.hash.slice(1)) });

/** An address may be cut off in the middle of an escaped sign: then nothing is open. */
function partOf(hash: string): string {
  try {
    return decodeURIComponent(hash);
  } catch {
    return '';
  }
}

export const place = signal(here());

window.addEventListener('popstate', () => {
  place.value = here();
});

/** Goes to another page without asking the service for it; `stay` keeps the place on the page and in the history. */
export function go(to: string, where: 'top' | 'stay' = 'top'): void {
  if (where === 'stay') history.replaceState(null, '', to);
  else history.pushState(null, '', to);
  place.value = here();
  if (where === 'top') scrollTo(0, 0);
}
