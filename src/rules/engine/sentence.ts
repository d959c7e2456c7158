/** Sentences with `{slots}`: cut once, filled each time somebody wants to read them. */

/** A sentence cut at its slots: text, slot, text, slot, ..., text. */
type Cut = readonly string[];

const cuts = new Map<string, Cut>();

function cut(template: string): Cut {
  let parts = cuts.get(template);
  if (!parts) cuts.set(template, (parts = template.split(/\{([a-zA-Z0-9]+)\}/)));
  return parts;
}

/** The first slot of the sentence that has no value, or null. Such a slot is a defect of the rule, not of the facts. */
export function slotWithout(template: string, values: Record<string, string | number>): string | null {
  const parts = cut(template);
  for (let slot = 1; slot < parts.length; slot += 2) {
    if (values[parts[slot]!] === undefined) return parts[slot]!;
  }
  return null;
}

/** The sentence with its slots filled; every slot must have a value. */
export function fill(template: string, values: Record<string, string | number>): string {
  const parts = cut(template);
  let text = parts[0]!;
  for (let slot = 1; slot < parts.length; slot += 2) text += String(values[parts[slot]!]) + parts[slot + 1]!;
  return text;
}
