/** Things of which there is one, and orders that are kept. */
const conflict = (constraint: string, code: string, title: string, detail: string, field?: string) => ({
  constraint,
  code,
  status: 409,
  title,
  detail,
  field,
});

export const FLEET_UNIQUES = [
  conflict(
    'aircraft_models_name_uq',
    'model-already-there',
    'Model already there',
    'The club already has a model of this name. Edit that one, or name this one apart.',
    'makeModel',
  ),
  conflict(
    'aircraft_registration_uq',
    'registration-taken',
    'Aircraft already there',
    'The club already has an aircraft with this registration. Edit that one, or check the registration.',
    'registration',
  ),
  ...['loading_sheets_model_uq', 'loading_sheets_aircraft_uq'].map((constraint) =>
    conflict(
      constraint,
      'loading-sheet-already-there',
      'Loading sheet already there',
      'There is a loading sheet already. Put yours in its place (PUT), with its ETag.',
    ),
  ),
  ...['performance_sheets_model_uq', 'performance_sheets_aircraft_uq'].map((constraint) =>
    conflict(
      constraint,
      'performance-sheet-already-there',
      'Tables already there',
      'There are take-off and landing tables already. Put yours in their place (PUT), with their ETag.',
    ),
  ),
  conflict(
    'equipment_aircraft_uq',
    'equipment-already-there',
    'Equipment already there',
    'This piece of equipment is already recorded for the aircraft. Read the equipment again.',
  ),
  conflict(
    'meter_readings_at_uq',
    'meter-reading-already-there',
    'Reading already there',
    'The meter already has a reading of this very time. Give the time at which this one was read.',
    'readAt',
  ),
  conflict(
    'squawk_parts_append_only',
    'squawk-part-final',
    'Parts used stay',
    'A part that was recorded stays on record. Reopen the squawk and close it again with the right parts.',
  ),
  conflict(
    'attachments_append_only',
    'photo-final',
    'Photos stay',
    'A photo of a squawk stays as it is. Add another one.',
  ),
  conflict(
    'meter_reading_voids_append_only',
    'meter-readings-kept',
    'Readings are not edited',
    'A meter reading that was taken back stays so. Record the right one.',
  ),
  conflict(
    'meter_reading_voids_pkey',
    'meter-reading-void',
    'Not taken back',
    'The reading was taken back before and does not count. Record the right one.',
  ),
  conflict(
    'equipment_changes_aircraft_uq',
    'equipment-change-already-there',
    'Change already there',
    'This equipment change is already recorded for the aircraft. Read the changes again.',
  ),
  conflict(
    'squawks_aircraft_uq',
    'squawk-already-there',
    'Squawk already there',
    'This squawk is already recorded for the aircraft. Read the squawks again.',
  ),
  conflict(
    'attachments_once_uq',
    'photo-already-there',
    'Photo already there',
    'The squawk already has this very photo. Read the squawk again.',
    'photo',
  ),
  conflict(
    'deferrals_squawk_uq',
    'squawk-already-deferred',
    'Already deferred',
    'The squawk already has a deferral. Edit that one.',
  ),
  conflict(
    'meter_readings_append_only',
    'meter-readings-kept',
    'Readings are not edited',
    'A meter reading stays as it was written. Record another reading; for a new meter, a replacement.',
  ),
  {
    ...conflict(
      'meter_readings_not_below_last_chk',
      'meter-below-last',
      'Below the last reading',
      'The meter has shown more before. Check the figure and the time; for a new meter, record a replacement.',
      'shownH',
    ),
    status: 422,
  },
  {
    ...conflict(
      'meter_readings_not_above_next_chk',
      'meter-above-next',
      'Above a later reading',
      'The meter has shown less later. Check the figure and the time of this reading.',
      'shownH',
    ),
    status: 422,
  },
];
