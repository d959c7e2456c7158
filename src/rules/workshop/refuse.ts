/** Refusing what a case table says, with the place where it says it. */

/** Where in the document: keys and list positions from the top. */
export type Place = readonly (string | number)[];
/** Refuses the table because of what stands at a place; never returns. */
export type Refuse = (place: Place, because: string) => never;

/** The value as an object with keys. */
export function object(value: unknown, place: Place, refuse: Refuse): Record<string, unknown> {
  if (typeof value === 'object' && value !== null && !Array.isArray(value))
    return value as Record<string, unknown>;
  return refuse(place, 'should be keys with values');
}

/** Refuses keys that mean nothing here. */
export function onlyKeys(value: object, allowed: readonly string[], place: Place, refuse: Refuse): void {
  for (const key of Object.keys(value))
    if (!allowed.includes(key)) refuse([...place, key], `"${key}" is not one of ${allowed.join(', ')}`);
}
