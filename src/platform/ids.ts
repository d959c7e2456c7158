import { v7 } from 'uuid';

/** What an id looks like, lower case, as part of a pattern. */
export const UUID = '[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}';

/** A new row id: UUID version 7 (RFC 9562), so that ids made later sort later and cursors may page by id. */
export function newId(): string {
  return v7();
}
