import { instantIn, now, plusDays, today } from '../parts/time.js';

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
  windFromDeg: string;
  windKt: string;
  gustKt: string;
  visibilitySm: string;
  ceilingFtAgl: string;
  maxAltitudeFtMsl: string;
  airspace: string[];
  usesVor: YesNo;
  usesTransponder: YesNo;
}

/** '' is not said: unknown, never assumed. */
export type YesNo = '' | 'yes' | 'no';

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
  windFromDeg: '',
  windKt: '',
  gustKt: '',
  visibilitySm: '',
  ceilingFtAgl: '',
  maxAltitudeFtMsl: '',
  airspace: [],
  usesVor: '',
  usesTransponder: '',
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
  return {
    request: {
      departs,
      arrives,
      purpose: form.purpose,
      personsOnBoard: form.purpose === 'solo' ? 1 : instruction ? 2 : 1 + form.passengers,
      flightRules: form.flightRules,
      ...(instruction && form.instructorId ? { instructorId: form.instructorId } : {}),
      ...(form.landings.length > 0 ? { landings: form.landings } : {}),
      ...details(form),
    },
  };
}

const number = (text: string): number | undefined => (text.trim() === '' ? undefined : Number(text));
const yesNo = (value: YesNo): boolean | undefined => (value === '' ? undefined : value === 'yes');

/** What the member said beyond the sentence; fields left empty are left out. */
function details(form: FlightForm): object {
  const weather = said({
    windFromDeg: number(form.windFromDeg),
    windKt: number(form.windKt),
    gustKt: number(form.gustKt),
    visibilitySm: number(form.visibilitySm),
    ceilingFtAgl: number(form.ceilingFtAgl),
  });
  return (
    said({
      loading: said({
        occupantsLb: number(form.occupantsLb),
        baggageLb: number(form.baggageLb),
        fuelUsGal: number(form.fuelUsGal),
      }),
      weather: weather && { observedAt: now(), ...weather },
      plannedHours: number(form.plannedHours),
      maxAltitudeFtMsl: number(form.maxAltitudeFtMsl),
      airspace: form.airspace.length > 0 ? form.airspace : undefined,
      usesVor: yesNo(form.usesVor),
      usesTransponder: yesNo(form.usesTransponder),
    }) ?? {}
  );
}

/** The fields that have a value; undefined when none has. */
function said<T extends object>(fields: T): Partial<T> | undefined {
  const entries = Object.entries(fields).filter(([, value]) => value !== undefined);
  return entries.length > 0 ? (Object.fromEntries(entries) as Partial<T>) : undefined;
}
