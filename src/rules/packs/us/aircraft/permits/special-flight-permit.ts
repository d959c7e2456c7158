import { itemsInForce } from '../../../common/items/in-force.js';
import { defineRule } from '../../../../engine/rule.js';
import type { FactView } from '../../../../engine/rule.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import { UnknownFact } from '../../../../engine/unknown.js';
import { hundredHourDue } from '../../../common/items/due.js';
import { calendarState, doneBefore } from '../inspections/calendar-inspection.js';
import { inspectionsCounted } from '../inspections/inspections-counted.js';
import { isOfProgramme, PROGRAMME_MARGIN, PROGRAMME_MONTHS, withinMargin } from '../inspections/programme.js';
import { hundredHourBinds } from '../inspections/hundred-hour.js';
import { itemBinds, ITEM_READS, itemStates } from '../../../common/items/item-state.js';
import { projectMeter } from '../../../common/items/meter.js';
import {
  flyWithEssentialCrew,
  obtainPermit,
  permitConditions,
  permitState,
} from '../../../common/permits/permit-flight.js';

type Reads = FactView<(typeof ITEM_READS)[number] | 'aircraft.use'>;

/**
 * 14 CFR 21.197: a special flight permit lets an aircraft that is due for maintenance be flown to where it is done, with
 * nobody but essential crew, within its limits. It is one flight's override and never makes the aircraft airworthy.
 */
export const specialFlightPermit = defineRule({
  id: 'permit.special_flight',
  title: 'Special flight permit',
  weight: 'law',
  binds: 'flight',
  reads: [...ITEM_READS, 'aircraft.use'],
  parameters: [
    'us.inspection.annual.calendar-months',
    'us.inspection.hundred-hour.hours',
    'us.inspection.hundred-hour.overrun-hours',
    PROGRAMME_MONTHS,
    PROGRAMME_MARGIN,
  ],
  branches: {
    'not-relied-on': { status: 'not-applicable', says: 'The flight relies on no special flight permit.' },
    'within-limits': {
      status: 'met',
      says: 'The flight relies on a special flight permit for {why}, with required crew only, through {through}.',
    },
    'carries-others': {
      status: 'short',
      says: 'The flight relies on a special flight permit for {why}, which carries nobody but required crew.',
    },
    'outside-dates': {
      status: 'short',
      says: 'The flight relies on a special flight permit for {why}; the one on record holds from {from} through {through} only.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 21.197(a)(1), 21.199, 91.213(e)',
        status: 'from memory',
        reading: 'One pilot is essential crew; a second person only where the law requires a second pilot.',
      },
      judge(f, moment, p, take) {
        const permit = permitState(f, moment);
        if (permit.state === 'none') return take('not-relied-on');
        const due = whatIsDue(f, moment, p);
        if (due.length === 0) return take('not-relied-on');
        const { from, through, id, purpose } = permit.permit;
        const why = due.join(', ');
        const counted = [{ id, on: from, what: `special flight permit, ${purpose}, through ${through}` }];
        const values = { why, from, through };
        if (permit.state === 'outside-dates')
          return take('outside-dates', values, { counted, remedies: () => obtainPermit(f.flight, moment) });
        if (permit.state === 'carries-others')
          return take('carries-others', values, { counted, remedies: () => [flyWithEssentialCrew] });
        return take('within-limits', values, { counted, conditions: permitConditions(permit.permit) });
      },
    },
  ],
});

/** What the permit has to carry. What cannot be told counts as due: its own rule says so, and this one stays strict. */
function whatIsDue(f: Reads, moment: Moment, p: Parameters): string[] {
  const items = itemsInForce(f, moment);
  // None under a progressive programme.
  const inspections = inspectionsCounted(f, moment, p);
  const strictly = (words: string, isDue: () => boolean): string[] => {
    try {
      return isDue() ? [words] : [];
    } catch (error) {
      if (error instanceof UnknownFact) return [words];
      throw error;
    }
  };
  return [
    ...strictly('the annual inspection', () => {
      if (inspections === null) return false;
      const months = p.number('us.inspection.annual.calendar-months');
      return !calendarState(inspections, 'annual', months, moment, 'annual inspection').current;
    }),
    ...strictly('the 100-hour inspection', () => {
      if (!hundredHourBinds(f) || inspections === null) return false;
      const due = hundredHourDue(
        doneBefore(inspections, moment),
        Math.round(p.number('us.inspection.hundred-hour.hours') * 10),
      );
      const margin = Math.round(p.number('us.inspection.hundred-hour.overrun-hours') * 10);
      return due === null || projectMeter(f, moment).atEnd > due.throughTenths + margin;
    }),
    ...strictly('the progressive inspection', () => {
      const programme = items.filter(isOfProgramme);
      return itemStates(f, withinMargin(programme, p), moment, true).states.some((state) => !state.good);
    }),
    ...strictly('directives', () => {
      const bound = items.filter((item) => item.kind === 'directive' && itemBinds(f, item, moment));
      return itemStates(f, bound, moment, false).states.some((state) => !state.good);
    }),
  ];
}
