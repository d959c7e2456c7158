import { localDateOf, toSeconds, type Policy } from '../rules/index.js';

/** Whether a yes-or-no parameter of the club is on, on the club's own date at an instant. Never set means off. */
export function flagOn(policy: Policy, id: string, at: { knownAt: string; zone: string }): boolean {
  const today = localDateOf(toSeconds(at.knownAt), at.zone);
  const values = policy.values.filter((value) => value.id === id && value.from <= today);
  return values.at(-1)?.value === true;
}
