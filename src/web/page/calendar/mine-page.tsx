import { useEffect, useRef } from 'preact/hooks';
import type { Me } from '../api/types.js';
import { OverdueAlerts } from '../flights/overdue.js';
import { Displaced } from './displaced.js';
import { MyFlights } from './my-flights.js';
import { StandingAnswers } from './standing.js';

/** What the member has booked, with all that is to be known of it, on a page of its own: nothing to ask stands before it. */
export function MinePage({ me }: { me: Me }) {
  const page = useRef<HTMLElement>(null);
  useEffect(() => page.current?.focus(), []);
  return (
    <main ref={page} tabIndex={-1} class="page mine" aria-label="My flights">
      <Displaced me={me} />
      <OverdueAlerts me={me} />
      <StandingAnswers me={me} />
      <MyFlights me={me} />
    </main>
  );
}
