import { itemsInForce } from '../../../common/items/in-force.js';
import { addDays } from '../../../../calendar/dates.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import type { Remedy } from '../../../../engine/remedy.js';
import { defineRule } from '../../../../engine/rule.js';
import { need } from '../../../../engine/unknown.js';
import type { ItemDetail, ItemFact } from '../../../../facts/aircraft.js';
import { CHANGE_TO_VFR } from '../../../common/shared/flight-changes.js';
import { doneBefore, signingDay, type DoneItem } from './calendar-inspection.js';

const TOLERANCE: Record<NonNullable<ItemDetail['vorMethod']>, string> = {
  'test-signal': 'us.vor-check.ground-degrees',
  'ground-checkpoint': 'us.vor-check.ground-degrees',
  'airborne-checkpoint': 'us.vor-check.airborne-degrees',
  'airborne-route': 'us.vor-check.airborne-degrees',
  dual: 'us.vor-check.dual-degrees',
};

/**
 * 14 CFR 91.171: to use VOR under IFR the equipment was checked within the preceding 30 days and found within limits,
 * and whoever checked it entered date, place and bearing error and signed. The pilot may do it, so what is not known
 * can be settled before departure.
 */
export const vorCheck = defineRule({
  id: 'check.vor_30_days',
  title: 'VOR check',
  weight: 'law',
  binds: 'flight',
  settledAt: 'departure',
  whenUnknown:
    'If you use VOR under IFR, make sure that its check (14 CFR 91.171) is recent enough, within limits, and entered with date, place, bearing error and signature.',
  reads: ['aircraft.items'],
  parameters: [
    'us.vor-check.days',
    'us.vor-check.ground-degrees',
    'us.vor-check.airborne-degrees',
    'us.vor-check.dual-degrees',
  ],
  branches: {
    'not-under-ifr': {
      status: 'not-applicable',
      says: 'The flight is not under IFR, so no VOR check is needed.',
    },
    'vor-unused': { status: 'not-applicable', says: 'VOR is not used, so no VOR check is needed.' },
    checked: { status: 'met', says: 'VOR checked {on} ({error} of {most} degrees), good through {through}.' },
    stale: { status: 'short', says: 'The VOR check is due: {last}.' },
    'out-of-limits': {
      status: 'short',
      says: 'The VOR check of {on} found {error} degrees, more than the {most} degrees allowed.',
    },
    'record-incomplete': {
      status: 'short',
      says: 'The entry for the VOR check of {on} does not show {missing}.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.171',
        status: 'seen',
        reading: 'Day 30 counts. The newest check governs, so a failed one undoes an earlier good one.',
      },
      judge(f, moment, p, take) {
        if (f.flight.flightRules !== 'IFR') return take('not-under-ifr');
        const uses = need(f.flight.usesVor, 'flight.usesVor', 'whether VOR will be used is not known');
        if (!uses) return take('vor-unused');
        const days = p.number('us.vor-check.days');
        const checks = itemsInForce(f, moment)
          .filter((item) => item.kind === 'vor-check')
          .sort((a, b) => (a.id < b.id ? -1 : 1));
        const first = need(checks[0], 'aircraft.items', 'no VOR check is on record for the aircraft');
        const check = newestCheck(checks, moment, p);
        const remedies = () => [...checkVor(check ?? first, days, moment), flyWithoutVor, CHANGE_TO_VFR];
        if (!check) return take('stale', { last: 'none is on record before the flight' }, { remedies });
        const on = check.lastDoneOn;
        const through = addDays(on, days);
        const counted = [{ id: check.id, on, what: `VOR check, good through ${through}` }];
        if (!moment.endsOnOrBefore(through)) {
          const last = `the last one, of ${on}, was good through ${through}`;
          return take('stale', { last }, { counted, remedies });
        }
        const missing = [
          ...(check.detail?.vorPlace ? [] : ['the place']),
          ...(check.detail?.vorSignedBy ? [] : ['who signed it']),
          ...(check.detail?.vorErrorDeg === undefined ? ['the bearing error'] : []),
          ...(check.detail?.vorMethod ? [] : ['how it was done']),
        ];
        if (missing.length > 0)
          return take('record-incomplete', { on, missing: missing.join(', ') }, { counted, remedies });
        const error = Math.abs(check.detail!.vorErrorDeg!);
        const most = p.number(TOLERANCE[check.detail!.vorMethod!]);
        if (error > most) return take('out-of-limits', { on, error, most }, { counted, remedies });
        return take('checked', { on, error, most, through }, { counted });
      },
    },
  ],
});

/** The newest check made by the time of the flight; of several on one day the worst. */
function newestCheck(checks: readonly ItemFact[], moment: Moment, p: Parameters): DoneItem | undefined {
  const excess = ({ detail }: ItemFact): number => {
    if (!detail?.vorMethod || detail.vorErrorDeg === undefined || !detail.vorPlace || !detail.vorSignedBy)
      return Number.POSITIVE_INFINITY;
    return Math.abs(detail.vorErrorDeg) - p.number(TOLERANCE[detail.vorMethod]);
  };
  return doneBefore(checks, moment).sort((a, b) => {
    if (a.lastDoneOn !== b.lastDoneOn) return a.lastDoneOn < b.lastDoneOn ? 1 : -1;
    if (excess(a) !== excess(b)) return excess(a) < excess(b) ? 1 : -1;
    return a.id < b.id ? -1 : 1;
  })[0];
}

/** Checks the receiver and enters it: today, or on the day of departure where today's check would not last. */
function checkVor(item: ItemFact, days: number, moment: Moment): Remedy[] {
  const on = signingDay(moment, (day) => addDays(day, days));
  if (on === null) return [];
  const detail: ItemDetail = {
    vorMethod: 'test-signal',
    vorErrorDeg: 0,
    vorPlace: 'planned',
    vorSignedBy: 'planned',
  };
  return [
    {
      act: 'check-vor',
      title: 'Check the VOR receiver and enter date, place, bearing error and signature.',
      by: 'member',
      effects: [
        {
          op: 'amend',
          fact: 'aircraft.items',
          id: item.id,
          fields: { lastDoneOn: on, complianceId: 'planned:check-vor', detail },
        },
      ],
    },
  ];
}

const flyWithoutVor: Remedy = {
  act: 'fly-without-vor',
  title: 'Navigate without VOR.',
  by: 'member',
  effects: [{ op: 'flight', fields: { usesVor: false } }],
};
