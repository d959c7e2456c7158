import { pastedReports } from './pasted.js';
import { instantIn, now, plusDays, today } from '../parts/time.js';

/** What the sentence says; texts as the inputs hold them. */
export interface FlightForm {
  /** Who flies; '' is whoever asks. */
  memberId: string;
  purpose: 'solo' | 'passengers' | 'dual' | 'checkout';
  passengers: number;
  instructorId: string;
  date: string;
  from: string;
  to: string;
  landings: string[];
  flightRules: 'VFR' | 'IFR';
  row1Lb: string;
  row2Lb: string;
  row3Lb: string;
  baggage1Lb: string;
  baggage2Lb: string;
  fuelUsGal: string;
  plannedHours: string;
  /** Reports and forecasts, pasted as they are. */
  reports: string;
  windFromDeg: string;
  windKt: string;
  gustKt: string;
  visibilitySm: string;
  ceilingFtAgl: string;
  temperatureC: string;
  altimeterInHg: string;
  wet: YesNo;
  maxAltitudeFtMsl: string;
  airspace: string[];
  usesVor: YesNo;
  usesTransponder: YesNo;
}

/** '' is not said: unknown, never assumed. */
export type YesNo = '' | 'yes' | 'no';

/** Tomorrow afternoon, alone, there and back. */
export const firstForm = (zone: string): FlightForm => ({
  memberId: '',
  purpose: 'passengers',
  passengers: 2,
  instructorId: '',
  date: plusDays(today(zone), 1),
  from: '13:00',
  to: '15:00',
  landings: [],
  flightRules: 'VFR',
  row1Lb: '',
  row2Lb: '',
  row3Lb: '',
  baggage1Lb: '',
  baggage2Lb: '',
  fuelUsGal: '',
  plannedHours: '',
  reports: '',
  windFromDeg: '',
  windKt: '',
  gustKt: '',
  visibilitySm: '',
  ceilingFtAgl: '',
  temperatureC: '',
  altimeterInHg: '',
  wet: '',
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
      ...(form.memberId === '' ? {} : { memberId: form.memberId }),
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

/** Weights by row or compartment; what is empty before the last that is said counts nothing. */
function inTurn(...texts: string[]): number[] | undefined {
  const last = texts.findLastIndex((text) => text.trim() !== '');
  return last === -1 ? undefined : texts.slice(0, last + 1).map((text) => number(text) ?? 0);
}

/** What the member said beyond the sentence; fields left empty are left out. */
function details(form: FlightForm): object {
  const weather = said({
    windFromDeg: number(form.windFromDeg),
    windKt: number(form.windKt),
    gustKt: number(form.gustKt),
    visibilitySm: number(form.visibilitySm),
    ceilingFtAgl: number(form.ceilingFtAgl),
    temperatureC: number(form.temperatureC),
    altimeterInHg: number(form.altimeterInHg),
    wet: yesNo(form.wet),
  });
  return (
    said({
      loading: said({
        rowsLb: inTurn(form.row1Lb, form.row2Lb, form.row3Lb),
        compartmentsLb: inTurn(form.baggage1Lb, form.baggage2Lb),
        fuelUsGal: number(form.fuelUsGal),
      }),
      reports: pastedReports(form.reports) ?? undefined,
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
