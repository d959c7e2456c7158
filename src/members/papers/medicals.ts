import { DayField, WholeField, TextsField } from '../../platform/http/fields.js';
import { ChangesOf } from '../../platform/http/views.js';
import { Medical } from './medical.entity.js';
import { PaperViewOf, showPaper } from './paper.dto.js';
import { paperKind } from './paper-kind.js';

/** A medical certificate: class and dates only, nothing medical. */
export class MedicalDto {
  @WholeField({
    min: 1,
    max: 4,
    description: 'In Canada the category; 4 is category 4 there and the LAPL certificate in Europe',
  })
  class: 1 | 2 | 3 | 4;

  @DayField({ description: 'Date of the examination; durations count from it' })
  examOn: string;

  @TextsField({ optional: true, description: 'Limitations as printed on it' })
  limitations?: string[];

  @DayField({
    nullable: true,
    description: 'First day it no longer counts (withdrawn, suspended); null while it stands',
  })
  withdrawnOn?: string | null;
}

/** Changes to a medical certificate. */
export class MedicalChanges extends ChangesOf(MedicalDto) {}

/** A medical certificate as the API shows it. */
export class MedicalView extends PaperViewOf(MedicalDto) {}

/** Medical certificates. */
export const MEDICALS = paperKind<Medical, MedicalDto, MedicalView>({
  path: 'medicals',
  name: { one: 'Medical', many: 'Medicals' },
  noun: 'medical certificate',
  entity: Medical,
  draft: MedicalDto,
  patch: MedicalChanges,
  view: MedicalView,
  values: ({ class: medicalClass, examOn, limitations, withdrawnOn }) => ({
    class: medicalClass,
    examOn,
    limitations,
    withdrawnOn,
  }),
  views: async (_em, rows) => rows.map((row) => showPaper(MedicalView, row)),
});
