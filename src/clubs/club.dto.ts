import { TextField, WordField, ZoneField } from '../platform/http/fields.js';
import { ChangesOf, RecordHead, ViewOf } from '../platform/http/views.js';
import { Shown } from '../platform/http/fields.js';
import type { Jurisdiction } from '../rules/index.js';

/** Whose law may bind a club. */
export const JURISDICTIONS: readonly Jurisdiction[] = ['US', 'EU', 'CA'];

/** What a club says of itself. */
export class ClubBody {
  @TextField({
    max: 60,
    pattern: /^[a-z0-9]+(-[a-z0-9]+)*$/,
    says: 'lower-case words and digits joined by single hyphens',
    description: 'Short name, asked for at sign-in',
  })
  slug: string;

  @TextField({ max: 120 })
  name: string;

  @ZoneField({ description: "Zone in which the club's days begin and end" })
  zone: string;

  @WordField(JURISDICTIONS, { description: 'Whose law binds the club' })
  jurisdiction: Jurisdiction;
}

/** PATCH /club. */
export class ClubChanges extends ChangesOf(ClubBody) {}

/** A club as an answer. */
export class ClubView extends ViewOf(ClubBody) {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'integer' })
  rowVersion: number;

  @Shown({ type: 'string', format: 'date-time' })
  recordedAt: RecordHead['recordedAt'];
}
