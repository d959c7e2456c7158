import { itemsInForce } from './in-force.js';
import { defineRule } from '../../../engine/rule.js';
import { ferried, permitState } from '../permits/permit-flight.js';
import { doItems, itemBinds, ITEM_READS, itemStates } from './item-state.js';

/**
 * 14 CFR 39.3, 39.7: nobody may operate an aircraft that does not meet an airworthiness directive. Each is due as its own
 * text says, by hours, date or whichever comes first; the 10 hours of 91.409(b) do not extend it. The aircraft may be
 * ferried under a permit unless the directive forbids it (39.23).
 */
export const directives = defineRule({
  id: 'ad.recurring',
  title: 'Airworthiness directives',
  weight: 'law',
  binds: 'aircraft',
  reads: [...ITEM_READS],
  parameters: [],
  branches: {
    none: { status: 'not-applicable', says: 'No directive on record binds this flight.' },
    complied: { status: 'met', says: 'Directives complied with: {done}.' },
    'under-permit': {
      status: 'met',
      says: 'Directives due ({due}); a special flight permit covers this ferry flight.',
    },
    'ferry-forbidden': {
      status: 'short',
      says: 'Directives due ({due}); {forbidding} forbids flying under a special flight permit.',
    },
    'permit-crew-only': {
      status: 'short',
      says: 'Directives due ({due}), and a special flight permit carries nobody but required crew.',
    },
    overdue: { status: 'short', says: 'Directives due: {due}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 39.3, 39.7, 39.11, 39.23',
        status: 'from memory',
        reading:
          "The directive's text governs. Plain months run to the same day number; a flight that ends exactly at the " +
          'hours limit is allowed; a directive marked as advice binds all the same.',
      },
      judge(f, moment, _p, take) {
        const bound = itemsInForce(f, moment).filter(
          (item) => item.kind === 'directive' && itemBinds(f, item, moment),
        );
        if (bound.length === 0) return take('none');
        const { states, counted } = itemStates(f, bound, moment, false);
        const bad = states.filter((state) => !state.good);
        if (bad.length === 0) {
          const conditions = [...new Set(states.flatMap((state) => state.conditions))];
          const done = states.map((state) => state.words).join('; ');
          return take('complied', { done }, { counted, conditions });
        }
        const due = bad.map((state) => state.words).join('; ');
        const comply = () =>
          doItems({
            act: 'comply-with-directives',
            title: 'Have the directives complied with and signed.',
            f,
            states,
            moment,
          });
        const forbidding = bad.find((state) => state.item.ferryProhibited);
        if (forbidding) {
          const { state } = permitState(f, moment);
          return state === 'covers' || state === 'carries-others'
            ? take(
                'ferry-forbidden',
                { due, forbidding: forbidding.item.title },
                { counted, remedies: comply },
              )
            : take('overdue', { due }, { counted, remedies: comply });
        }
        const { branch, ...told } = ferried(f, moment, comply);
        return take(branch ?? 'overdue', { due }, { counted, ...told });
      },
    },
  ],
});
