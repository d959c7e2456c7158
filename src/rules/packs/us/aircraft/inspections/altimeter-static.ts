import { itemsInForce } from '../../../common/items/in-force.js';
import { defineRule } from '../../../../engine/rule.js';
import { CHANGE_TO_VFR } from '../../../common/shared/flight-changes.js';
import { readingNow } from '../../../common/items/meter.js';
import { calendarState, lastWords, signInspection } from './calendar-inspection.js';

/**
 * 14 CFR 91.411(a): to fly an airplane or helicopter under IFR in controlled airspace, its static system, altimeters and
 * altitude reporting have been tested within the preceding 24 calendar months, and after any opening of the static
 * system other than by its drain or alternate source. It does not touch VFR.
 */
export const altimeterStaticTest = defineRule({
  id: 'inspection.altimeter_static',
  title: 'Altimeter and static system test',
  weight: 'law',
  binds: 'aircraft',
  reads: ['aircraft.type', 'aircraft.items', 'aircraft.meters'],
  parameters: ['us.inspection.altimeter-static.calendar-months'],
  branches: {
    'not-under-ifr': {
      status: 'not-applicable',
      says: 'The flight is not under IFR, so the altimeter test does not bind it.',
    },
    uncontrolled: {
      status: 'not-applicable',
      says: 'The flight stays in uncontrolled airspace, where the altimeter test does not bind.',
    },
    'other-category': {
      status: 'not-applicable',
      says: 'The altimeter test binds airplanes and helicopters only.',
    },
    current: { status: 'met', says: 'Altimeter and static system tested {on}, good through {through}.' },
    opened: {
      status: 'short',
      says: 'The static system was opened on {opened} and not tested since (last test {on}).',
    },
    overdue: { status: 'short', says: 'The altimeter and static system test is due for IFR: {last}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.411(a)',
        status: 'seen',
        reading:
          'An airspace the member did not name counts as controlled. A test on the day the system was opened counts ' +
          'as made after it, because the test itself opens the system.',
      },
      judge(f, moment, p, take) {
        if (f.flight.flightRules !== 'IFR') return take('not-under-ifr');
        const { airspace } = f.flight;
        if (airspace !== null && airspace.length > 0 && airspace.every((one) => one === 'G'))
          return take('uncontrolled');
        const { category } = f.get('aircraft.type');
        if (category !== 'airplane' && category !== 'rotorcraft' && category !== 'powered-lift')
          return take('other-category');
        const months = p.number('us.inspection.altimeter-static.calendar-months');
        const items = itemsInForce(f, moment);
        const state = calendarState(items, 'altimeter-static', months, moment, 'altimeter and static test');
        const { counted } = state;
        const remedies = () => [
          ...signInspection({
            act: 'sign-altimeter-static',
            title: 'Have the altimeter and static system tested and signed.',
            item: state.item,
            months,
            moment,
            tenths: readingNow(f),
            fields: { detail: null },
          }),
          CHANGE_TO_VFR,
        ];
        if (!state.current) return take('overdue', { last: lastWords(state) }, { counted, remedies });
        const opened = items
          .filter((item) => item.kind === 'altimeter-static')
          .map((item) => item.detail?.staticOpenedOn ?? '')
          .filter((on) => on > state.doneOn! && moment.startsOnOrAfter(on))
          .sort()
          .at(-1);
        if (opened) return take('opened', { opened, on: state.doneOn! }, { counted, remedies });
        return take('current', { on: state.doneOn!, through: state.throughOn! }, { counted });
      },
    },
  ],
});
