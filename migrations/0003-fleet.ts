import type { MigrationInterface, QueryRunner } from 'typeorm';
import { auditedTable, factTable, tenantTable } from './support.js';

const ROW = `
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id)`;
const ofAircraft = (table: string): string =>
  `CONSTRAINT ${table}_aircraft_fk FOREIGN KEY (club_id, aircraft_id) REFERENCES aircraft (club_id, id)`;

/** Models, aircraft, equipment, meters, airworthiness items with their compliance, registrations, permits, squawks. */
export class Fleet1764000000003 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      CREATE TABLE aircraft_models (
        club_id uuid NOT NULL REFERENCES clubs (club_id), id uuid NOT NULL,
        make_model text NOT NULL CONSTRAINT aircraft_models_name_chk CHECK (btrim(make_model) <> ''),
        type_designator text NOT NULL CONSTRAINT aircraft_models_designator_chk CHECK (type_designator ~ '^[A-Z0-9]{2,4}$'),
        category text NOT NULL CONSTRAINT aircraft_models_category_chk
          CHECK (category IN ('airplane', 'rotorcraft', 'glider', 'lighter-than-air', 'powered-lift')),
        class text NOT NULL CONSTRAINT aircraft_models_class_chk CHECK (class IN ('single-engine-land', 'single-engine-sea',
          'multi-engine-land', 'multi-engine-sea', 'helicopter', 'gyroplane', 'none')),
        type_rating text,
        engines smallint NOT NULL CONSTRAINT aircraft_models_engines_chk CHECK (engines BETWEEN 0 AND 4),
        power_per_engine_hp integer CONSTRAINT aircraft_models_power_chk CHECK (power_per_engine_hp > 0),
        retractable_gear boolean NOT NULL,
        flaps boolean NOT NULL,
        controllable_propeller boolean NOT NULL,
        tailwheel boolean NOT NULL,
        pressurised boolean NOT NULL,
        turbine boolean NOT NULL DEFAULT false,
        transport_category boolean NOT NULL DEFAULT false,
        service_ceiling_ft integer,
        max_operating_altitude_ft integer,
        max_takeoff_lb integer CONSTRAINT aircraft_models_weight_chk CHECK (max_takeoff_lb > 0),
        vs1_kcas double precision,
        demonstrated_crosswind_kt double precision,
        usable_fuel_us_gal double precision,
        fuel_burn_us_gal_per_hour double precision,
        kinds_of_operation text[] NOT NULL CONSTRAINT aircraft_models_kinds_chk
          CHECK (kinds_of_operation <@ ARRAY['day-vfr', 'night-vfr', 'ifr'] AND cardinality(kinds_of_operation) > 0),
        CONSTRAINT aircraft_models_name_uq UNIQUE (club_id, make_model),
        ${ROW}
      );
      ${factTable('aircraft_models')}

      CREATE TABLE aircraft (
        club_id uuid NOT NULL, id uuid NOT NULL,
        registration text NOT NULL CONSTRAINT aircraft_registration_chk CHECK (registration ~ '^[A-Z0-9-]{2,10}$'),
        model_id uuid NOT NULL,
        home_airfield_id uuid NOT NULL,
        seats smallint NOT NULL CONSTRAINT aircraft_seats_chk CHECK (seats BETWEEN 1 AND 20),
        occupants_certificated smallint NOT NULL CONSTRAINT aircraft_occupants_chk CHECK (occupants_certificated BETWEEN 1 AND 20),
        empty_weight_lb double precision CONSTRAINT aircraft_empty_weight_chk CHECK (empty_weight_lb > 0),
        certificated_after_1996_03_11 boolean NOT NULL,
        -- Unknown until entered: rules that hang on these cannot say yes without them.
        altitude_engine boolean,
        manufactured_on date,
        engine_driven_electrical boolean,
        approved_equipment_list boolean,
        status text NOT NULL DEFAULT 'in-service' CONSTRAINT aircraft_status_chk CHECK (status IN ('in-service', 'out-of-service')),
        instruction_for_hire boolean NOT NULL,
        carries_for_hire boolean NOT NULL,
        inspection_meter text NOT NULL CONSTRAINT aircraft_inspection_meter_chk CHECK (inspection_meter IN ('hobbs', 'tachometer', 'airframe')),
        CONSTRAINT aircraft_model_fk FOREIGN KEY (club_id, model_id) REFERENCES aircraft_models (club_id, id),
        CONSTRAINT aircraft_home_fk FOREIGN KEY (club_id, home_airfield_id) REFERENCES airfields (club_id, id),
        CONSTRAINT aircraft_registration_uq UNIQUE (club_id, registration),
        ${ROW}
      );
      ${factTable('aircraft')}

      CREATE TABLE registrations (
        club_id uuid NOT NULL, id uuid NOT NULL, aircraft_id uuid NOT NULL,
        issued_on date NOT NULL,
        printed_expiry_on date,
        ended_on date,
        ${ofAircraft('registrations')},
        CONSTRAINT registrations_span_chk CHECK (ended_on IS NULL OR ended_on >= issued_on),
        ${ROW}
      );
      ${factTable('registrations')}

      CREATE TABLE permits (
        club_id uuid NOT NULL, id uuid NOT NULL, aircraft_id uuid NOT NULL,
        valid_from date NOT NULL,
        valid_through date NOT NULL,
        purpose text NOT NULL,
        ${ofAircraft('permits')},
        CONSTRAINT permits_span_chk CHECK (valid_through >= valid_from),
        ${ROW}
      );
      ${factTable('permits')}

      CREATE TABLE equipment (
        club_id uuid NOT NULL, id uuid NOT NULL, aircraft_id uuid NOT NULL,
        kind text NOT NULL,
        name text NOT NULL CONSTRAINT equipment_name_chk CHECK (btrim(name) <> ''),
        installed_on date NOT NULL,
        removed_on date,
        portable boolean NOT NULL DEFAULT false,
        required_by_type_design boolean NOT NULL DEFAULT false,
        satisfies text[] NOT NULL DEFAULT '{}',
        basis text NOT NULL DEFAULT 'type-design' CONSTRAINT equipment_basis_chk
          CHECK (basis IN ('type-design', 'stc', 'alteration-record', 'portable')),
        ${ofAircraft('equipment')},
        CONSTRAINT equipment_aircraft_uq UNIQUE (club_id, aircraft_id, id),
        CONSTRAINT equipment_span_chk CHECK (removed_on IS NULL OR removed_on >= installed_on),
        CONSTRAINT equipment_portable_chk CHECK (portable = (basis = 'portable')),
        ${ROW}
      );
      CREATE INDEX equipment_aircraft_ix ON equipment (club_id, aircraft_id);
      ${factTable('equipment')}

      CREATE TABLE meter_readings (
        club_id uuid NOT NULL, id uuid NOT NULL, aircraft_id uuid NOT NULL,
        kind text NOT NULL CONSTRAINT meter_readings_kind_chk CHECK (kind IN ('hobbs', 'tachometer', 'airframe')),
        -- What the meter shows, and what to add for meters replaced before it: together the running total.
        shown_tenths integer NOT NULL CONSTRAINT meter_readings_shown_chk CHECK (shown_tenths >= 0),
        offset_tenths integer NOT NULL DEFAULT 0,
        total_tenths integer GENERATED ALWAYS AS (shown_tenths + offset_tenths) STORED,
        read_at timestamptz NOT NULL,
        source text NOT NULL CONSTRAINT meter_readings_source_chk CHECK (source IN ('dispatch', 'coordinator', 'replacement')),
        note text,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        ${ofAircraft('meter_readings')},
        CONSTRAINT meter_readings_at_uq UNIQUE (club_id, aircraft_id, kind, read_at)
      );
      -- A running total never falls: not below the reading before it, nor above the one after it.
      CREATE FUNCTION meter_reading_in_order() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
          -- Readings of one aircraft queue here, so two at once cannot slip past each other.
          PERFORM 1 FROM aircraft WHERE club_id = NEW.club_id AND id = NEW.aircraft_id FOR NO KEY UPDATE;
          IF EXISTS (SELECT 1 FROM meter_readings m WHERE m.club_id = NEW.club_id AND m.aircraft_id = NEW.aircraft_id
                       AND m.kind = NEW.kind AND m.read_at < NEW.read_at AND m.total_tenths > NEW.shown_tenths + NEW.offset_tenths) THEN
            RAISE EXCEPTION 'meter below its last reading'
              USING ERRCODE = 'check_violation', CONSTRAINT = 'meter_readings_not_below_last_chk', TABLE = 'meter_readings';
          END IF;
          IF EXISTS (SELECT 1 FROM meter_readings m WHERE m.club_id = NEW.club_id AND m.aircraft_id = NEW.aircraft_id
                       AND m.kind = NEW.kind AND m.read_at > NEW.read_at AND m.total_tenths < NEW.shown_tenths + NEW.offset_tenths) THEN
            RAISE EXCEPTION 'meter above a later reading'
              USING ERRCODE = 'check_violation', CONSTRAINT = 'meter_readings_not_above_next_chk', TABLE = 'meter_readings';
          END IF;
          RETURN NEW;
        END $$;
      CREATE TRIGGER meter_readings_order BEFORE INSERT ON meter_readings FOR EACH ROW EXECUTE FUNCTION meter_reading_in_order();
      ${tenantTable('meter_readings', 'append-only')}
      ${auditedTable('meter_readings')}

      CREATE TABLE airworthiness_items (
        club_id uuid NOT NULL, id uuid NOT NULL, aircraft_id uuid NOT NULL,
        kind text NOT NULL CONSTRAINT airworthiness_items_kind_chk CHECK (kind IN ('annual', 'hours-100', 'altimeter-static',
          'transponder', 'elt-inspection', 'elt-battery', 'vor-check', 'directive', 'club')),
        title text NOT NULL CONSTRAINT airworthiness_items_title_chk CHECK (btrim(title) <> ''),
        reference text,
        scope text NOT NULL CONSTRAINT airworthiness_items_scope_chk
          CHECK (scope IN ('all', 'ifr', 'hire-or-instruction', 'night', 'transponder-use', 'advice')),
        calendar_months integer CONSTRAINT airworthiness_items_calendar_chk CHECK (calendar_months > 0),
        plain_months integer CONSTRAINT airworthiness_items_plain_chk CHECK (plain_months > 0),
        days integer CONSTRAINT airworthiness_items_days_chk CHECK (days > 0),
        interval_tenths integer CONSTRAINT airworthiness_items_interval_chk CHECK (interval_tenths > 0),
        fixed_due_on date,
        fixed_due_tenths integer CONSTRAINT airworthiness_items_fixed_hours_chk CHECK (fixed_due_tenths > 0),
        tolerance_tenths integer NOT NULL DEFAULT 0 CONSTRAINT airworthiness_items_tolerance_chk CHECK (tolerance_tenths >= 0),
        recurring boolean NOT NULL DEFAULT true,
        ferry_prohibited boolean NOT NULL DEFAULT false,
        equipment_id uuid,
        retired_on date,
        ${ofAircraft('airworthiness_items')},
        CONSTRAINT airworthiness_items_equipment_fk FOREIGN KEY (club_id, aircraft_id, equipment_id) REFERENCES equipment (club_id, aircraft_id, id),
        ${ROW}
      );
      CREATE INDEX airworthiness_items_aircraft_ix ON airworthiness_items (club_id, aircraft_id);
      ${factTable('airworthiness_items')}

      CREATE TABLE compliances (
        club_id uuid NOT NULL, id uuid NOT NULL, item_id uuid NOT NULL,
        done_on date NOT NULL,
        done_tenths integer CONSTRAINT compliances_done_chk CHECK (done_tenths >= 0),
        due_tenths integer CONSTRAINT compliances_due_chk CHECK (due_tenths >= 0),
        detail jsonb,
        statement text NOT NULL CONSTRAINT compliances_statement_chk CHECK (btrim(statement) <> ''),
        signed_by text NOT NULL CONSTRAINT compliances_signed_chk CHECK (btrim(signed_by) <> ''),
        recorded_at timestamptz NOT NULL DEFAULT now(),
        voided_at timestamptz,
        row_version integer NOT NULL DEFAULT 1,
        PRIMARY KEY (club_id, id),
        CONSTRAINT compliances_item_fk FOREIGN KEY (club_id, item_id) REFERENCES airworthiness_items (club_id, id)
      );
      CREATE INDEX compliances_item_ix ON compliances (club_id, item_id, done_on DESC);
      ${factTable('compliances')}

      CREATE TABLE squawks (
        club_id uuid NOT NULL, id uuid NOT NULL, aircraft_id uuid NOT NULL,
        reported_at timestamptz NOT NULL,
        reported_by uuid NOT NULL,
        title text NOT NULL CONSTRAINT squawks_title_chk CHECK (btrim(title) <> '' AND length(title) <= 200),
        detail text NOT NULL DEFAULT '',
        state text NOT NULL DEFAULT 'reported' CONSTRAINT squawks_state_chk
          CHECK (state IN ('reported', 'grounding', 'deferred', 'fixed', 'no-fault-found')),
        closed_at timestamptz,
        equipment_id uuid,
        corrective_action text,
        signed_by text,
        ${ofAircraft('squawks')},
        CONSTRAINT squawks_reporter_fk FOREIGN KEY (club_id, reported_by) REFERENCES members (club_id, id),
        CONSTRAINT squawks_equipment_fk FOREIGN KEY (club_id, aircraft_id, equipment_id) REFERENCES equipment (club_id, aircraft_id, id),
        CONSTRAINT squawks_closed_chk CHECK ((state IN ('fixed', 'no-fault-found')) = (closed_at IS NOT NULL)),
        CONSTRAINT squawks_fixed_chk CHECK (state <> 'fixed' OR (corrective_action IS NOT NULL AND signed_by IS NOT NULL)),
        ${ROW}
      );
      CREATE INDEX squawks_aircraft_ix ON squawks (club_id, aircraft_id);
      ${factTable('squawks')}

      CREATE TABLE deferrals (
        club_id uuid NOT NULL, id uuid NOT NULL, squawk_id uuid NOT NULL,
        deferred_on date NOT NULL,
        deadline_on date,
        required_by_type_design boolean,
        required_by_equipment_list boolean,
        required_by_directive boolean,
        removed_or_deactivated boolean,
        placarded boolean,
        recorded boolean,
        no_hazard_determined_by text,
        equipment_list_item text,
        CONSTRAINT deferrals_squawk_fk FOREIGN KEY (club_id, squawk_id) REFERENCES squawks (club_id, id),
        CONSTRAINT deferrals_squawk_uq UNIQUE (club_id, squawk_id),
        CONSTRAINT deferrals_span_chk CHECK (deadline_on IS NULL OR deadline_on >= deferred_on),
        ${ROW}
      );
      ${factTable('deferrals')}

      CREATE TABLE differences (
        club_id uuid NOT NULL, id uuid NOT NULL, aircraft_id uuid NOT NULL,
        title text NOT NULL CONSTRAINT differences_title_chk CHECK (btrim(title) <> ''),
        since date NOT NULL,
        equipment_group text NOT NULL,
        ended_on date,
        ${ofAircraft('differences')},
        ${ROW}
      );
      ${factTable('differences')}
    `);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      DROP TABLE differences; DROP TABLE deferrals; DROP TABLE squawks; DROP TABLE compliances; DROP TABLE airworthiness_items;
      DROP TABLE meter_readings; DROP FUNCTION meter_reading_in_order(); DROP TABLE equipment; DROP TABLE permits;
      DROP TABLE registrations; DROP TABLE aircraft; DROP TABLE aircraft_models;
    `);
  }
}
