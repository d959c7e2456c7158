import { DayField, FlagField } from '../../platform/http/fields.js';
import { ChangesOf } from '../../platform/http/views.js';
import { BasicMed } from './medical.entity.js';
import { PaperViewOf, showPaper } from './paper.dto.js';
import { paperKind } from './paper-kind.js';

/** What stands behind BasicMed (14 CFR 61.23(c)(3), part 68). Left out or null: not on record. */
export class BasicMedDto {
  @DayField({ nullable: true, description: 'Date of the comprehensive medical examination' })
  examOn?: string | null;

  @DayField({ nullable: true, description: 'Date of the medical education course' })
  courseOn?: string | null;

  @DayField({ nullable: true, description: "Last valid date of the driver's licence" })
  licenceValidThrough?: string | null;

  @FlagField({ nullable: true, description: 'Held a medical certificate at some time after 14 July 2006' })
  heldMedicalAfter20060714?: boolean | null;

  @FlagField({ nullable: true, description: 'The last application for a medical certificate was denied' })
  lastApplicationDenied?: boolean | null;

  @FlagField({
    nullable: true,
    description: 'The last medical certificate was revoked or suspended, or an authorisation withdrawn',
  })
  lastCertificateRevokedOrSuspended?: boolean | null;
}

/** Changes to a BasicMed record. */
export class BasicMedChanges extends ChangesOf(BasicMedDto) {}

/** A BasicMed record as the API shows it. */
export class BasicMedView extends PaperViewOf(BasicMedDto) {}

/** BasicMed records; their columns have the names of the API. */
export const BASIC_MED = paperKind<BasicMed, BasicMedDto, BasicMedView>({
  path: 'basic-med',
  name: { one: 'BasicMed', many: 'BasicMedRecords' },
  noun: 'BasicMed record',
  entity: BasicMed,
  draft: BasicMedDto,
  patch: BasicMedChanges,
  view: BasicMedView,
  values: (draft) => ({ ...draft }),
  views: async (_em, rows) => rows.map((row) => showPaper(BasicMedView, row)),
});
