import { ArrayUnique } from 'class-validator';
import {
  DayField,
  PartsField,
  Shown,
  WordField,
  WordsField,
  TextsField,
} from '../../platform/http/fields.js';
import { ChangesOf } from '../../platform/http/views.js';
import type { AircraftCategory, AircraftClass, CertificateLevel } from '../../rules/facts/person.js';
import { AIRCRAFT_CATEGORIES, AIRCRAFT_CLASSES, CERTIFICATE_LEVELS } from '../vocabulary.js';
import { PaperViewOf } from './paper.dto.js';
import { SuspensionView } from './suspension.dto.js';

/** A category and class rating. */
export class CategoryClassDto {
  @WordField(AIRCRAFT_CATEGORIES)
  category: AircraftCategory;

  @WordField(AIRCRAFT_CLASSES, { description: "'none' where the category has no classes" })
  class: AircraftClass;
}

/** A pilot certificate with its ratings. */
export class CertificateDto {
  @WordField(CERTIFICATE_LEVELS)
  level: CertificateLevel;

  @DayField()
  issuedOn: string;

  @DayField({ nullable: true, description: 'Last valid date printed on it, where it has one' })
  validThrough?: string | null;

  @TextsField({ optional: true, description: 'Limitations as printed on it' })
  limitations?: string[];

  @PartsField(() => CategoryClassDto, {
    optional: true,
    max: 20,
    description: 'Empty on a student certificate',
  })
  @ArrayUnique((rating: CategoryClassDto) => `${rating?.category} ${rating?.class}`)
  ratings?: CategoryClassDto[];

  @WordsField(AIRCRAFT_CATEGORIES, { optional: true, description: 'Categories with an instrument rating' })
  instrument?: AircraftCategory[];

  @TextsField({
    optional: true,
    description: 'Type ratings by type designator',
    pattern: /^[A-Z0-9][A-Z0-9-]{1,11}$/,
    says: 'a designator of 2 to 12 capital letters, digits or hyphens',
    example: ['WREN'],
  })
  typeRatings?: string[];
}

/** Changes to a certificate; each list is replaced as a whole. */
export class CertificateChanges extends ChangesOf(CertificateDto) {}

/** A pilot certificate as the API shows it. */
export class CertificateView extends PaperViewOf(CertificateDto) {
  @Shown({ type: () => SuspensionView, isArray: true })
  suspensions: SuspensionView[];
}
