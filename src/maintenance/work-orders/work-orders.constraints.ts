import { registerConstraint } from '../../platform/database/constraint-problems.js';
import { VALUE_REFUSED, REFERENCE_NOT_KEPT } from '../../platform/database/constraint-words.js';

const value = (constraint: string, field: string | undefined, detail: string) => ({
  constraint,
  ...VALUE_REFUSED,
  detail,
  field,
});
const linked = (constraint: string, field: string | undefined, detail: string) => ({
  constraint,
  ...REFERENCE_NOT_KEPT,
  detail,
  field,
});
const state = (constraint: string, detail: string) => ({
  constraint,
  code: 'work-not-in-that-state',
  status: 409,
  title: 'Not a step the work can take now',
  detail,
  field: undefined,
});

const AGAIN = 'Read the work order again.';

/** What the constraints of shop visits mean to a client. The services refuse nearly all of it before. */
registerConstraint(
  value('signers_name_chk', 'name', 'Give a name of up to 120 characters.'),
  value('signers_certificate_chk', 'certificate', 'Give the certificate in up to 80 characters.'),
  value(
    'signers_holds_chk',
    'holds',
    'Name one of mechanic, inspection-authorization, repair-station, manufacturer, pilot.',
  ),
  value('signers_span_chk', 'validThrough', 'The last day lies on or after the first. Check both.'),
  value('work_orders_title_chk', 'title', 'Say in up to 200 characters what the visit is for.'),
  value('work_orders_shop_chk', 'shop', 'Name the shop in up to 200 characters.'),
  value('work_orders_because_chk', 'because', 'Say in at least 5 characters why it is called off.'),
  value('work_orders_statement_chk', 'statement', 'Copy the statement from the maintenance record.'),
  value(
    'work_orders_check_because_chk',
    'checkFlightBecause',
    'Say what makes a check flight necessary, or leave it out.',
  ),
  value('work_orders_check_entry_chk', 'entry', 'Copy the entry from the aircraft’s records.'),
  value('work_orders_order_chk', 'signedOn', 'Work is signed after it began.'),
  value(
    'work_orders_flown_chk',
    'flownAt',
    'A check flight comes after the signature, and says when, by whom and what was entered.',
  ),
  value('work_lines_kind_chk', 'kind', 'Name one of item, squawk, wish, weighing, other.'),
  value('work_lines_title_chk', 'title', 'Say in up to 200 characters what is to be done.'),
  value('work_lines_outcome_chk', 'outcome', 'Name one of done, not-done.'),
  value('work_lines_note_chk', 'note', 'Note it in up to 2000 characters.'),
  value(
    'work_lines_about_chk',
    'aboutId',
    'A line of kind item, squawk or wish names one; other lines name none.',
  ),
  ...['work_lines_item_uq', 'work_lines_squawk_uq', 'work_lines_wish_uq'].map((constraint) => ({
    ...value(constraint, 'aboutId', 'It is on the work order already.'),
    code: 'already-on-the-order',
    status: 409,
    title: 'There already',
  })),
  state('work_orders_state_chk', AGAIN),
  state(
    'work_orders_moves_chk',
    `Work goes from planned to in work to signed, or is called off before it begins. ${AGAIN}`,
  ),
  state('work_orders_kept_chk', 'What was signed or called off stays as it is. Plan another visit.'),
  state('work_orders_begun_chk', AGAIN),
  state('work_orders_cancelled_chk', AGAIN),
  state('work_orders_signed_chk', AGAIN),
  state('work_orders_check_chk', AGAIN),
  state('work_orders_lines_chk', 'Say of each line whether it was done.'),
  state('work_lines_kept_chk', 'The lines of work that is over stay as they are. Plan another visit.'),
  state('work_orders_booking_uq', 'The time in the calendar belongs to another visit. Choose another time.'),
  state('displacements_once_uq', 'The member has been told already.'),
  linked(
    'work_orders_aircraft_fk',
    undefined,
    'A visit is of one of the club’s aircraft, which stays as long as its visits.',
  ),
  linked('work_orders_booking_fk', 'from', 'A visit takes up time of the same aircraft, and keeps it.'),
  linked(
    'work_orders_signer_fk',
    'signerId',
    'Name a signer of the club; one who has signed stays on record.',
  ),
  linked(
    'work_orders_change_fk',
    'equipmentChange',
    'The change is of the same aircraft, and stays with the visit.',
  ),
  linked('work_orders_weighing_fk', 'weighing', 'The weighing is of the club, and stays with the visit.'),
  linked(
    'work_orders_made_fk',
    undefined,
    'A visit is planned by a member of the club, and keeps that name.',
  ),
  linked(
    'work_orders_flown_by_fk',
    'pilotId',
    'A check flight is flown by a member of the club, and keeps that name.',
  ),
  linked('work_lines_order_fk', undefined, 'A line belongs to a visit of the same aircraft.'),
  linked(
    'work_lines_item_fk',
    'aboutId',
    'A line is about an item of the same aircraft, which stays as long. Retire the item instead.',
  ),
  linked(
    'work_lines_squawk_fk',
    'aboutId',
    'A line is about a squawk of the same aircraft, which stays as long.',
  ),
  linked(
    'work_lines_wish_fk',
    'aboutId',
    'A line is about a wish of the same aircraft, which stays as long. Note the day it was done instead.',
  ),
  linked(
    'displacements_booking_fk',
    undefined,
    'What was displaced is a booking of the same aircraft, and stays on record.',
  ),
  linked(
    'displacements_order_fk',
    undefined,
    'Flights make room for a visit of the same aircraft, and both stay on record.',
  ),
  linked('displacements_member_fk', undefined, 'A member of the club is told, and stays on record.'),
  ...[
    'airworthiness_items_aircraft_uq',
    'upgrade_wishes_aircraft_uq',
    'work_orders_aircraft_uq',
    'bookings_of_aircraft_uq',
  ].map((constraint) => linked(constraint, undefined, 'It is on record already. Read it again.')),
);
