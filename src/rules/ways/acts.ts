/** Looking acts up. */
import type { ActEntry } from './act.js';
import { CATALOGUE, CHANGE, OFFICE } from './catalogue.js';

export type { ActEntry, ActKind, Lead, Sketch } from './act.js';

/** Acts that put several things right at once: priced by the facts they touch, see `partsOf`. */
const COMPOSITE = 'keep-within-';

/** All acts that are known, by name. */
export const ACTS: readonly string[] = Object.keys(CATALOGUE).sort();

/** Looks acts up: the catalogue, or another one where rules of another make are searched. */
export type Catalogue = (act: string) => ActEntry | undefined;

export const catalogue: Catalogue = (act) => {
  if (act.startsWith(COMPOSITE)) return CHANGE;
  return Object.hasOwn(CATALOGUE, act) ? CATALOGUE[act] : undefined;
};

/** What stands for a fact that a composite act touches. */
const BY_FACT: Readonly<Record<string, string>> = {
  'pic.medicals': 'pass-medical-exam',
  'pic.basicMed': 'complete-basicmed',
  'pic.endorsements': 'get-endorsement-solo',
  'pic.ratings': 'get-night-rating',
};

/** The entries an act is made of: one, but for acts that put several things right at once. */
export function partsOf(act: string, facts: readonly string[], look: Catalogue): ActEntry[] {
  if (!act.startsWith(COMPOSITE) || facts.length === 0) return [look(act) ?? OFFICE];
  return [...new Set(facts)].sort().map((fact) => look(BY_FACT[fact] ?? '') ?? OFFICE);
}
