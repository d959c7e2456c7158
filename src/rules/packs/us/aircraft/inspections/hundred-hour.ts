import { defineRule, type FactView } from '../../../../engine/rule.js';
import { need } from '../../../../engine/unknown.js';
import { hundredHourDue } from '../../../common/items/due.js';
import { hours, projectionConditions, projectMeter } from '../../../common/items/meter.js';
import { ferried } from '../../../common/permits/permit-flight.js';
import { doneBefore } from './calendar-inspection.js';
import { inspectionsCounted } from './inspections-counted.js';
import { PROGRAMME_MONTHS } from './programme.js';
import { shorten, sign, withoutInstruction } from './hundred-hour-remedies.js';

type Bound = FactView<'aircraft.use'>;

/**
 * Does 14 CFR 91.409(b) bind this flight? Persons carried for hire; instruction for hire in an aircraft the club
 * provides; and, strictly, a ferry to the inspection of an aircraft in such use: it is the flight the overrun is for.
 */
export function hundredHourBinds(f: Bound): boolean {
  if (f.flight.forHire) return true;
  const use = f.get('aircraft.use');
  if (f.crew.instruction) return use.instructionForHire;
  return f.flight.purpose === 'ferry-to-inspection' && (use.instructionForHire || use.carriesForHire);
}

/**
 * 14 CFR 91.409(b): within the preceding 100 hours of time in service an annual or 100-hour inspection. It may be
 * exceeded by 10 hours at most, only on the way to the inspection, and the excess counts against the next 100 hours. A progressive
 * programme takes its place (91.409(c)(3)), and after it the last complete inspection counts as one (91.409(d)).
 */
export const hundredHourInspection = defineRule({
  id: 'inspection.hours_100',
  title: '100-hour inspection',
  weight: 'law',
  binds: 'aircraft',
  reads: ['aircraft.use', 'aircraft.items', 'aircraft.meters', 'aircraft.reservations', 'aircraft.permits'],
  parameters: [
    'us.inspection.hundred-hour.hours',
    'us.inspection.hundred-hour.overrun-hours',
    PROGRAMME_MONTHS,
  ],
  branches: {
    'under-programme': {
      status: 'not-applicable',
      says: 'The aircraft is inspected by a progressive programme, which takes the place of the 100-hour inspection.',
    },
    'not-for-hire': {
      status: 'not-applicable',
      says: 'Nobody is carried or taught for hire, so no 100-hour inspection is needed.',
    },
    within: {
      status: 'met',
      says: 'The meter will read {end} h after the flight{between}; the inspection is due at {due} h.',
    },
    'overrun-on-the-way': {
      status: 'met',
      says: 'The meter will read {end} h, past {due} h, on the way to the inspection; {over} h of the {margin} h allowed.',
    },
    'under-permit': {
      status: 'met',
      says: 'The inspection is due at {due} h and the meter will read {end} h; a special flight permit covers the ferry.',
    },
    'permit-crew-only': {
      status: 'short',
      says: 'The inspection is due at {due} h, the meter will read {end} h, and a permit carries nobody but required crew.',
    },
    over: {
      status: 'short',
      says: 'The meter will read {end} h after the flight{between}, past the inspection due at {due} h.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.409(b), (c)(3) and (d)',
        status: 'seen',
        reading:
          'A flight that ends exactly at the limit is allowed. A ferry of an aircraft used for hire or provided ' +
          'instruction is held to the 10-hour margin even if nobody on it pays.',
      },
      judge(f, moment, p, take) {
        if (!hundredHourBinds(f)) return take('not-for-hire');
        const items = inspectionsCounted(f, moment, p);
        if (items === null) return take('under-programme');
        const interval = Math.round(p.number('us.inspection.hundred-hour.hours') * 10);
        const due = need(
          hundredHourDue(doneBefore(items, moment), interval),
          'aircraft.items',
          'neither an annual nor a 100-hour inspection is on record with its hours',
        );
        const projection = projectMeter(f, moment);
        const margin = Math.round(p.number('us.inspection.hundred-hour.overrun-hours') * 10);
        const over = projection.atEnd - due.throughTenths;
        const values = {
          end: hours(projection.atEnd),
          due: hours(due.throughTenths),
          between: projection.between > 0 ? ` (${hours(projection.between)} h of it booked before)` : '',
          over: hours(Math.max(0, over)),
          margin: hours(margin),
        };
        const last = due.from;
        const counted = [
          { id: last.id, on: last.lastDoneOn, what: `${last.title}, good through ${values.due} h` },
          ...projection.counted,
        ];
        if (over <= 0) {
          const conditions = projectionConditions(projection, due.throughTenths);
          return take('within', values, { counted, conditions });
        }
        const ferry = f.flight.purpose === 'ferry-to-inspection';
        if (ferry && over <= margin) {
          const conditions = [
            'Fly straight to the inspection; the hours over it count against the next interval.',
            ...projectionConditions(projection, due.throughTenths + margin),
          ];
          return take('overrun-on-the-way', values, { counted, conditions });
        }
        const cures = () => [
          ...sign(items, moment, projection, { dueTenths: due.throughTenths, interval, margin }),
          ...shorten(projection, due.throughTenths + (ferry ? margin : 0)),
          ...withoutInstruction(f),
        ];
        const { branch, ...told } = ferried(f, moment, cures);
        return take(branch ?? 'over', values, { counted, ...told });
      },
    },
  ],
});
