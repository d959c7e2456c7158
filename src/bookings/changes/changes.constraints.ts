import { registerConstraint } from '../../platform/database/constraint-problems.js';

/** What the constraints of changed, offered, held and repeated bookings mean to a client. The service refuses most of them first. */
registerConstraint(
  ...['bookings_series_fk', 'bookings_hold_chk', 'bookings_late_chk'].map((constraint) => ({
    constraint,
    code: 'booking-state-refused',
    status: 409,
    title: 'The booking cannot be in this state',
    detail: 'Read the booking again; somebody may have changed it.',
  })),
  {
    constraint: 'bookings_reason_chk',
    code: 'cancel-reason-long',
    status: 422,
    title: 'The reason is too long',
    detail: 'Say in 500 letters or fewer why the booking is given back.',
    field: 'reason',
  },
  ...['booking_series_recurrence_chk', 'booking_series_zone_chk'].map((constraint) => ({
    constraint,
    code: 'recurrence-refused',
    status: 422,
    title: 'The recurrence cannot be read',
    detail: 'Write it as RFC 5545 does: FREQ=WEEKLY;COUNT=8.',
    field: 'recurrence',
  })),
  ...[
    'bookings_canceller_fk',
    'booking_series_member_fk',
    'booking_series_maker_fk',
    'booking_changes_by_fk',
    'hand_overs_from_fk',
    'hand_overs_to_fk',
    'hand_overs_offered_fk',
  ].map((constraint) => ({
    constraint,
    code: 'person-unknown',
    status: 404,
    title: 'No such member',
    detail: 'The club has no such member. Check the ids.',
    field: constraint === 'hand_overs_to_fk' ? 'toId' : 'memberId',
  })),
  ...[
    'booking_changes_act_chk',
    'booking_changes_booking_fk',
    'booking_changes_decision_fk',
    'booking_changes_other_chk',
    'booking_changes_by_chk',
    'booking_changes_decided_chk',
    'booking_changes_append_only',
    'booking_series_append_only',
  ].map((constraint) => ({
    constraint,
    code: 'booking-history-final',
    status: 409,
    title: 'The history of a booking is final',
    detail:
      'What was done to a booking is written once, as it was done. Change the booking for another entry.',
  })),
  ...[
    'hand_overs_outcome_chk',
    'hand_overs_booking_fk',
    'hand_overs_other_chk',
    'hand_overs_closed_chk',
    'hand_overs_open_uq',
  ].map((constraint) => ({
    constraint,
    code: 'hand-over-refused',
    status: 409,
    title: 'It cannot be handed over',
    detail: 'A booking is offered to one other member at a time. Withdraw the open offer first.',
  })),
  ...['displacements_block_fk', 'displacements_for_chk'].map((constraint) => ({
    constraint,
    code: 'displacement-refused',
    status: 409,
    title: 'The flight cannot be told of so',
    detail: 'A flight makes room for one visit to the shop, or for one block of the same aircraft.',
  })),
);
