import { registerConstraint } from '../../platform/database/constraint-problems.js';

const NOT_SEALED = {
  status: 409,
  title: 'Not sealed',
  detail: 'The chain of decisions went on at the same time. Seal again.',
};

/** What the constraints of the chain mean. Only the sealer writes there, so nobody should ever read this. */
registerConstraint(
  ...[
    ...['decision_chain_pkey', 'decision_chain_link_uq', 'decision_chain_decision_uq'],
    ...['decision_chain_override_uq', 'decision_chain_previous_fk', 'decision_chain_first_chk'],
    ...['decision_chain_seq_chk', 'decision_chain_entry_chk', 'decision_chain_second_chk'],
    ...['decision_chain_one_chk', 'decision_chain_link_chk', 'decision_chain_decision_fk'],
    'decision_chain_override_fk',
  ].map((constraint) => ({ constraint, code: 'chain-went-on', ...NOT_SEALED })),
  {
    constraint: 'decision_chain_append_only',
    code: 'chain-kept',
    status: 409,
    title: 'Kept as it is',
    detail: 'What was sealed is neither changed nor taken out.',
  },
);
