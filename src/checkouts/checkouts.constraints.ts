/** What people are told when the database refuses a checkout. Imported for its effect by the module. */
import { registerChecks, registerReferences } from '../platform/database/constraint-words.js';
import { registerConstraint } from '../platform/database/constraint-problems.js';

registerChecks([
  ['checkouts_kind_chk', 'kind', 'Name one of model, differences, annual-check, equipment, condition.'],
  [
    'checkouts_own_chk',
    undefined,
    'Nobody signs their own checkout. Fly with another instructor of the club.',
  ],
  ['checkouts_span_chk', 'expiresOn', 'A checkout ends on or after the day it was signed. Check both dates.'],
  [
    'checkouts_shape_chk',
    'kind',
    'A checkout names what it is for: the model, the aircraft, the equipment group, the condition; an annual check nothing.',
  ],
  [
    'checkouts_append_only',
    undefined,
    'A signed checkout is never changed. Take it back and sign a new one.',
  ],
  ['checkout_voids_reason_chk', 'reason', 'Say why the checkout is taken back.'],
  ['checkout_voids_append_only', undefined, 'What was taken back stays so. Sign a new checkout.'],
]);
registerReferences([
  [
    'checkouts_member_fk',
    undefined,
    'A checkout belongs to a member of the club, and a member with checkouts is not deleted.',
  ],
  [
    'checkouts_model_fk',
    'modelId',
    "A model checkout names one of the club's models; a model with checkouts is not deleted.",
  ],
  [
    'checkouts_aircraft_fk',
    'aircraftId',
    "A differences checkout names one of the club's aircraft; an aircraft with checkouts is not deleted.",
  ],
  [
    'checkouts_signer_fk',
    undefined,
    'A checkout is signed by a member of the club, who is not deleted while it stands.',
  ],
  ['checkout_voids_checkout_fk', undefined, 'Only a checkout of the club can be taken back.'],
  ['checkout_voids_by_fk', undefined, 'A checkout is taken back by a member of the club.'],
]);
registerConstraint({
  ...{
    constraint: 'checkout_voids_pkey',
    code: 'checkout-void-already',
    status: 409,
    title: 'Taken back already',
  },
  detail: 'This checkout has been taken back before. Sign a new one if it is meant to stand.',
});
