/** CARs: until when medical certificates, recurrent training, and papers that are endorsed with their end hold. */
import { CATEGORIES, medicalLasts, type Privilege } from '../packs/ca/medical/certificate.js';
import { COUNTS, recurrentThrough } from '../packs/ca/recency/recurrent-training.js';
import { CA_MEDICAL } from '../parameters/ca/medical.js';
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

export const CA_HOLD_PARAMETERS = [...CA_MEDICAL.map(({ id }) => id), 'ca.recurrent-training.months'];

const PURPOSES: [Privilege, string][] = [
  ['hire', 'flying for hire'],
  ['private', 'flying on a private licence'],
  ['recreational', 'flying on a recreational permit'],
  ['student', 'flying on a student permit'],
];

export const caPapersHold = ({ person, p }: Papers): PaperHold[] => [
  ...certificatesHold(listOf(person.certificates)),
  ...medicalsHold(person, { sameDayToo: true }, ({ class: category, examOn }, born) =>
    PURPOSES.filter(([privilege]) => CATEGORIES[privilege].includes(category)).map(([privilege, purpose]) =>
      hold(purpose, medicalLasts(examOn, born, privilege, p)),
    ),
  ),
  ...listOf(person.reviews)
    .filter(({ kind }) => COUNTS.includes(kind))
    .map(({ id, on }) => ({
      paperId: id,
      holds: [hold('recurrent training', recurrentThrough(on, p.number('ca.recurrent-training.months')))],
    })),
  ...printedInstructorsHold(listOf(person.instructor)),
  ...endorsementsHold(listOf(person.endorsements), () => null),
  ...ratingsHold(listOf(person.ratings)),
];
