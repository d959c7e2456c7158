import { itemsInForce } from './in-force.js';
import { defineRule, type Body, type Weight } from '../../../engine/rule.js';
import { doItems, itemBinds, ITEM_READS, itemStates } from './item-state.js';

type Branch = 'none' | 'in-order' | 'due';

/** The club's own items: `advice` ones never block, the others an officer may let pass. */
function clubItemRule<const Id extends string>(of: {
  id: Id;
  title: string;
  weight: Weight;
  advice: boolean;
  act: string;
  remedy: string;
}) {
  const body: Body<(typeof ITEM_READS)[number], Branch> = {
    version: 1,
    from: null,
    to: null,
    citation: {
      text: "The club's maintenance programme",
      status: 'club paper',
      reading:
        'Tolerance in hours is used only on the way to the shop. Night items bind from sunset to sunrise.',
    },
    judge(f, moment, _p, take) {
      const bound = itemsInForce(f, moment)
        .filter((item) => item.kind === 'club' && (item.scope === 'advice') === of.advice)
        .filter((item) => itemBinds(f, item, moment));
      if (bound.length === 0) return take('none');
      const ferry = f.flight.purpose === 'ferry-to-inspection';
      const { states, counted } = itemStates(f, bound, moment, ferry);
      const bad = states.filter((state) => !state.good);
      if (bad.length === 0) {
        const conditions = of.advice ? [] : [...new Set(states.flatMap((state) => state.conditions))];
        return take(
          'in-order',
          { items: states.map((state) => state.words).join('; ') },
          { counted, conditions },
        );
      }
      const remedies = () => doItems({ act: of.act, title: of.remedy, f, states, moment });
      return take('due', { items: bad.map((state) => state.words).join('; ') }, { counted, remedies });
    },
  };
  return defineRule({
    id: of.id,
    title: of.title,
    weight: of.weight,
    binds: 'aircraft',
    reads: [...ITEM_READS],
    parameters: [],
    branches: {
      none: { status: 'not-applicable', says: 'The club has no such item for this flight.' },
      'in-order': { status: 'met', says: 'In order: {items}.' },
      due: { status: 'short', says: 'Due: {items}.' },
    },
    bodies: [body],
  });
}

/** Items of the club's own programme that bind: an officer may let a flight pass. */
export const clubItems = clubItemRule({
  id: 'item.club',
  title: "The club's own maintenance items",
  weight: 'club',
  advice: false,
  act: 'do-club-items',
  remedy: "Have the club's own items done and signed.",
});

/** Items kept as advice (overhaul, oil, batteries): shown, never in the way. */
export const adviceItems = clubItemRule({
  id: 'item.advice',
  title: 'Maintenance kept as advice',
  weight: 'advice',
  advice: true,
  act: 'do-advice-items',
  remedy: 'Have the advised items done and signed.',
});
