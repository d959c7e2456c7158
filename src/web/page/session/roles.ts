/** What is shown to whom hangs on these; what may be done, the service decides. */

const has = (roles: readonly string[], some: readonly string[]): boolean =>
  roles.some((role) => some.includes(role));

/** Those who keep members' papers, rules set aside and reports in order. */
export const isOfficer = (roles: readonly string[]): boolean =>
  has(roles, ['safety-officer', 'administrator']);

/** Those who look after others: officers, and instructors after their students. */
export const looksAfterOthers = (roles: readonly string[]): boolean =>
  isOfficer(roles) || has(roles, ['instructor']);

/** A safety officer sets the club's rules aside, of flights of others. */
export const setsAside =
  (me: { memberId: string; roles: readonly string[] }) =>
  (flight: { memberId: string; crew: { picId: string | null } }): boolean =>
    has(me.roles, ['safety-officer']) && ![flight.memberId, flight.crew.picId].includes(me.memberId);
