/** What people are told when the database refuses a practice record. Imported for its effect by the module. */
import { registerChecks, registerReferences } from '../platform/database/constraint-words.js';
import { registerConstraint } from '../platform/database/constraint-problems.js';

registerChecks([
  [
    'practice_records_manoeuvre_chk',
    'manoeuvre',
    'Name one of the manoeuvres of the certification standards.',
  ],
  ['practice_records_seen_chk', undefined, 'A record is by the pilot or by an instructor.'],
  [
    'practice_records_crosswind_chk',
    'crosswindKt',
    'Give the crosswind in knots, 0 to 80, from either side.',
  ],
  ['practice_records_gust_chk', 'gustSpreadKt', 'Give how far gusts went over the wind, in knots, 0 to 80.'],
  ['practice_records_runway_chk', 'runwayFt', 'Give the length of the runway, 100 to 20,000 ft.'],
  ['practice_records_equipment_chk', 'equipment', 'Name 20 pieces or groups of equipment at most.'],
  [
    'practice_records_measured_chk',
    'measured',
    'Give the least and the most of each measure, the least first.',
  ],
  ['practice_records_level_chk', 'level', 'Name one of private, commercial, instrument.'],
  ['practice_records_note_chk', 'note', 'Say it in 2,000 characters.'],
  ['practice_records_track_chk', 'trackSha256', 'Give the digest the reading of the track answered with.'],
  ['practice_records_event_chk', 'event', 'Name an event as the reading of the track named it.'],
  ['practice_records_because_chk', 'because', 'Say why it is corrected, in 5 to 500 characters.'],
  [
    'practice_records_instructor_chk',
    undefined,
    'A record by an instructor names the instructor, another does not.',
  ],
  ['practice_records_own_chk', undefined, 'Nobody signs their own practice as an instructor.'],
  ['practice_records_pair_chk', undefined, 'A file and an event in it are named together.'],
  ['practice_records_itself_chk', undefined, 'A record does not correct itself.'],
  ['practice_records_correction_chk', 'because', 'A correction names what it corrects and says why.'],
  ['practice_records_verdict_chk', undefined, 'The outcome is the one that was judged.'],
  [
    'practice_records_signed_chk',
    undefined,
    'What an instructor signed is corrected by an instructor, and what was withdrawn is not corrected.',
  ],
  ['practice_records_append_only', undefined, 'A practice record is never changed. Correct it by a new one.'],
]);
registerReferences([
  [
    'practice_records_member_fk',
    undefined,
    'A practice record belongs to a member of the club, and a member with records is not deleted.',
  ],
  ['practice_records_instructor_fk', undefined, 'It is signed by a member of the club, who is not deleted.'],
  ['practice_records_recorder_fk', undefined, 'It is recorded by a member of the club, who is not deleted.'],
  ['practice_records_log_fk', 'logEntryId', "It names one of the same member's log entries, or none."],
  ['practice_records_corrects_fk', undefined, "A correction is of one of the same member's records."],
  ['log_entries_owner_uq', undefined, 'A log entry stays with its member.'],
  ['practice_records_owner_uq', undefined, 'A practice record stays with its member.'],
]);
registerConstraint({
  ...{ constraint: 'practice_records_corrects_uq', code: 'practice-corrected-already', status: 409 },
  title: 'Corrected already',
  detail: 'This record has been corrected before. Correct the newest one instead.',
});
registerConstraint({
  ...{ constraint: 'practice_records_track_uq', code: 'track-event-taken-over', status: 409 },
  title: 'Taken over already',
  detail: 'Something of this track is on record already. Leave it out, or correct the record.',
});
