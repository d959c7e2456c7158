import { applyDecorators, type Type } from '@nestjs/common';
import { ArrayMaxSize, ArrayUnique, IsArray, IsString, Length, Matches, ValidateIf } from 'class-validator';
import { fieldsOf, Shown } from '../../platform/http/fields.js';
import { show, ViewOf } from '../../platform/http/views.js';
import type { Paper } from './paper.entity.js';

/** A list of short texts; left out means empty. */
export const TextsField = (of: {
  description: string;
  pattern?: RegExp;
  says?: string;
  example?: string[];
}): PropertyDecorator => {
  const { pattern, says, ...words } = of;
  const message = `each of $property must be ${says}`;
  return applyDecorators(
    Shown({
      type: 'array',
      items: { type: 'string', minLength: 1, maxLength: 300 },
      maxItems: 20,
      required: false,
      ...words,
    }),
    ValidateIf((_body, value) => value !== undefined),
    IsArray(),
    ArrayMaxSize(20),
    ArrayUnique(),
    IsString({ each: true }),
    Length(1, 300, { each: true }),
    Matches(/\S/, { each: true, message: 'each of $property must say something' }),
    ...(pattern ? [Matches(pattern, { each: true, message })] : []),
  );
};

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
