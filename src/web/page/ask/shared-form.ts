/** The flight of the first page, as other pages read it and start it. */
import { signal } from '@preact/signals';
import { firstForm, type FlightForm } from './flight.js';

/** What the form holds now; null until the page has been shown. */
export const lastForm = signal<FlightForm | null>(null);

/** That form for whoever is signed in: elsewhere everybody asks for themselves. */
export const ownForm = (zone: string): FlightForm => ({
  ...(lastForm.value ?? firstForm(zone)),
  memberId: '',
});

/** A time in an aircraft that somebody pointed at elsewhere; the first page takes it up. */
export const startAsk = signal<
  | (Pick<FlightForm, 'date' | 'from' | 'to'> & { aircraft: { id: string; registration: string } | null })
  | null
>(null);
