import type { MigrationInterface, QueryRunner } from 'typeorm';
import { factTable } from './support.js';

/** Columns that both kinds of sheet have: of a model, or of one aircraft that differs from it. */
const sheetOf = (table: string): string => `
        club_id uuid NOT NULL, id uuid NOT NULL,
        model_id uuid, aircraft_id uuid,
        source text NOT NULL CONSTRAINT ${table}_source_chk CHECK (btrim(source) <> '' AND length(source) <= 200),`;

const keysOf = (table: string): string => `
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT ${table}_of_chk CHECK (num_nonnulls(model_id, aircraft_id) = 1),
        CONSTRAINT ${table}_model_uq UNIQUE (club_id, model_id),
        CONSTRAINT ${table}_aircraft_uq UNIQUE (club_id, aircraft_id),
        CONSTRAINT ${table}_model_fk FOREIGN KEY (club_id, model_id) REFERENCES aircraft_models (club_id, id) ON DELETE CASCADE,
        CONSTRAINT ${table}_aircraft_fk FOREIGN KEY (club_id, aircraft_id) REFERENCES aircraft (club_id, id)`;

const limit = (table: string, column: string): string =>
  `${column} double precision CONSTRAINT ${table}_${column.replace('_lb', '')}_chk CHECK (${column} > 0)`;

/** jsonb_path_exists with `lax` looks into lists as it goes; `strict` would refuse what is not there. */
const TABLES = `'$.tables[*] ? (!(@.weightLb.type() == "number") || !(@.groundRollFt.type() == "array") || !(@.over50Ft.type() == "array"))'`;
const distances = (column: string): string => `
        ${column} jsonb NOT NULL CONSTRAINT performance_sheets_${column}_chk CHECK (
          jsonb_typeof(${column} -> 'tables') IS NOT DISTINCT FROM 'array'
          AND jsonb_typeof(${column} -> 'factors') IS NOT DISTINCT FROM 'object'
          AND jsonb_array_length(CASE WHEN jsonb_typeof(${column} -> 'tables') = 'array' THEN ${column} -> 'tables' ELSE '[]' END) BETWEEN 1 AND 6
          AND NOT jsonb_path_exists(${column}, ${TABLES})),`;

/** Loading sheets and take-off and landing tables, of a model or of one aircraft; slopes of runways. */
export class Loading1764000000014 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      CREATE TABLE loading_sheets (${sheetOf('loading_sheets')}
        fuel_kind text NOT NULL CONSTRAINT loading_sheets_fuel_chk CHECK (fuel_kind IN ('avgas', 'jet')),
        -- Null: the model's own figure, or none.
        ${limit('loading_sheets', 'max_takeoff_lb')},
        ${limit('loading_sheets', 'max_landing_lb')},
        ${limit('loading_sheets', 'max_zero_fuel_lb')},
        -- In order: seat rows from the front, tanks as they are filled.
        stations jsonb NOT NULL CONSTRAINT loading_sheets_stations_chk CHECK (
          jsonb_typeof(stations) = 'array'
          AND jsonb_array_length(CASE WHEN jsonb_typeof(stations) = 'array' THEN stations ELSE '[]' END) BETWEEN 1 AND 20
          AND NOT jsonb_path_exists(stations, '$[*] ? (!(@.armIn.type() == "number") || !(@.kind == "seats" || @.kind == "fuel" || @.kind == "baggage" || @.kind == "other"))')),
        envelopes jsonb NOT NULL CONSTRAINT loading_sheets_envelopes_chk CHECK (
          jsonb_typeof(envelopes) = 'array'
          AND jsonb_array_length(CASE WHEN jsonb_typeof(envelopes) = 'array' THEN envelopes ELSE '[]' END) BETWEEN 1 AND 2
          AND NOT jsonb_path_exists(envelopes, '$[*] ? (!(@.points.size() >= 3) || !(@.category == "normal" || @.category == "utility"))')),
        ${keysOf('loading_sheets')}
      );
      ${factTable('loading_sheets')}

      CREATE TABLE performance_sheets (${sheetOf('performance_sheets')}
        lift_off_kias double precision CONSTRAINT performance_sheets_lift_off_chk CHECK (lift_off_kias > 0),
        ${distances('takeoff')}
        ${distances('landing')}
        ${keysOf('performance_sheets')}
      );
      ${factTable('performance_sheets')}

      -- Percent, up in the runway's direction positive; null: not known.
      ALTER TABLE runways ADD COLUMN slope_percent double precision
        CONSTRAINT runways_slope_chk CHECK (slope_percent BETWEEN -20 AND 20);
    `);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      ALTER TABLE runways DROP COLUMN slope_percent;
      DROP TABLE performance_sheets;
      DROP TABLE loading_sheets;
    `);
  }
}
