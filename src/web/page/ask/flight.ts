import { plusDays, today, instantIn } from '../parts/time.js';

/** What the sentence says; texts as the inputs hold them. */
export interface FlightForm {
  purpose: 'solo' | 'passengers' | 'dual' | 'checkout';
  passengers: number;
  instructorId: string;
  date: string;
  from: string;
  to: string;
  landings: string[];
  flightRules: 'VFR' | 'IFR';
  occupantsLb: string;
  baggageLb: string;
  fuelUsGal: string;
  plannedHours: string;
}

/** Tomorrow afternoon, alone, there and back. */
export const firstForm = (zone: string): FlightForm => ({
  purpose: 'passengers',
  passengers: 2,
  instructorId: '',
  date: plusDays(today(zone), 1),
  from: '13:00',
  to: '15:00',
  landings: [],
  flightRules: 'VFR',
  occupantsLb: '',
  baggageLb: '',
  fuelUsGal: '',
  plannedHours: '',
});

/** The form as the API's request, or the field that cannot be read and why. */
export function toRequest(
  form: FlightForm,
  zone: string,
): { request: object } | { field: string; message: string } {
  const departs = instantIn(zone, form.date, form.from);
  const arrives = instantIn(zone, form.date, form.to);
  if (!form.date) return { field: 'date', message: 'Choose the day of the flight.' };
  if (!departs)
    return {
      field: 'from',
      message: `${form.from || 'This time'} does not exist once on that day: the clocks change. Choose another.`,
    };
  if (!arrives)
    return {
      field: 'to',
      message: `${form.to || 'This time'} does not exist once on that day: the clocks change. Choose another.`,
    };
  if (arrives <= departs) return { field: 'to', message: 'Be back after you leave: choose a later time.' };
  const instruction = form.purpose === 'dual' || form.purpose === 'checkout';
  const number = (text: string) => (text.trim() === '' ? undefined : Number(text));
  const loading = {
    occupantsLb: number(form.occupantsLb),
    baggageLb: number(form.baggageLb),
    fuelUsGal: number(form.fuelUsGal),
  };
  return {
    request: {
      departs,
      arrives,
      purpose: form.purpose,
      personsOnBoard: form.purpose === 'solo' ? 1 : instruction ? 2 : 1 + form.passengers,
      flightRules: form.flightRules,
      ...(instruction && form.instructorId ? { instructorId: form.instructorId } : {}),
      ...(form.landings.length > 0 ? { landings: form.landings } : {}),
      ...(Object.values(loading).some((value) => value !== undefined) ? { loading } : {}),
      ...(form.plannedHours.trim() === '' ? {} : { plannedHours: Number(form.plannedHours) }),
    },
  };
}
