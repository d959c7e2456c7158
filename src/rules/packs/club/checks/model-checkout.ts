import { defineRule } from '../../../engine/rule.js';
import { best, countedSignOff, signOffRemedy, stands } from './sign-offs.js';

/**
 * Club rule: whoever acts as pilot in command has been checked out in the model. On an instruction flight that is the
 * instructor, who needs the checkout too unless the club says otherwise; the learner needs none, and a checkout flight
 * is how it is earned.
 */
export const modelCheckout = defineRule({
  id: 'club.model_checkout',
  title: 'Checkout in the model',
  weight: 'club',
  binds: 'pilot',
  reads: ['pic.checkouts', 'aircraft.type'],
  parameters: ['club.model-checkout.required', 'club.model-checkout.instructors-too'],
  branches: {
    'not-asked': { status: 'not-applicable', says: 'The club asks for no checkout by model.' },
    'with-instructor': {
      status: 'not-applicable',
      says: 'Instruction is given, and the club asks its instructors for no checkout by model.',
    },
    'checked-out': { status: 'met', says: 'Checked out in the {model} on {on}{through}.' },
    'not-checked-out': {
      status: 'short',
      says: 'No checkout in the {model} that covers the whole flight is on record.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: { text: 'Club handbook, section 3.1', status: 'club paper' },
      judge(f, moment, p, take) {
        if (!p.flag('club.model-checkout.required')) return take('not-asked');
        if (f.crew.instruction && !p.flag('club.model-checkout.instructors-too'))
          return take('with-instructor');
        const { modelId, makeModel } = f.get('aircraft.type');
        const found = best(
          f
            .get('pic.checkouts')
            .filter((one) => one.kind === 'model' && one.modelId === modelId && stands(one, moment)),
        );
        if (found) {
          return take(
            'checked-out',
            {
              model: makeModel,
              on: found.on,
              through: found.expiresOn === null ? '' : `, good through ${found.expiresOn}`,
            },
            { counted: [countedSignOff(found, 'model checkout')] },
          );
        }
        return take(
          'not-checked-out',
          { model: makeModel },
          {
            remedies: () => [
              signOffRemedy({
                act: 'fly-checkout',
                title: `Fly a checkout in the ${makeModel} with an instructor, who signs it off.`,
                moment,
                fields: { kind: 'model', modelId, aircraftId: null },
              }),
            ],
          },
        );
      },
    },
  ],
});
