import type { SignedIn } from '../accounts/current-user.js';

/**
 * A person as a reader of what goes into mail: without any role, so that nothing of anybody else's record gets into it.
 * Mail lies about; officers read on the page.
 */
export const asMember = (who: { clubId: string; memberId: string }): SignedIn => ({
  ...{ clubId: who.clubId, memberId: who.memberId },
  ...{ accountId: '', roles: ['member'] },
});
