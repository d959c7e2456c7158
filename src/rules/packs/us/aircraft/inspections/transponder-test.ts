import { itemsInForce } from '../../../common/items/in-force.js';
import { defineRule } from '../../../../engine/rule.js';
import type { Moment } from '../../../../engine/moment.js';
import type { EquipmentFact } from '../../../../facts/aircraft.js';
import { fittedOf, panelOf } from '../equipment/panel.js';
import { readingNow } from '../../../common/items/meter.js';
import { calendarState, lastWords, signInspection } from './calendar-inspection.js';

/**
 * 14 CFR 91.413(a): nobody may use a transponder that was not tested within the preceding 24 calendar months, under VFR
 * either. Without the test it stays off; whether the route can be flown that way is for `equipment.transponder`.
 */
export const transponderTest = defineRule({
  id: 'inspection.transponder',
  title: 'Transponder test',
  weight: 'law',
  binds: 'aircraft',
  reads: ['aircraft.items', 'aircraft.meters', 'aircraft.equipment'],
  parameters: ['us.inspection.transponder.calendar-months'],
  branches: {
    'not-used': { status: 'not-applicable', says: 'No transponder is used on this flight.' },
    'not-fitted': { status: 'not-applicable', says: 'No transponder is fitted, so none is used.' },
    current: { status: 'met', says: 'Transponder tested {on}, good through {through}.' },
    overdue: { status: 'short', says: 'The transponder may not be used, its test is due: {last}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.413(a)',
        status: 'seen',
        reading: 'A transponder counts as used unless the member says that it stays off.',
      },
      judge(f, moment, p, take) {
        if (f.flight.usesTransponder === false) return take('not-used');
        if (!transponderFitted(f.get('aircraft.equipment'), moment)) return take('not-fitted');
        const months = p.number('us.inspection.transponder.calendar-months');
        const items = itemsInForce(f, moment);
        const state = calendarState(items, 'transponder', months, moment, 'transponder test');
        const { counted } = state;
        if (state.current)
          return take('current', { on: state.doneOn!, through: state.throughOn! }, { counted });
        return take(
          'overdue',
          { last: lastWords(state) },
          {
            counted,
            remedies: () => [
              ...signInspection({
                act: 'sign-transponder',
                title: 'Have the transponder tested and signed.',
                item: state.item,
                months,
                moment,
                tenths: readingNow(f),
              }),
              {
                act: 'fly-without-transponder',
                title: 'Leave the transponder off, where the airspace allows it.',
                by: 'member',
                effects: [{ op: 'flight', fields: { usesTransponder: false } }],
              },
            ],
          },
        );
      },
    },
  ],
});

const transponderFitted = (equipment: readonly EquipmentFact[], moment: Moment): boolean =>
  fittedOf(panelOf(equipment, [], moment), ['transponder']).length > 0;
