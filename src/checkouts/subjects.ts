/** What a checkout can be for, and what people call it. */
import { EQUIPMENT_GROUP_WORD } from '../rules/explain/words.js';
import type { CheckoutCondition, CheckoutFact, EquipmentGroup } from '../rules/facts/person.js';

/** Kinds a club can lay down requirements for; a differences checkout takes those of its equipment group. */
export type RequirementKind = Exclude<CheckoutFact['kind'], 'differences'>;

export const REQUIREMENT_KINDS = [
  'model',
  'equipment',
  'condition',
  'annual-check',
] as const satisfies RequirementKind[];
export const CHECKOUT_KINDS = [
  'model',
  'differences',
  'annual-check',
  'equipment',
  'condition',
] as const satisfies CheckoutFact['kind'][];

const CONDITION_WORDS: Record<CheckoutCondition, string> = {
  night: 'night',
  mountain: 'mountain flying',
  'short-field': 'grass and short fields',
  'high-crosswind': 'high crosswind',
};
export const EQUIPMENT_GROUPS = Object.keys(EQUIPMENT_GROUP_WORD) as EquipmentGroup[];
export const CONDITIONS = Object.keys(CONDITION_WORDS) as CheckoutCondition[];

/** What a checkout is for. */
export interface Subject {
  kind: CheckoutFact['kind'];
  modelId: string | null;
  equipmentGroup: EquipmentGroup | null;
  condition: CheckoutCondition | null;
}

/** Is it the same checkout? Not asked of differences, which are for one aircraft. */
export const sameSubject = (a: Subject, b: Subject): boolean =>
  a.kind === b.kind &&
  a.modelId === b.modelId &&
  a.equipmentGroup === b.equipmentGroup &&
  a.condition === b.condition;

/** In words: 'Ostrander Almanac 180', 'glass panel'. */
export function subjectWords(of: Subject & { makeModel?: string | null }): string {
  if (of.kind === 'model') return of.makeModel ?? 'a model';
  if (of.equipmentGroup !== null) return EQUIPMENT_GROUP_WORD[of.equipmentGroup];
  if (of.condition !== null) return CONDITION_WORDS[of.condition];
  return of.kind === 'annual-check' ? 'annual check' : 'differences';
}

const plain = (words: string): string =>
  words
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, '-');

/** Do the words of an equipment change mean this group? Its own name, or what the club calls it besides. */
export const meansGroup = (
  words: string,
  of: { equipmentGroup: EquipmentGroup | null; alsoCalled: readonly string[] },
): boolean =>
  of.equipmentGroup !== null &&
  [of.equipmentGroup, ...of.alsoCalled].some((name) => plain(name) === plain(words));
