import { CERTIFICATE_LEVELS } from '../../members/vocabulary.js';
import {
  DayField,
  FlagField,
  HoursField,
  IdsField,
  PartField,
  Shown,
  TextField,
  WholeField,
  WordField,
} from '../../platform/http/fields.js';
import { PageShape } from '../../platform/http/pages.js';
import { RecordHead, ViewOf } from '../../platform/http/views.js';
import type { CertificateLevel } from '../../rules/facts/person.js';

/** What is asked of pilots who are not named; what is left out, null or 0 is not asked. */
export class PilotMinimumsDto {
  @WordField(CERTIFICATE_LEVELS, { nullable: true, description: 'This certificate, or a higher one' })
  leastLevel?: CertificateLevel | null;

  @FlagField({ optional: true, description: 'An instrument rating for the category of the aircraft' })
  instrumentRating?: boolean;

  @WholeField({ nullable: true, min: 1, max: 120 })
  leastAgeYears?: number | null;

  @WholeField({ nullable: true, min: 1, max: 120, description: 'Still covered at this age' })
  mostAgeYears?: number | null;

  @HoursField({ nullable: true, description: 'Hours in all' })
  totalH?: number | null;

  @HoursField({ nullable: true, description: 'Hours in the category and class of the aircraft' })
  classH?: number | null;

  @HoursField({ nullable: true, description: 'Hours with retractable gear' })
  retractableH?: number | null;

  @HoursField({ nullable: true, description: 'Hours in tailwheel aircraft' })
  tailwheelH?: number | null;

  @HoursField({ nullable: true, description: 'Hours in the make and model' })
  modelH?: number | null;

  @HoursField({
    nullable: true,
    description: 'Hours within recentDays of the flight; given together with it',
  })
  recentH?: number | null;

  @WholeField({ nullable: true, min: 1, max: 730, description: '90, or 365 for a year' })
  recentDays?: number | null;

  @FlagField({ optional: true, description: 'A checkout in the model, signed by an instructor of the club' })
  checkoutInModel?: boolean;

  @HoursField({ nullable: true, description: 'Hours of instruction received in the make and model' })
  dualInModelH?: number | null;

  @WholeField({
    nullable: true,
    min: 1,
    max: 60,
    description: 'A flight review, a test that stands for one, or a club check within so many months',
  })
  reviewMonths?: number | null;
}

/** Terms to enter. */
export class NewInsuranceTerms {
  @TextField({ max: 200, description: 'Where it stands: the clause of the policy. No numbers of persons' })
  source: string;

  @DayField({ description: 'First day of the policy' })
  validFrom: string;

  @DayField({ description: 'Last day of the policy' })
  validThrough: string;

  @PartField(() => PilotMinimumsDto, {
    nullable: true,
    description: 'Null, or left out: nobody but the pilots named is covered',
  })
  minimums?: PilotMinimumsDto | null;

  @IdsField({
    optional: true,
    max: 50,
    description: 'Members the policy names; nothing else is asked of them',
  })
  namedPilotIds?: string[];
}

/** Ends terms before their last day, or takes them back. */
export class EndInsuranceTerms {
  @DayField({ nullable: true, description: 'The new last day; null, or left out: they never held' })
  through?: string | null;

  @TextField({ max: 500, description: 'In five characters or more' })
  because: string;
}

/** What is asked of pilots, each field told. */
export class PilotMinimumsView extends ViewOf(PilotMinimumsDto) {}

/** Terms as the API shows them. */
export class InsuranceTermsView extends RecordHead {
  @Shown({ type: 'string', format: 'uuid' })
  aircraftId: string;

  @Shown({ type: 'string' })
  source: string;

  @Shown({ type: 'string', format: 'date' })
  validFrom: string;

  @Shown({ type: 'string', format: 'date' })
  validThrough: string;

  @Shown({ type: () => PilotMinimumsView, nullable: true })
  minimums: PilotMinimumsView | null;

  @Shown({
    type: 'array',
    items: { type: 'string', format: 'uuid' },
    description: 'Members named; to members only themselves, if they are',
  })
  namedPilotIds: string[];

  @Shown({ type: 'integer', description: 'How many are named in all' })
  namedPilots: number;

  @Shown({ type: 'string', nullable: true, description: 'Why they were ended or taken back' })
  endedBecause: string | null;

  @Shown({ type: 'string', format: 'date-time', nullable: true, description: 'Since when they do not count' })
  voidedAt: string | null;
}

/** A page of terms, newest record first. */
export class InsurancePage extends PageShape {
  @Shown({ type: () => InsuranceTermsView, isArray: true })
  items: InsuranceTermsView[];
}
