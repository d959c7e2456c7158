import { registerChecks, registerReferences } from '../../platform/database/constraint-words.js';
import { registerWords } from '../../platform/database/constraint-problems.js';

/** Alerts are written by the service itself; who is told is laid down by officers. */
registerChecks([
  ['overdue_contacts_after_chk', 'contacts', 'Give the minutes after the time due back, 0 to 1,440.'],
  ['overdue_contacts_pkey', 'contacts', 'This person is named twice. Leave one out.'],
]);
registerWords({ code: 'overdue-alert-refused', status: 409, title: 'The alert cannot be kept' }, [
  [
    'overdue_alerts_stage_chk',
    undefined,
    'It is written by the service itself. Tell whoever runs the service.',
  ],
  ['overdue_alerts_late_chk', undefined, 'Nobody is told before the aircraft is due back.'],
  ['overdue_alerts_seen_chk', undefined, 'An alert is put away after it was told.'],
  ['overdue_alerts_once_uq', undefined, 'This person was told of this flight and its time due back before.'],
  ['aircraft_out_pkey', undefined, 'The aircraft is out with this flight already. Read it again.'],
]);
registerReferences([
  ['overdue_contacts_member_fk', 'contacts', 'Name members of the club.'],
  ['aircraft_out_booking_fk', undefined, 'The aircraft is out with a booking of the club.'],
  ['overdue_alerts_booking_fk', undefined, 'An alert is of a booking of the club, which stays with it.'],
  ['overdue_alerts_dispatch_fk', undefined, 'An alert is of a dispatch of the club, which stays with it.'],
  ['overdue_alerts_member_fk', undefined, 'An alert is for a member of the club.'],
]);
