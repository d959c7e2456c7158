import { DayField, Shown, WordsField } from '../../platform/http/fields.js';
import { ChangesOf } from '../../platform/http/views.js';
import type { InstructorFact } from '../../rules/facts/person.js';
import { INSTRUCTOR_RATINGS } from '../vocabulary.js';
import { InstructorCertificate } from './instructor-certificate.entity.js';
import { PaperViewOf, showPaper } from './paper.dto.js';
import { paperKind } from './paper-kind.js';
import { SuspensionView } from './suspension.dto.js';
import { suspensionsOf } from './suspension-rows.js';

/** A flight instructor certificate. */
export class InstructorCertificateDto {
  @DayField()
  issuedOn: string;

  @WordsField(INSTRUCTOR_RATINGS, { least: 1 })
  ratings: InstructorFact['ratings'];

  @DayField({ nullable: true, description: 'Newest recent-experience event (14 CFR 61.197)' })
  recentExperienceOn?: string | null;

  @DayField({
    nullable: true,
    description: 'End date printed on it; certificates issued since December 2024 have none',
  })
  printedEndOn?: string | null;
}

/** Changes to an instructor certificate. */
export class InstructorCertificateChanges extends ChangesOf(InstructorCertificateDto) {}

/** An instructor certificate as the API shows it. */
export class InstructorCertificateView extends PaperViewOf(InstructorCertificateDto) {
  @Shown({ type: () => SuspensionView, isArray: true })
  suspensions: SuspensionView[];
}

/** Flight instructor certificates. */
export const INSTRUCTOR_CERTIFICATES = paperKind<
  InstructorCertificate,
  InstructorCertificateDto,
  InstructorCertificateView
>({
  path: 'instructor-certificates',
  name: { one: 'InstructorCertificate', many: 'InstructorCertificates' },
  noun: 'flight instructor certificate',
  entity: InstructorCertificate,
  draft: InstructorCertificateDto,
  patch: InstructorCertificateChanges,
  view: InstructorCertificateView,
  values: ({ issuedOn, ratings, recentExperienceOn, printedEndOn }) => ({
    issuedOn,
    ratings,
    recentExperienceOn,
    printedEndOn,
  }),
  async views(em, rows) {
    const suspensions = await suspensionsOf(em, 'instructorCertificateId', rows);
    return rows.map((row) =>
      showPaper(InstructorCertificateView, row, { suspensions: suspensions.get(row.id) ?? [] }),
    );
  },
});
