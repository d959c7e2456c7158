import './limits/limits.constraints.js';
import './checks/checks.constraints.js';
import './members.constraints.js';
import { Module } from '@nestjs/common';
import { MemberChecksController } from './checks/member-checks.controller.js';
import { MemberChecksService } from './checks/member-checks.service.js';
import { MembersController } from './members.controller.js';
import { MembersService } from './members.service.js';
import { LimitsController } from './limits/limits.controller.js';
import { LimitsService } from './limits/limits.service.js';
import { BASIC_MED } from './papers/basic-med.js';
import { CERTIFICATES } from './papers/certificates.js';
import { ENDORSEMENTS } from './papers/endorsements.js';
import { INSTRUCTOR_CERTIFICATES } from './papers/instructor-certificates.js';
import { MEDICALS } from './papers/medicals.js';
import { paperController } from './papers/paper.controller.js';
import { PapersService } from './papers/papers.service.js';
import { DocumentsController } from './documents/documents.controller.js';
import { DocumentsService } from './documents/documents.service.js';
import { RATINGS } from './papers/ratings.js';
import { REVIEWS } from './papers/reviews.js';
import { suspensionController } from './papers/suspension.controller.js';
import { SuspensionsService } from './papers/suspensions.service.js';
import { ErasureService } from './record/erasure.service.js';
import { ExportService } from './record/export.service.js';
import { RecordController } from './record/record.controller.js';

/** People, and the papers that say what they may do. */
@Module({
  controllers: [
    DocumentsController,
    RecordController,
    LimitsController,
    MemberChecksController,
    MembersController,
    paperController(CERTIFICATES),
    suspensionController({ ...CERTIFICATES, parent: 'certificateId' }, 'Certificate'),
    paperController(INSTRUCTOR_CERTIFICATES),
    suspensionController(
      { ...INSTRUCTOR_CERTIFICATES, parent: 'instructorCertificateId' },
      'InstructorCertificate',
    ),
    paperController(MEDICALS),
    paperController(BASIC_MED),
    paperController(REVIEWS),
    paperController(ENDORSEMENTS),
    paperController(RATINGS),
  ],
  providers: [
    MembersService,
    PapersService,
    SuspensionsService,
    DocumentsService,
    MemberChecksService,
    ErasureService,
    ExportService,
    LimitsService,
  ],
})
export class MembersModule {}
