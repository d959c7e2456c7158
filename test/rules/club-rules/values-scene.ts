/** What the specs of the schema's values share: sheets made for one question, and what is asked of each requirement. */
import { known, toInstant, type FactSheet } from '../../../src/rules/index.js';
import * as R from '../../../src/rules/workshop/records.js';
import { finding, judged, KNOWN_AT, memberWith, status } from './scene.js';

export type Flight = FactSheet['flight'];
export type Member = FactSheet['people'][string];
export const on = <T>(...records: T[]) => known(records, KNOWN_AT);
export const asked = (flight: Partial<Flight>): FactSheet => memberWith({}, flight);
export const aircraft = (facts: Partial<FactSheet['aircraft']>): FactSheet => {
  const sheet = memberWith({});
  return { ...sheet, aircraft: { ...sheet.aircraft, ...facts } };
};
export const typed = (fields: Partial<typeof R.AIRCRAFT_TYPE>, sheet = memberWith({})): FactSheet => ({
  ...sheet,
  aircraft: { ...sheet.aircraft, type: known({ ...R.AIRCRAFT_TYPE, ...fields }, KNOWN_AT) },
});

/** Each requirement holds, and its opposite does not: no value is merely unknown, or in error. */
export function holds(sheet: FactSheet, ...requirements: string[]): void {
  for (const one of requirements)
    expect([one, status(one, sheet), status(`!(${one})`, sheet)]).toEqual([one, 'met', 'short']);
}
/** What is missing when the requirement cannot be told. */
export const missing = (requirement: string, sheet: FactSheet): string => {
  const { status: is, says } = finding({ requirement }, sheet);
  expect(is).toBe('unknown');
  return says;
};
export const counted = (requirement: string, sheet: FactSheet) =>
  finding({ requirement }, sheet).counted.map(({ id, on: day, what }) => `${id} ${day}: ${what}`);
/** The departure from which the verdict may change. */
export const changes = (requirement: string, sheet: FactSheet = memberWith({})): string | null => {
  const { nextChange } = judged({ requirement }, sheet);
  return nextChange === null ? null : toInstant(nextChange);
};
