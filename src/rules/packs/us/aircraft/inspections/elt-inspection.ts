import { itemsInForce } from '../../../common/items/in-force.js';
import { defineRule } from '../../../../engine/rule.js';
import { readingNow } from '../../../common/items/meter.js';
import { calendarState, lastWords, signInspection } from './calendar-inspection.js';
import { ELT_PARAMETERS, ELT_READS, eltException, neverNeedsElt } from './elt-need.js';

/** 14 CFR 91.207(d): a required emergency locator transmitter is inspected within 12 calendar months. */
export const eltInspection = defineRule({
  id: 'inspection.elt',
  title: 'ELT inspection',
  weight: 'law',
  binds: 'aircraft',
  reads: ['aircraft.items', 'aircraft.meters', ...ELT_READS],
  parameters: ['us.inspection.elt.calendar-months', ...ELT_PARAMETERS],
  branches: {
    'not-needed': { status: 'not-applicable', says: 'No ELT is needed: {because}.' },
    current: { status: 'met', says: 'ELT inspected {on}, good through {through}.' },
    excepted: { status: 'met', says: 'The ELT inspection is due ({last}), but none is needed: {because}.' },
    overdue: { status: 'short', says: 'The ELT inspection is due: {last}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.207(a), (d), (e), (f)',
        status: 'seen',
        reading: 'Only flights with an instructor count as training; the club cannot tell a solo exercise.',
      },
      judge(f, moment, p, take) {
        const because = neverNeedsElt(f.get('aircraft.type'));
        if (because !== null) return take('not-needed', { because });
        const months = p.number('us.inspection.elt.calendar-months');
        const state = calendarState(
          itemsInForce(f, moment),
          'elt-inspection',
          months,
          moment,
          'ELT inspection',
        );
        const { counted } = state;
        if (state.current)
          return take('current', { on: state.doneOn!, through: state.throughOn! }, { counted });
        const last = lastWords(state);
        const exception = eltException(f, moment, p);
        if (exception) {
          const { conditions } = exception;
          return take('excepted', { last, because: exception.because }, { counted, conditions });
        }
        const remedies = () =>
          signInspection({
            act: 'sign-elt-inspection',
            title: 'Have the ELT inspected and signed.',
            item: state.item,
            months,
            moment,
            tenths: readingNow(f),
          });
        return take('overdue', { last }, { counted, remedies });
      },
    },
  ],
});
