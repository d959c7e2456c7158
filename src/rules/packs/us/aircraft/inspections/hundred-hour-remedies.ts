/** Ways to a flight that the 100-hour inspection stands in the way of. */
import type { Moment } from '../../../../engine/moment.js';
import type { Remedy } from '../../../../engine/remedy.js';
import type { FactView } from '../../../../engine/rule.js';
import type { ItemFact } from '../../../../facts/aircraft.js';
import { hours, type Projection } from '../../../common/items/meter.js';
import { signedFields } from '../../../common/items/signed-fields.js';

/**
 * Has the inspection done now. Hours over the limit that could have been flown on the way to it are owed back; more than
 * the margin cannot have been, and were own flying. It cures only when bookings and flight fit into the new interval.
 */
export function sign(
  items: readonly ItemFact[],
  moment: Moment,
  projection: Projection,
  of: { dueTenths: number; interval: number; margin: number },
): Remedy[] {
  const today = moment.knowledgeDate();
  const over = projection.now - of.dueTenths;
  const owed = over > 0 && over <= of.margin;
  const base = owed ? of.dueTenths : projection.now;
  if (!moment.startsOnOrAfter(today) || projection.atEnd > base + of.interval) return [];
  const item = items.filter((one) => one.kind === 'hours-100').sort((a, b) => (a.id < b.id ? -1 : 1))[0];
  const fields: Partial<ItemFact> = {
    ...signedFields('sign-100-hour', today, projection.now),
    lastDueTenths: owed ? of.dueTenths : null,
  };
  // Where no 100-hour inspection is on record, the hours were counted from an annual.
  const fresh = (): ItemFact => ({
    ...items.find((one) => one.kind === 'annual')!,
    id: 'planned:sign-100-hour',
    kind: 'hours-100',
    title: '100-hour inspection',
    ...{ since: null, retiredOn: null },
    ...fields,
  });
  return [
    {
      act: 'sign-100-hour',
      title: 'Have the 100-hour inspection done and signed.',
      by: 'mechanic',
      effects: [
        item
          ? { op: 'amend', fact: 'aircraft.items', id: item.id, fields }
          : { op: 'append', fact: 'aircraft.items', value: fresh() },
      ],
    },
  ];
}

/** Flies no longer than what is left. */
export function shorten(projection: Projection, throughTenths: number): Remedy[] {
  const left = throughTenths - projection.now - projection.between;
  if (left <= 0) return [];
  return [
    {
      act: 'shorten-flight',
      title: `Keep the flight to ${hours(left)} h on the meter.`,
      by: 'member',
      effects: [{ op: 'flight', fields: { plannedTenths: left } }],
    },
  ];
}

/** Own flying needs no 100-hour inspection; a checkout is nothing without its instructor. */
export function withoutInstruction(f: Pick<FactView, 'flight'>): Remedy[] {
  if (f.flight.purpose !== 'dual' || f.flight.forHire) return [];
  const personsOnBoard = Math.max(1, f.flight.personsOnBoard - 1);
  return [
    {
      act: 'fly-without-instruction',
      title: 'Fly without instruction.',
      by: 'member',
      effects: [
        {
          op: 'flight',
          fields: {
            purpose: personsOnBoard === 1 ? 'solo' : 'passengers',
            instructorId: null,
            personsOnBoard,
          },
        },
      ],
    },
  ];
}
