import { v7 } from 'uuid';

/** A new row id: UUID version 7 (RFC 9562), so that ids made later sort later and cursors may page by id. */
export function newId(): string {
  return v7();
}
