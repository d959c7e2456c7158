import { itemsInForce } from '../../../common/items/in-force.js';
import { doItems, ITEM_READS, itemStates } from '../../../common/items/item-state.js';
import { ferried } from '../../../common/permits/permit-flight.js';
import { defineRule } from '../../../../engine/rule.js';
import { need } from '../../../../engine/unknown.js';
import { isComplete, isOfProgramme, PROGRAMME_MARGIN, PROGRAMME_MONTHS, withinMargin } from './programme.js';

/**
 * 14 CFR 91.409(d): an aircraft under a progressive inspection programme is inspected by its schedule, and the whole of it
 * within each 12 calendar months. That takes the place of annual and 100-hour inspections (91.409(c)(3)). Each inspection is due as the
 * schedule says; what it allows past that on the way to the inspection is 10 hours at most.
 */
export const progressiveInspection = defineRule({
  id: 'inspection.progressive',
  title: 'Progressive inspection',
  weight: 'law',
  binds: 'aircraft',
  reads: [...ITEM_READS],
  parameters: [PROGRAMME_MONTHS, PROGRAMME_MARGIN],
  branches: {
    none: { status: 'not-applicable', says: 'The aircraft is under no progressive inspection programme.' },
    kept: { status: 'met', says: 'The progressive programme is kept: {done}.' },
    'under-permit': {
      status: 'met',
      says: 'The progressive programme is due ({due}); a special flight permit covers this ferry flight.',
    },
    'permit-crew-only': {
      status: 'short',
      says: 'The progressive programme is due ({due}), and a special flight permit carries nobody but required crew.',
    },
    overdue: { status: 'short', says: 'The progressive programme is due: {due}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.409(c)(3) and (d), 21.197',
        status: 'seen',
        reading:
          'The schedule approved for the aircraft governs. One of its inspections is of the whole aircraft and is due within 12 ' +
          'calendar months; without one on record nothing can be told. A flight that ends exactly at the hours limit is allowed.',
      },
      judge(f, moment, p, take) {
        const programme = itemsInForce(f, moment).filter(isOfProgramme);
        if (programme.length === 0) return take('none');
        const months = p.number(PROGRAMME_MONTHS);
        need(
          programme.find((item) => isComplete(item, months)),
          'aircraft.items',
          `the programme has no complete inspection within ${months} calendar months on record`,
        );
        const onTheWay = f.flight.purpose === 'ferry-to-inspection';
        const { states, counted } = itemStates(f, withinMargin(programme, p), moment, onTheWay);
        const bad = states.filter((state) => !state.good);
        if (bad.length === 0) {
          const conditions = [...new Set(states.flatMap((state) => state.conditions))];
          const done = states.map((state) => state.words).join('; ');
          return take('kept', { done }, { counted, conditions });
        }
        const due = bad.map((state) => state.words).join('; ');
        const inspect = () =>
          doItems({
            act: 'sign-progressive',
            title: 'Have the due inspections of the progressive programme done and signed.',
            f,
            states,
            moment,
          });
        const { branch, ...told } = ferried(f, moment, inspect);
        return take(branch ?? 'overdue', { due }, { counted, ...told });
      },
    },
  ],
});
