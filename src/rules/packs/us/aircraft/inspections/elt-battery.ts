import { itemsInForce } from '../../../common/items/in-force.js';
import { addDays, daysBetween, type LocalDate } from '../../../../calendar/dates.js';
import { defineRule } from '../../../../engine/rule.js';
import { need } from '../../../../engine/unknown.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Remedy } from '../../../../engine/remedy.js';
import type { ItemDetail, ItemFact } from '../../../../facts/aircraft.js';
import { batteryThrough } from '../../../common/items/due.js';
import { signedFields } from '../../../common/items/signed-fields.js';
import { signingDay } from './calendar-inspection.js';
import { ELT_PARAMETERS, ELT_READS, eltException, neverNeedsElt } from './elt-need.js';

/**
 * 14 CFR 91.207(c): the battery is replaced after more than one cumulative hour of use, or when half of its useful life
 * is spent. The date marked on the transmitter governs; without it the calendar midpoint of the useful life is taken.
 */
export const eltBattery = defineRule({
  id: 'elt.battery',
  title: 'ELT battery',
  weight: 'law',
  binds: 'aircraft',
  reads: ['aircraft.items', ...ELT_READS],
  parameters: ['us.elt.battery-use-minutes', 'us.elt.battery-life-parts', ...ELT_PARAMETERS],
  branches: {
    'not-needed': { status: 'not-applicable', says: 'No ELT is needed: {because}.' },
    good: { status: 'met', says: 'ELT battery good through {through} ({basis}), {minutes} minutes used.' },
    excepted: { status: 'met', says: 'The ELT battery is due ({why}), but no ELT is needed: {because}.' },
    due: { status: 'short', says: 'The ELT battery is to be replaced: {why}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.207(c), (e), (f)',
        status: 'seen',
        reading:
          'The date marked on the transmitter governs; without one, the calendar midpoint of the useful life, that ' +
          'day included. Exactly one hour of use is allowed.',
      },
      judge(f, moment, p, take) {
        const because = neverNeedsElt(f.get('aircraft.type'));
        if (because !== null) return take('not-needed', { because });
        const most = p.number('us.elt.battery-use-minutes');
        const parts = p.number('us.elt.battery-life-parts');
        const item = need(
          newestBattery(itemsInForce(f, moment), moment),
          'aircraft.items',
          'no ELT battery is on record for the aircraft',
        );
        const detail = need(item.detail, 'aircraft.items', 'the ELT battery has no record of dates and use');
        const through = need(
          batteryThrough(detail, parts),
          'aircraft.items',
          'neither the date marked on the ELT nor the useful life of its battery is on record',
        );
        const minutes = need(
          detail.eltUseMinutes,
          'aircraft.items',
          'how long the ELT battery has been in use is not on record',
        );
        const marked = detail.eltBatteryReplaceOn !== undefined;
        const basis = marked ? 'as marked on it' : 'half of its useful life';
        const counted = [{ id: item.id, on: item.lastDoneOn, what: `battery good through ${through}` }];
        const worn = minutes > most;
        if (!worn && moment.endsOnOrBefore(through))
          return take('good', { through, basis, minutes }, { counted });
        const why = worn
          ? `${minutes} minutes used, more than ${most}`
          : `good through ${through} only, ${basis}`;
        const exception = eltException(f, moment, p);
        if (exception) {
          const { conditions } = exception;
          return take('excepted', { why, because: exception.because }, { counted, conditions });
        }
        return take('due', { why }, { counted, remedies: () => replaceBattery(item, detail, parts, moment) });
      },
    },
  ],
});

/** The battery installed last before the flight; of two on one day the one used more, by id where nothing else tells them apart. */
function newestBattery(items: readonly ItemFact[], moment: Moment): ItemFact | undefined {
  const on = (item: ItemFact): LocalDate => item.lastDoneOn ?? item.detail?.eltBatteryNewOn ?? '';
  const used = (item: ItemFact): number => item.detail?.eltUseMinutes ?? Number.POSITIVE_INFINITY;
  return items
    .filter((item) => item.kind === 'elt-battery' && (on(item) === '' || moment.startsOnOrAfter(on(item))))
    .sort((a, b) => {
      if (on(a) !== on(b)) return on(a) < on(b) ? 1 : -1;
      if (used(a) !== used(b)) return used(a) < used(b) ? 1 : -1;
      return a.id < b.id ? -1 : 1;
    })[0];
}

/** Days the battery of a hypothetical replacement lasts where that of the old one is not known. */
const LIFE_NOT_KNOWN_DAYS = 365;

/** A fresh battery with the life of the old one, or a year where that is not known. */
function replaceBattery(item: ItemFact, old: ItemDetail, parts: number, moment: Moment): Remedy[] {
  const { eltBatteryNewOn, eltBatteryUsefulLifeEndsOn } = old;
  const life =
    eltBatteryNewOn && eltBatteryUsefulLifeEndsOn
      ? Math.floor(daysBetween(eltBatteryNewOn, eltBatteryUsefulLifeEndsOn) / parts)
      : LIFE_NOT_KNOWN_DAYS;
  const on = signingDay(moment, (day) => addDays(day, life));
  if (on === null) return [];
  const detail: ItemDetail = {
    eltBatteryReplaceOn: addDays(on, life),
    eltBatteryNewOn: on,
    eltUseMinutes: 0,
  };
  return [
    {
      act: 'replace-elt-battery',
      title: 'Have the ELT battery replaced.',
      by: 'mechanic',
      effects: [
        {
          op: 'amend',
          fact: 'aircraft.items',
          id: item.id,
          fields: { ...signedFields('replace-elt-battery', on, null), detail },
        },
      ],
    },
  ];
}
