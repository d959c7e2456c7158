/** Words that facts are gathered with: they go into the sheet, and from there into sentences. */

/** What is missing, completing "Cannot tell: …". */
export const MISSING = {
  birthDate: 'the birth date is not on record',
  weighing: 'no empty weight with its arm is on record',
  loading: 'no loading sheet is on record for this aircraft',
  performance: 'no take-off and landing tables are on record for this aircraft',
};

/** What a paper is called that waits for an officer; a level, class or kind stands before or behind it. */
export const UNVERIFIED = {
  certificate: ' certificate',
  instructor: 'instructor certificate',
  medical: 'medical certificate of class ',
  basicMed: 'BasicMed papers',
  endorsement: ' endorsement',
  rating: ' rating',
};

/** What somebody is busy with; the registration follows. */
export const A_BOOKING_OF = 'a booking of ';
