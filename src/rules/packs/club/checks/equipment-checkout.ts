import { defineRule } from '../../../engine/rule.js';
import { UnknownFact } from '../../../engine/unknown.js';
import { EQUIPMENT_GROUP_WORD, listed } from '../../../explain/words.js';
import { EQUIPMENT_GROUPS, groupsAboard, type GroupAboard, type GroupState } from './equipment-groups.js';
import { best, countedSignOff, goodThrough, signOffRemedy, stands } from './sign-offs.js';

const asks = (group: string): string => `club.equipment-checkout.${group}`;
const INSTRUCTORS_TOO = asks('instructors-too');

/**
 * Club rule: the pilot in command has been checked out on the equipment the aircraft is flown with, for each group the
 * club asks for. Where the records do not tell whether there is such equipment, only a sign-off makes the flight good.
 */
export const equipmentCheckout = defineRule({
  id: 'club.equipment_checkout',
  title: 'Checkout on the equipment',
  weight: 'club',
  binds: 'pilot',
  reads: ['pic.checkouts', 'aircraft.equipment', 'aircraft.squawks'],
  parameters: [...EQUIPMENT_GROUPS.map(asks), INSTRUCTORS_TOO],
  branches: {
    'not-asked': { status: 'not-applicable', says: 'The club asks for no checkout on equipment.' },
    'with-instructor': {
      status: 'not-applicable',
      says: 'Instruction is given, and the club asks its instructors for no checkout on equipment.',
    },
    'none-fitted': {
      status: 'not-applicable',
      says: 'The aircraft has none of the equipment that the club asks for a checkout on.',
    },
    signed: { status: 'met', says: 'Checked out on the {groups}{through}.' },
    'switched-off': {
      status: 'met',
      says: 'The {groups} is deactivated, so no checkout on it is needed for this flight.',
    },
    'not-signed': {
      status: 'short',
      says: 'No checkout on the {groups} that covers the whole flight is on record.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Club handbook, section 3.5',
        status: 'club paper',
        reading:
          'One display that does the work of all six instruments of 14 CFR 61.129(j)(1) is a glass panel; one that serves several of them may be. Portable equipment is none. What is deferred as deactivated is not flown with; what is only reported as faulty is.',
      },
      judge(f, moment, p, take) {
        const asked = EQUIPMENT_GROUPS.filter((group) => p.flag(asks(group)));
        if (asked.length === 0) return take('not-asked');
        if (f.crew.instruction && !p.flag(INSTRUCTORS_TOO)) return take('with-instructor');
        const aboard = groupsAboard(asked, f.get('aircraft.equipment'), f.get('aircraft.squawks'), moment);
        if (aboard.length === 0) return take('none-fitted');
        const signOffs = f
          .get('pic.checkouts')
          .filter((one) => one.kind === 'equipment' && stands(one, moment));
        const found = aboard.flatMap(({ group }) => {
          const signed = best(signOffs.filter((one) => one.equipmentGroup === group));
          return signed ? [{ group, signed }] : [];
        });
        const lacking = aboard.filter(({ group }) => !found.some((one) => one.group === group));
        const of = (state: GroupState): GroupAboard[] => lacking.filter((one) => one.state === state);
        if (of('fitted').length > 0) {
          // What may be such equipment is shown along: without it the sign-off would not be enough.
          const toShow = lacking.filter(({ state }) => state !== 'off');
          return take(
            'not-signed',
            { groups: wordsOf(of('fitted')) },
            {
              remedies: () => [
                signOffRemedy({
                  act: 'fly-equipment-checkout',
                  title: `Have an instructor show you the ${wordsOf(toShow)} in flight and sign it off.`,
                  moment,
                  fields: toShow.map(({ group }) => ({
                    kind: 'equipment',
                    modelId: null,
                    aircraftId: null,
                    equipmentGroup: group,
                  })),
                }),
              ],
            },
          );
        }
        const [unclear] = of('unclear');
        if (unclear)
          throw new UnknownFact(
            'aircraft.equipment',
            `“${unclear.piece.name}” does the work of several instruments, and whether it is a ${EQUIPMENT_GROUP_WORD[unclear.group]} is not on record`,
          );
        const conditions = of('off').map(
          ({ group }) =>
            `Leave the ${EQUIPMENT_GROUP_WORD[group]} switched off: no checkout on it is on record.`,
        );
        if (found.length === 0) return take('switched-off', { groups: wordsOf(of('off')) }, { conditions });
        const ends = found.flatMap(({ signed }) => signed.expiresOn ?? []).sort();
        return take(
          'signed',
          { groups: wordsOf(found), through: goodThrough(ends[0] ?? null) },
          {
            conditions,
            counted: found.map(({ group, signed }) =>
              countedSignOff(signed, `checkout on the ${EQUIPMENT_GROUP_WORD[group]}`),
            ),
          },
        );
      },
    },
  ],
});

const wordsOf = (groups: readonly Pick<GroupAboard, 'group'>[]): string =>
  listed(groups.map(({ group }) => EQUIPMENT_GROUP_WORD[group]));
