import { defineRule } from '../../../engine/rule.js';
import type { CheckoutFact } from '../../../facts/person.js';
import { best, countedSignOff, goodThrough, signOffRemedy, stands } from './sign-offs.js';

const LIKE_MODELS = 'club.model-checkout.like-models';

/**
 * Club rule: whoever acts as pilot in command has been checked out in the model. On an instruction flight that is the
 * instructor, who needs the checkout too unless the club says otherwise; the learner needs none, and a checkout flight
 * is how it is earned. Where the club lets it, a sign-off of a like model counts as well.
 */
export const modelCheckout = defineRule({
  id: 'club.model_checkout',
  title: 'Checkout in the model',
  weight: 'club',
  binds: 'pilot',
  reads: ['pic.checkouts', 'aircraft.type'],
  parameters: ['club.model-checkout.required', 'club.model-checkout.instructors-too', LIKE_MODELS],
  branches: {
    'not-asked': { status: 'not-applicable', says: 'The club asks for no checkout by model.' },
    'with-instructor': {
      status: 'not-applicable',
      says: 'Instruction is given, and the club asks its instructors for no checkout by model.',
    },
    'checked-out': { status: 'met', says: 'Checked out in the {model} on {on}{through}.' },
    transferred: {
      status: 'met',
      says: 'Checked out on {on} in a model like the {model}, which the club lets count for it{through}.',
    },
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
        const signOffs = f.get('pic.checkouts').filter(({ kind }) => kind === 'model');
        const found = best(signOffs.filter((one) => one.modelId === modelId && stands(one, moment)));
        const said = ({ on, expiresOn }: CheckoutFact) => ({
          model: makeModel,
          on,
          through: goodThrough(expiresOn),
        });
        if (found)
          return take('checked-out', said(found), { counted: [countedSignOff(found, 'model checkout')] });
        const like = best(
          signOffs.filter((one) => one.alsoModelIds?.includes(modelId) && stands(one, moment)),
        );
        // Sheets and policies of before likeness was kept name none, and are not asked for the number.
        if (like && p.flag(LIKE_MODELS))
          return take('transferred', said(like), {
            counted: [countedSignOff(like, 'checkout in a like model')],
          });
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
