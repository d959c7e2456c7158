import { defineRule } from '../../../engine/rule.js';
import type { CheckoutFact } from '../../../facts/person.js';
import { best, countedSignOff, goodThrough, signOffRemedy, stands } from './sign-offs.js';

/**
 * Club rule: after the equipment of an aircraft changed, its pilot in command has been shown the difference. A sign-off
 * counts for the aircraft it names, and only when dated on or after the newest change in force.
 */
export const differencesCheckout = defineRule({
  id: 'club.differences_checkout',
  title: 'Differences checkout',
  weight: 'club',
  binds: 'pilot',
  reads: ['pic.checkouts', 'aircraft.differences'],
  parameters: [
    'club.differences-checkout.required',
    'club.differences-checkout.instructors-too',
    'club.differences-checkout.elsewhere-counts',
  ],
  branches: {
    'not-asked': { status: 'not-applicable', says: 'The club asks for no differences checkouts.' },
    'with-instructor': {
      status: 'not-applicable',
      says: 'Instruction is given, and the club asks its instructors for no differences checkout.',
    },
    'nothing-changed': {
      status: 'not-applicable',
      says: 'No change of this aircraft asks for a differences checkout.',
    },
    shown: {
      status: 'met',
      says: 'Differences checkout in this aircraft on {on}, after the change of {since}{through}.',
    },
    'shown-elsewhere': {
      status: 'met',
      says: 'Checked out on the same equipment ({group}) in another aircraft on {on}, which the club lets count{through}.',
    },
    'not-shown': {
      status: 'short',
      says: 'Not yet checked out on the change of {since}: {title} ({group}).',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: { text: 'Club handbook, section 3.4', status: 'club paper' },
      judge(f, moment, p, take) {
        if (!p.flag('club.differences-checkout.required')) return take('not-asked');
        const changes = f
          .get('aircraft.differences')
          // A change made while the flight is under way cannot be asked of it; one on the day of departure is.
          .filter((change) => moment.startsOnOrAfter(change.since))
          .filter(({ endedOn = null }) => endedOn === null || !moment.startsOnOrAfter(endedOn))
          .sort((a, b) => (`${a.since} ${a.id}` < `${b.since} ${b.id}` ? 1 : -1));
        const newest = changes[0];
        if (!newest) return take('nothing-changed');
        if (f.crew.instruction && !p.flag('club.differences-checkout.instructors-too'))
          return take('with-instructor');
        // As it was written down, but for blanks around it.
        const group = newest.equipmentGroup.trim();
        const signed = f
          .get('pic.checkouts')
          .filter((one) => one.kind === 'differences' && stands(one, moment));
        const counted = (one: CheckoutFact) => ({ counted: [countedSignOff(one, 'differences checkout')] });
        const found = best(
          signed.filter((one) => one.aircraftId === newest.aircraftId && one.on >= newest.since),
        );
        if (found)
          return take(
            'shown',
            { on: found.on, since: newest.since, through: goodThrough(found.expiresOn) },
            counted(found),
          );
        const elsewhere = p.flag('club.differences-checkout.elsewhere-counts')
          ? best(
              signed.filter(
                (one) =>
                  one.aircraftId !== newest.aircraftId &&
                  sameWords(one.equipmentGroup, newest.equipmentGroup),
              ),
            )
          : undefined;
        if (elsewhere)
          return take(
            'shown-elsewhere',
            { group, on: elsewhere.on, through: goodThrough(elsewhere.expiresOn) },
            counted(elsewhere),
          );
        return take(
          'not-shown',
          { since: newest.since, title: newest.title, group },
          {
            remedies: () =>
              // A change that is still to come cannot be shown today, so nothing can be planned for it yet.
              moment.knowledgeDate() >= newest.since
                ? [
                    signOffRemedy({
                      act: 'fly-differences',
                      title: `Have an instructor show you the ${group} and sign it off.`,
                      moment,
                      fields: {
                        kind: 'differences',
                        modelId: null,
                        aircraftId: newest.aircraftId,
                        equipmentGroup: newest.equipmentGroup,
                      },
                    }),
                  ]
                : [],
          },
        );
      },
    },
  ],
});

/** The equipment of two changes is named in words: case and outer blanks do not tell them apart. */
const sameWords = (a: string | null | undefined, b: string): boolean =>
  a?.trim().toLowerCase() === b.trim().toLowerCase();
