import { registerConstraint } from '../platform/database/constraint-problems.js';
import { registerChecks, registerReferences } from '../platform/database/constraint-words.js';

/** Nobody writes these but the service itself; a refusal is a fault of it and keeps everything as it was. */
const OWN = [
  'notices_kind_chk',
  'notices_cause_chk',
  'notices_items_chk',
  'notices_gathers_chk',
  'notices_settled_chk',
  'notices_cause_uq',
  'notice_mails_state_chk',
  'notice_mails_attempts_chk',
  'notice_mails_fault_chk',
  'notice_mails_sent_chk',
  'notice_mails_given_up_chk',
  'notice_mails_digest_uq',
  'notice_preferences_pkey',
  'notice_due_work_chk',
  'reminders_pkey',
  'reminders_subject_chk',
  'reminders_lead_chk',
  'live_changes_topic_chk',
  'calendar_feeds_hash_chk',
  'calendar_feeds_hash_uq',
];

registerConstraint(
  ...OWN.map((constraint) => ({
    constraint,
    code: 'notice-refused',
    status: 422,
    title: 'The notice cannot be kept',
    detail: 'It is written by the service itself. Nothing has changed; tell whoever runs the service.',
  })),
);
registerChecks([
  ['notice_preferences_choices_chk', 'choices', 'Choose now, daily or off for each kind.'],
  ['notice_preferences_hour_chk', 'digestHour', 'Give the hour of the digest, 0 to 23.'],
  ['notice_preferences_quiet_chk', 'quietFrom', 'Give quiet hours a beginning and another end, or neither.'],
  ['calendar_feeds_shows_chk', 'shows', 'A feed shows one’s own flights, one aircraft, or the club.'],
  ['calendar_feeds_title_chk', 'title', 'Name the feed in up to 120 characters.'],
  ['calendar_feeds_of_chk', 'aircraftId', 'A feed of one aircraft names it; any other does not.'],
]);
registerReferences([
  ['notices_member_fk', undefined, 'Notices are for a member of the club, who is not deleted.'],
  ['notices_mail_fk', undefined, 'The mail a notice goes out in stays with it.'],
  ['notice_mails_member_fk', undefined, 'Mail is for a member of the club, who is not deleted.'],
  ['notice_preferences_member_fk', undefined, 'Preferences are of a member of the club, who is not deleted.'],
  ['reminders_member_fk', undefined, 'Reminders are for a member of the club, who is not deleted.'],
  ['calendar_feeds_member_fk', undefined, 'A feed is of a member of the club, who is not deleted.'],
  ['calendar_feeds_aircraft_fk', 'aircraftId', 'A feed shows an aircraft of the club, which is not deleted.'],
]);
