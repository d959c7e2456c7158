import type { Type } from '@nestjs/common';
import { fieldsOf, Shown } from '../../platform/http/fields.js';
import { show, ViewOf } from '../../platform/http/views.js';
import type { Paper } from './paper.entity.js';

/** Who saw the original, and when. */
export class VerifiedView {
  @Shown({ type: 'string', format: 'uuid', description: 'Member who verified it' })
  by: string;

  @Shown({ type: 'string', format: 'date-time' })
  at: string;
}

/** What every paper shows besides its own fields. */
export class PaperHead {
  @Shown({ type: 'string', format: 'uuid' })
  id: string;

  @Shown({ type: 'string', format: 'uuid' })
  memberId: string;

  @Shown({
    type: () => VerifiedView,
    nullable: true,
    description: 'Null while no officer has seen the original; whether it counts until then is club policy',
  })
  verified: VerifiedView | null;

  @Shown({ type: 'string', format: 'date-time', description: 'When it was first recorded' })
  recordedAt: string;

  @Shown({ type: 'integer', description: 'Counts the edits; the ETag is this number in quotes' })
  rowVersion: number;
}

/** The fields of a draft and of `PaperHead`, as an answer has them. */
export function PaperViewOf<T>(draft: Type<T>): Type<PaperHead & InstanceType<ReturnType<typeof ViewOf<T>>>> {
  const View = ViewOf(draft);
  for (const [key, options] of fieldsOf(PaperHead)) Shown(options)(View.prototype as object, key);
  return View as Type<PaperHead & InstanceType<ReturnType<typeof ViewOf<T>>>>;
}

/** A paper as its view declares it. `more` gives the fields that the row does not have by the same name. */
export function showPaper<V extends PaperHead>(view: Type<V>, row: Paper, more: Partial<V> = {}): V {
  const { verifiedBy, verifiedAt } = row;
  const verified = verifiedBy === null || verifiedAt === null ? null : { by: verifiedBy, at: verifiedAt };
  return show(view, row, { verified, ...more } as Partial<V>);
}
