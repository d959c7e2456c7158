/** What people are told when the database refuses an account. Imported for its effect by the module. */
import { registerChecks, registerReferences } from '../platform/database/constraint-words.js';
import { registerConstraint } from '../platform/database/constraint-problems.js';

registerChecks([
  ['accounts_email_chk', 'email', 'E-mail addresses are kept in lower case.'],
  ['accounts_hash_chk', 'password', 'Passwords are kept as argon2id hashes.'],
  ['accounts_failed_chk', undefined, 'The count of wrong passwords does not fall below 0.'],
  ['refresh_tokens_hash_chk', undefined, 'Refresh tokens are kept as SHA-256 hashes.'],
  ['refresh_tokens_span_chk', undefined, 'A refresh token ends after it was issued.'],
]);
registerReferences([
  ['accounts_member_fk', undefined, 'An account belongs to a member of the club.'],
  ['refresh_tokens_account_fk', undefined, 'A refresh token belongs to an account of the club.'],
]);
registerConstraint(
  {
    ...{
      constraint: 'accounts_member_uq',
      code: 'account-already-there',
      status: 409,
      title: 'Account already there',
    },
    detail: 'The member already has an account. Give it a new password instead.',
  },
  {
    ...{
      constraint: 'accounts_email_uq',
      code: 'account-already-there',
      status: 409,
      title: 'Account already there',
      field: 'email',
    },
    detail: 'Another account of the club signs in with this e-mail address. Check the address.',
  },
  {
    ...{
      constraint: 'refresh_tokens_hash_uq',
      code: 'refresh-token-repeated',
      status: 409,
      title: 'Refresh token repeated',
    },
    detail: 'Sign in again.',
  },
);
