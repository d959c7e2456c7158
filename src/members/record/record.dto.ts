import { Shown, TextField } from '../../platform/http/fields.js';

/** Why a member's data is erased. */
export class EraseDto {
  @TextField({
    max: 500,
    pattern: /^[\s\S]{5,}$/,
    says: 'at least 5 characters',
    example: 'Asked in writing on leaving the club',
  })
  reason: string;
}

/** Something that is kept of an erased member, and why. */
export class KeptView {
  @Shown({ type: 'string' })
  what: string;

  @Shown({ type: 'string' })
  why: string;

  @Shown({ type: 'integer' })
  count: number;
}

/** What an erasure does. */
export class ErasureView {
  @Shown({ type: 'string', description: 'What the member is called from then on' })
  newName: string;

  @Shown({
    type: 'object',
    additionalProperties: { type: 'integer' },
    description: 'Rows deleted, by what they are',
  })
  deleted: Record<string, number>;

  @Shown({
    type: 'integer',
    description: "Remarks and notes of the member's flights and bookings that are emptied",
  })
  emptiedNotes: number;

  @Shown({
    type: 'integer',
    description: 'Entries of the audit log that keep who and when, and lose what was said',
  })
  bareAuditEntries: number;

  @Shown({ type: () => KeptView, isArray: true })
  kept: KeptView[];
}

/** Everything on record about a member. */
export class MemberExport {
  @Shown({ type: 'string', format: 'date-time' })
  exportedAt: string;

  @Shown({ type: 'object', additionalProperties: true })
  member: Record<string, unknown>;

  @Shown({ type: 'object', additionalProperties: true, nullable: true, description: 'Without the password' })
  account: Record<string, unknown> | null;

  @Shown({
    type: 'object',
    additionalProperties: { type: 'array', items: { type: 'object' } },
    description:
      'Papers by kind, documents, log, checkouts, bookings, decisions and more, with the columns of the tables',
  })
  records: Record<string, unknown[]>;
}
