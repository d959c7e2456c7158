import { newId } from '../../src/platform/ids.js';
import type { Sql } from './test-club.js';

/** An airfield, a model and an aircraft of it. */
export interface SeededFleet {
  airfieldId: string;
  modelId: string;
  aircraftId: string;
}

/** The least fleet that logs and checkouts can name: airfield XLF in Chicago's zone, a 'Sparrow 150', N-100. */
export async function seedFleet(sql: Sql, clubId: string): Promise<SeededFleet> {
  const [airfieldId, modelId, aircraftId] = [newId(), newId(), newId()];
  await sql(
    `INSERT INTO airfields (club_id, id, code, name, latitude_deg, longitude_deg, elevation_ft, zone)
     VALUES ($1, $2, 'XLF', 'Larkfield', 41.9, -88.3, 720, 'America/Chicago')`,
    [clubId, airfieldId],
  );
  await sql(
    `INSERT INTO aircraft_models (club_id, id, make_model, type_designator, category, class, engines, retractable_gear, flaps,
                                  controllable_propeller, tailwheel, pressurised, kinds_of_operation)
     VALUES ($1, $2, 'Sparrow 150', 'SPRW', 'airplane', 'single-engine-land', 1, false, true, false, false, false, '{day-vfr}')`,
    [clubId, modelId],
  );
  await sql(
    `INSERT INTO aircraft (club_id, id, registration, model_id, home_airfield_id, seats, occupants_certificated,
                           certificated_after_1996_03_11, instruction_for_hire, carries_for_hire, inspection_meter)
     VALUES ($1, $2, 'N-100', $3, $4, 4, 4, false, false, false, 'tachometer')`,
    [clubId, aircraftId, modelId, airfieldId],
  );
  return { airfieldId, modelId, aircraftId };
}
