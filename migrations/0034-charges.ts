import type { MigrationInterface, QueryRunner } from 'typeorm';
import { auditedTable, tenantTable } from './support.js';

/** What flying costs, from which day; and the members' accounts, in entries that nobody edits. */
export class Charges1764000000034 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      CREATE TABLE charge_rates (
        club_id uuid NOT NULL, id uuid NOT NULL,
        -- What is priced: an hour of an aircraft, or of an instructor.
        aircraft_id uuid,
        instructor_id uuid,
        -- First day it holds, in the club's zone. Of rows with the same day the one written last counts.
        valid_from date NOT NULL,
        per_hour_minor integer NOT NULL CONSTRAINT charge_rates_amount_chk CHECK (per_hour_minor BETWEEN 0 AND 100000000),
        currency text NOT NULL CONSTRAINT charge_rates_currency_chk CHECK (currency ~ '^[A-Z]{3}$'),
        basis text CONSTRAINT charge_rates_basis_chk CHECK (basis IN ('hobbs', 'tachometer', 'clock')),
        fuel text CONSTRAINT charge_rates_fuel_chk CHECK (fuel IN ('wet', 'dry')),
        -- Wet: paid back at most for fuel bought elsewhere. Dry: the club's own fuel costs this.
        fuel_per_us_gal_minor integer CONSTRAINT charge_rates_fuel_price_chk CHECK (fuel_per_us_gal_minor BETWEEN 0 AND 1000000),
        set_by uuid NOT NULL,
        recorded_at timestamptz NOT NULL DEFAULT clock_timestamp(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT charge_rates_currency_uq UNIQUE (club_id, id, currency),
        CONSTRAINT charge_rates_aircraft_fk FOREIGN KEY (club_id, aircraft_id) REFERENCES aircraft (club_id, id),
        CONSTRAINT charge_rates_instructor_fk FOREIGN KEY (club_id, instructor_id) REFERENCES members (club_id, id),
        CONSTRAINT charge_rates_setter_fk FOREIGN KEY (club_id, set_by) REFERENCES members (club_id, id),
        CONSTRAINT charge_rates_of_chk CHECK (num_nonnulls(aircraft_id, instructor_id) = 1
          AND num_nonnulls(basis, fuel, fuel_per_us_gal_minor) = CASE WHEN aircraft_id IS NULL THEN 0 ELSE 3 END)
      );
      CREATE INDEX charge_rates_aircraft_ix ON charge_rates (club_id, aircraft_id, valid_from, id);
      CREATE INDEX charge_rates_instructor_ix ON charge_rates (club_id, instructor_id, valid_from, id);
      ${tenantTable('charge_rates', 'append-only')}
      CREATE TRIGGER charge_rates_audit AFTER INSERT ON charge_rates FOR EACH ROW EXECUTE FUNCTION audit_row();

      CREATE FUNCTION charge_lines_sum(lines jsonb) RETURNS bigint LANGUAGE sql IMMUTABLE AS
        $$ SELECT coalesce(sum((l ->> 'amountMinor')::bigint), 0) FROM jsonb_array_elements(lines) AS l $$;

      CREATE TABLE ledger_entries (
        club_id uuid NOT NULL, id uuid NOT NULL, member_id uuid NOT NULL,
        kind text NOT NULL CONSTRAINT ledger_entries_kind_chk CHECK (kind IN ('flight', 'receipt', 'adjustment', 'reversal')),
        -- The day it was entered, by which statements are drawn up; and the day of what it is about.
        posted_on date NOT NULL,
        of_day date NOT NULL,
        -- The days to pay in are counted from here: a corrected charge keeps the day of the first.
        due_from date NOT NULL,
        -- More: the member owes it. Less: it was received or taken off.
        amount_minor integer NOT NULL CONSTRAINT ledger_entries_amount_chk CHECK (amount_minor BETWEEN -1000000000 AND 1000000000),
        currency text NOT NULL,
        minor_per_unit integer NOT NULL CONSTRAINT ledger_entries_unit_chk CHECK (minor_per_unit IN (1, 10, 100, 1000, 10000)),
        -- A flight: which, the how many-th charge of it, by which rates, what was flown.
        booking_id uuid,
        charge_no integer,
        aircraft_rate_id uuid,
        instructor_rate_id uuid,
        flown jsonb,
        lines jsonb NOT NULL DEFAULT '[]' CONSTRAINT ledger_entries_lines_chk CHECK (jsonb_typeof(lines) = 'array'),
        reverses uuid,
        words text NOT NULL DEFAULT '' CONSTRAINT ledger_entries_words_chk
          CHECK (length(words) <= 500 AND (kind NOT IN ('adjustment', 'reversal') OR length(btrim(words)) >= 5)),
        recorded_by uuid NOT NULL,
        recorded_at timestamptz NOT NULL DEFAULT clock_timestamp(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT ledger_entries_owner_uq UNIQUE (club_id, id, member_id),
        CONSTRAINT ledger_entries_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id),
        CONSTRAINT ledger_entries_recorder_fk FOREIGN KEY (club_id, recorded_by) REFERENCES members (club_id, id),
        CONSTRAINT ledger_entries_booking_fk FOREIGN KEY (club_id, booking_id) REFERENCES bookings (club_id, id),
        CONSTRAINT ledger_entries_rate_fk FOREIGN KEY (club_id, aircraft_rate_id, currency) REFERENCES charge_rates (club_id, id, currency),
        CONSTRAINT ledger_entries_instruction_fk FOREIGN KEY (club_id, instructor_rate_id, currency)
          REFERENCES charge_rates (club_id, id, currency),
        CONSTRAINT ledger_entries_reverses_fk FOREIGN KEY (club_id, reverses, member_id)
          REFERENCES ledger_entries (club_id, id, member_id),
        CONSTRAINT ledger_entries_flight_chk CHECK (
          num_nonnulls(booking_id, charge_no, aircraft_rate_id, flown) = CASE kind WHEN 'flight' THEN 4 ELSE 0 END
          AND (kind = 'flight' OR (instructor_rate_id IS NULL AND lines = '[]'))),
        CONSTRAINT ledger_entries_sum_chk CHECK (kind <> 'flight' OR charge_lines_sum(lines) = amount_minor),
        CONSTRAINT ledger_entries_sign_chk CHECK (CASE kind WHEN 'receipt' THEN amount_minor < 0 WHEN 'adjustment' THEN amount_minor <> 0 ELSE true END),
        CONSTRAINT ledger_entries_reversal_chk CHECK ((kind = 'reversal') = (reverses IS NOT NULL)),
        -- Nobody says of themselves that they paid, or need not.
        CONSTRAINT ledger_entries_own_chk CHECK (kind NOT IN ('receipt', 'adjustment') OR recorded_by <> member_id),
        -- What was entered is entered once, and reversed once.
        CONSTRAINT ledger_entries_reverses_uq UNIQUE (club_id, reverses),
        CONSTRAINT ledger_entries_charge_uq UNIQUE (club_id, booking_id, charge_no),
        -- The accounts of a club are in one currency, or sums would mean nothing.
        CONSTRAINT ledger_entries_currency_excl EXCLUDE USING gist (club_id WITH =, currency WITH <>)
      );
      CREATE INDEX ledger_entries_member_ix ON ledger_entries (club_id, member_id, posted_on, id);
      ${tenantTable('ledger_entries', 'append-only')}
      ${auditedTable('ledger_entries').replace('INSERT OR UPDATE OR DELETE', 'INSERT')}
      CREATE TRIGGER ledger_entries_noted AFTER INSERT ON ledger_entries FOR EACH ROW
        EXECUTE FUNCTION note_fact_change('person', 'member_id', 'unpaid');

      -- A reversal takes off just what it reverses, and a flight is charged anew only once its charge was reversed.
      CREATE FUNCTION ledger_entries_in_order() RETURNS trigger LANGUAGE plpgsql AS $$
        DECLARE
          other ledger_entries;
          earlier integer;
        BEGIN
          IF NEW.kind = 'reversal' THEN
            SELECT * INTO other FROM ledger_entries e WHERE e.club_id = NEW.club_id AND e.id = NEW.reverses;
            IF other.kind = 'reversal' OR other.amount_minor <> -NEW.amount_minor THEN
              RAISE EXCEPTION 'a reversal takes off what it reverses'
                USING ERRCODE = 'check_violation', CONSTRAINT = 'ledger_entries_takes_off_chk', TABLE = 'ledger_entries';
            END IF;
          ELSIF NEW.kind = 'flight' THEN
            SELECT count(*) INTO earlier FROM ledger_entries e WHERE e.club_id = NEW.club_id AND e.booking_id = NEW.booking_id;
            IF NEW.charge_no <> earlier + 1 OR EXISTS (
                 SELECT 1 FROM ledger_entries e WHERE e.club_id = NEW.club_id AND e.booking_id = NEW.booking_id
                    AND NOT EXISTS (SELECT 1 FROM ledger_entries v WHERE v.club_id = e.club_id AND v.reverses = e.id)) THEN
              RAISE EXCEPTION 'the flight is charged already'
                USING ERRCODE = 'check_violation', CONSTRAINT = 'ledger_entries_charged_chk', TABLE = 'ledger_entries';
            END IF;
          END IF;
          RETURN NEW;
        END $$;
      CREATE TRIGGER ledger_entries_in_order BEFORE INSERT ON ledger_entries
        FOR EACH ROW EXECUTE FUNCTION ledger_entries_in_order();
    `);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      DROP TABLE ledger_entries; DROP TABLE charge_rates;
      DROP FUNCTION ledger_entries_in_order(); DROP FUNCTION charge_lines_sum(jsonb);
    `);
  }
}
