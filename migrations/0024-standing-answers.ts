import type { MigrationInterface, QueryRunner } from 'typeorm';
import { tenantTable } from './support.js';

/** Notes every change of a table in `fact_changes`; the arguments are those of note_fact_change() below. */
const noted = (table: string, ...args: string[]): string =>
  `CREATE TRIGGER ${table}_noted${args[3] === 'instructor_certificates' ? '_too' : ''} AFTER ${
    // Nothing is left to judge of a club that goes.
    table === 'clubs' ? 'UPDATE' : 'INSERT OR UPDATE OR DELETE'
  } ON ${table} FOR EACH ROW
     EXECUTE FUNCTION note_fact_change(${args.map((arg) => `'${arg}'`).join(', ')});`;

/** Tables that decisions read: whose fact a row is (by which column, or through which other row), and which facts. */
const NOTED: [table: string, ...args: string[]][] = [
  ['members', 'person', 'id', 'birthDate,standing'],
  ['certificates', 'person', 'member_id', 'certificates,unverified'],
  ['certificate_ratings', 'person', 'certificate_id', 'certificates', 'certificates', 'member_id'],
  // A suspension is of one or the other.
  ['suspensions', 'person', 'certificate_id', 'certificates', 'certificates', 'member_id'],
  [
    'suspensions',
    'person',
    'instructor_certificate_id',
    'instructor',
    'instructor_certificates',
    'member_id',
  ],
  ['instructor_certificates', 'person', 'member_id', 'instructor,unverified'],
  ['medicals', 'person', 'member_id', 'medicals,unverified'],
  ['basic_med', 'person', 'member_id', 'basicMed,unverified'],
  ['reviews', 'person', 'member_id', 'reviews,unverified'],
  ['endorsements', 'person', 'member_id', 'endorsements,unverified'],
  ['ratings', 'person', 'member_id', 'ratings,unverified'],
  ['log_entries', 'person', 'member_id', 'log,logBefore'],
  ['personal_limits', 'person', 'member_id', 'limits'],
  ['checkouts', 'person', 'member_id', 'checkouts'],
  ['member_checks', 'person', 'member_id', 'checks'],
  ['member_check_voids', 'person', 'check_id', 'checks', 'member_checks', 'member_id'],
  ['insurance_terms', 'aircraft', 'aircraft_id', 'insurance'],
  ['insurance_named_pilots', 'aircraft', 'terms_id', 'insurance', 'insurance_terms', 'aircraft_id'],
  // Which like models a sign-off counts for is read from the version in force.
  ['checkout_requirements', 'club', 'club_id', 'checkouts'],
  ['checkout_versions', 'club', 'club_id', 'checkouts'],
  ['checkout_transfers', 'club', 'club_id', 'checkouts'],
  ['checkout_voids', 'person', 'checkout_id', 'checkouts', 'checkouts', 'member_id'],
  ['booking_people', 'person', 'member_id', 'commitments'],
  ['aircraft', 'aircraft', 'id', 'home,type,use,meters'],
  ['aircraft_models', 'model', 'id', 'type,use,loading,performance'],
  ['meter_readings', 'aircraft', 'aircraft_id', 'meters'],
  ['meter_reading_voids', 'aircraft', 'reading_id', 'meters', 'meter_readings', 'aircraft_id'],
  ['airworthiness_items', 'aircraft', 'aircraft_id', 'items'],
  ['compliances', 'aircraft', 'item_id', 'items', 'airworthiness_items', 'aircraft_id'],
  ['registrations', 'aircraft', 'aircraft_id', 'registration'],
  ['equipment', 'aircraft', 'aircraft_id', 'equipment'],
  ['squawks', 'aircraft', 'aircraft_id', 'squawks'],
  ['deferrals', 'aircraft', 'squawk_id', 'squawks', 'squawks', 'aircraft_id'],
  ['permits', 'aircraft', 'aircraft_id', 'permits'],
  ['bookings', 'aircraft', 'aircraft_id', 'reservations,work'],
  ['differences', 'aircraft', 'aircraft_id', 'differences'],
  ['work_orders', 'aircraft', 'aircraft_id', 'work'],
  ['weighings', 'aircraft', 'aircraft_id', 'type,weighing'],
  ['loading_sheets', 'sheet', 'aircraft_id', 'type,loading'],
  ['performance_sheets', 'sheet', 'aircraft_id', 'performance'],
  ['airfields', 'airfield', 'id', ''],
  ['runways', 'airfield', 'airfield_id', ''],
  ['policy_values', 'policy', 'parameter_id', ''],
  ['club_rules', 'club', 'club_id', 'rules'],
  ['clubs', 'club', 'club_id', 'zone'],
];

/** Answers that booked flights have as the facts stand now, what each of them read, and facts that changed since. */
export class StandingAnswers1764000000024 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      -- Facts changed since the bookings that read them were judged: 'person:ID:medicals', 'policy:club.booking.…'.
      CREATE TABLE fact_changes (
        club_id uuid NOT NULL REFERENCES clubs (club_id) ON DELETE CASCADE,
        id bigint GENERATED ALWAYS AS IDENTITY,
        subject text NOT NULL CONSTRAINT fact_changes_subject_chk CHECK (subject ~ '^[a-z]+:[^: ]+(:[A-Za-z]+)?$'),
        -- A transaction that changes one fact a thousand times says so once.
        noted_by xid8 NOT NULL DEFAULT pg_current_xact_id(),
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id)
      );
      CREATE INDEX fact_changes_noted_ix ON fact_changes (club_id, subject, noted_by);
      ${tenantTable('fact_changes')}
      -- Whoever looks which clubs have changes to read speaks for no club yet, and sees ids only.
      CREATE POLICY fact_changes_sweep ON fact_changes FOR SELECT USING (bellcrank_club() IS NULL);
      -- An administrator who mends rows by hand speaks for no club either, and cascades then write as the tables' owner.
      CREATE POLICY fact_changes_by_hand ON fact_changes FOR INSERT WITH CHECK (bellcrank_club() IS NULL);

      -- What the engine says of each booked flight now.
      CREATE TABLE standing_answers (
        club_id uuid NOT NULL, booking_id uuid NOT NULL,
        answer text NOT NULL CONSTRAINT standing_answers_answer_chk
          CHECK (answer IN ('yes', 'yes-with-conditions', 'dual-only', 'ask-officer', 'no')),
        -- What stands in the way: [{ rule, title, says }].
        because jsonb NOT NULL CONSTRAINT standing_answers_because_chk CHECK (jsonb_typeof(because) = 'array'),
        -- The facts that the answer was read from, as fact_changes names them.
        reads text[] NOT NULL CONSTRAINT standing_answers_reads_chk CHECK (cardinality(reads) > 0),
        -- With no fact changed, the answer may be another one from then on; null: it will not.
        holds_until timestamptz,
        judged_at timestamptz NOT NULL,
        PRIMARY KEY (club_id, booking_id),
        CONSTRAINT standing_answers_booking_fk FOREIGN KEY (club_id, booking_id) REFERENCES bookings (club_id, id) ON DELETE CASCADE
      );
      CREATE INDEX standing_answers_reads_ix ON standing_answers USING gin (reads);
      CREATE INDEX standing_answers_until_ix ON standing_answers (club_id, holds_until) WHERE holds_until IS NOT NULL;
      ${tenantTable('standing_answers')}

      -- Answers that became others, and which changed facts brought it about.
      CREATE TABLE standing_changes (
        club_id uuid NOT NULL, id uuid NOT NULL, booking_id uuid NOT NULL,
        before text NOT NULL CONSTRAINT standing_changes_before_chk
          CHECK (before IN ('yes', 'yes-with-conditions', 'dual-only', 'ask-officer', 'no')),
        after text NOT NULL CONSTRAINT standing_changes_after_chk
          CHECK (after IN ('yes', 'yes-with-conditions', 'dual-only', 'ask-officer', 'no')),
        -- What stands in the way now and did not before.
        because jsonb NOT NULL CONSTRAINT standing_changes_because_chk CHECK (jsonb_typeof(because) = 'array'),
        caused_by text[] NOT NULL,
        at timestamptz NOT NULL,
        PRIMARY KEY (club_id, id),
        CONSTRAINT standing_changes_booking_fk FOREIGN KEY (club_id, booking_id) REFERENCES bookings (club_id, id) ON DELETE CASCADE,
        CONSTRAINT standing_changes_other_chk CHECK (before <> after)
      );
      CREATE INDEX standing_changes_booking_ix ON standing_changes (club_id, booking_id, id);
      ${tenantTable('standing_changes')}

      -- The rules each club's answers were judged by, and when the first of them must be judged again.
      CREATE TABLE standing_clubs (
        club_id uuid NOT NULL PRIMARY KEY REFERENCES clubs (club_id) ON DELETE CASCADE,
        law text NOT NULL CONSTRAINT standing_clubs_law_chk CHECK (law ~ '^[0-9a-f]{64}$'),
        due_at timestamptz
      );
      ${tenantTable('standing_clubs')}
      CREATE POLICY standing_clubs_sweep ON standing_clubs FOR SELECT USING (bellcrank_club() IS NULL);

      CREATE FUNCTION note_fact(club uuid, what text) RETURNS void LANGUAGE plpgsql AS $$
        BEGIN
          INSERT INTO fact_changes (club_id, subject)
          SELECT club, what WHERE NOT EXISTS (
            SELECT 1 FROM fact_changes WHERE club_id = club AND subject = what AND noted_by = pg_current_xact_id());
          PERFORM pg_notify('bellcrank_facts', club::text);
        END $$;

      -- Arguments: whose fact it is, the column that names it, the facts; and, where that column names another row: its table
      -- and the column there.
      CREATE FUNCTION note_fact_change() RETURNS trigger LANGUAGE plpgsql AS $$
        DECLARE
          old_row jsonb := CASE WHEN TG_OP <> 'INSERT' THEN to_jsonb(OLD) END;
          new_row jsonb := CASE WHEN TG_OP <> 'DELETE' THEN to_jsonb(NEW) END;
          one jsonb; club uuid; whose text; fact text; plane uuid;
        BEGIN
          IF old_row - 'row_version' = new_row - 'row_version' THEN RETURN NULL; END IF;
          FOREACH one IN ARRAY array_remove(ARRAY[old_row, new_row], NULL) LOOP
            club := (one ->> 'club_id')::uuid;
            whose := one ->> TG_ARGV[1];
            IF TG_NARGS > 3 THEN
              EXECUTE format('SELECT %I::text FROM %I WHERE club_id = $1 AND id = $2', TG_ARGV[4], TG_ARGV[3])
                INTO whose USING club, whose::uuid;
            END IF;
            IF TG_TABLE_NAME = 'bookings' THEN PERFORM note_fact(club, 'booking:' || (one ->> 'id')); END IF;
            -- Read by whoever could not find one that was asked for, and by whoever tells a sign-off by the change it was for.
            IF TG_TABLE_NAME IN ('airfields', 'differences') THEN PERFORM note_fact(club, 'club:' || TG_TABLE_NAME); END IF;
            IF TG_ARGV[0] IN ('airfield', 'policy') THEN
              PERFORM note_fact(club, TG_ARGV[0] || ':' || whose);
            ELSE
              FOREACH fact IN ARRAY string_to_array(TG_ARGV[2], ',') LOOP
                IF TG_ARGV[0] = 'club' THEN PERFORM note_fact(club, 'club:' || fact); CONTINUE; END IF;
                IF TG_ARGV[0] = 'model' OR (TG_ARGV[0] = 'sheet' AND whose IS NULL) THEN
                  FOR plane IN SELECT a.id FROM aircraft a WHERE a.club_id = club
                      AND a.model_id = (one ->> CASE TG_ARGV[0] WHEN 'model' THEN 'id' ELSE 'model_id' END)::uuid LOOP
                    PERFORM note_fact(club, 'aircraft:' || plane || ':' || fact);
                  END LOOP;
                ELSIF whose IS NOT NULL THEN
                  PERFORM note_fact(club, CASE TG_ARGV[0] WHEN 'sheet' THEN 'aircraft' ELSE TG_ARGV[0] END || ':' || whose || ':' || fact);
                END IF;
              END LOOP;
            END IF;
          END LOOP;
          RETURN NULL;
        END $$;

      ${NOTED.map((args) => noted(...args)).join('\n')}

    `);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      ${NOTED.map(([table]) => `DROP TRIGGER IF EXISTS ${table}_noted ON ${table};`).join('\n')}
      DROP TRIGGER suspensions_noted_too ON suspensions;
      DROP FUNCTION note_fact_change(); DROP FUNCTION note_fact(uuid, text);
      DROP TABLE standing_clubs; DROP TABLE standing_changes; DROP TABLE standing_answers; DROP TABLE fact_changes;
    `);
  }
}
