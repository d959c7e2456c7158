/** Part-MED and Part-FCL: until when medical certificates, and papers that are endorsed with their end, hold. */
import { medicalThrough, type MedicalPrivilege } from '../packs/eu/medical/durations.js';
import { EU_LAPL_MEDICAL } from '../parameters/eu/lapl-medical.js';
import { EU_MEDICAL } from '../parameters/eu/medical.js';
import {
  certificatesHold,
  endorsementsHold,
  hold,
  listOf,
  medicalsHold,
  printedInstructorsHold,
  ratingsHold,
  type PaperHold,
  type Papers,
} from './hold.js';

export const EU_HOLD_PARAMETERS = [...EU_MEDICAL, ...EU_LAPL_MEDICAL].map(({ id }) => id);

const PURPOSES: [MedicalPrivilege, string][] = [
  ['hire', 'flying for hire'],
  ['private', 'flying on a private licence'],
  ['lapl', 'flying on a light aircraft licence'],
];

export const euPapersHold = ({ person, p }: Papers): PaperHold[] => [
  ...certificatesHold(listOf(person.certificates)),
  ...medicalsHold(person, { sameDayToo: true }, (medical, born) =>
    PURPOSES.flatMap(([privilege, purpose]) => {
      const through = medicalThrough(medical, born, privilege, p);
      return through === null ? [] : [hold(purpose, through)];
    }),
  ),
  ...printedInstructorsHold(listOf(person.instructor)),
  ...endorsementsHold(listOf(person.endorsements), () => null),
  ...ratingsHold(listOf(person.ratings)),
];
