import { defineRule } from '../../../../engine/rule.js';
import { readingNow } from '../../../common/items/meter.js';
import { ferried } from '../../../common/permits/permit-flight.js';
import { calendarState, lastWords, signInspection } from './calendar-inspection.js';
import { inspectionsCounted } from './inspections-counted.js';
import { PROGRAMME_MONTHS } from './programme.js';

/**
 * 14 CFR 91.409(a): within the preceding 12 calendar months the aircraft has had an annual inspection and been approved
 * for return to service. There is no overrun; a special flight permit (21.197) is the only way to fly without one. A progressive
 * programme takes its place (91.409(c)(3)), and after it the last complete inspection counts as one (91.409(d)).
 */
export const annualInspection = defineRule({
  id: 'inspection.annual',
  title: 'Annual inspection',
  weight: 'law',
  binds: 'aircraft',
  reads: ['aircraft.items', 'aircraft.permits', 'aircraft.meters'],
  parameters: ['us.inspection.annual.calendar-months', PROGRAMME_MONTHS],
  branches: {
    'under-programme': {
      status: 'not-applicable',
      says: 'The aircraft is inspected by a progressive programme, which takes the place of the annual.',
    },
    current: { status: 'met', says: 'Annual inspection of {on}, good through {through}.' },
    'under-permit': {
      status: 'met',
      says: 'The annual inspection is due ({last}); a special flight permit covers this ferry flight.',
    },
    'permit-crew-only': {
      status: 'short',
      says: 'The annual inspection is due ({last}), and a special flight permit carries nobody but required crew.',
    },
    overdue: { status: 'short', says: 'The annual inspection is due: {last}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.409(a), (c)(3) and (d), 21.197',
        status: 'seen',
        reading: 'The inspection must still be good when the flight ends.',
      },
      judge(f, moment, p, take) {
        const items = inspectionsCounted(f, moment, p);
        if (items === null) return take('under-programme');
        const months = p.number('us.inspection.annual.calendar-months');
        const state = calendarState(items, 'annual', months, moment, 'annual inspection');
        const { counted } = state;
        if (state.current)
          return take('current', { on: state.doneOn!, through: state.throughOn! }, { counted });
        const last = lastWords(state);
        const sign = () =>
          signInspection({
            act: 'sign-annual',
            title: 'Have the annual inspection done and signed.',
            item: state.item,
            months,
            moment,
            tenths: readingNow(f),
          });
        const { branch, ...told } = ferried(f, moment, sign);
        return take(branch ?? 'overdue', { last }, { counted, ...told });
      },
    },
  ],
});
