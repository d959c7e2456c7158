import type { MigrationInterface, QueryRunner } from 'typeorm';
import { quiz, refuse } from './0020-quiz-tables.js';
import { auditedTable, factTable, tenantTable } from './support.js';

const MANOEUVRES = `'steep_turn', 'slow_flight', 'power_off_stall_straight', 'power_off_stall_turning', 'power_on_stall_straight',
'power_on_stall_turning', 'normal_landing', 'short_field_landing', 'soft_field_landing', 'forward_slip_landing',
'power_off_180_landing', 'approach_speed', 'traffic_pattern', 'ground_reference', 'normal_takeoff_climb',
'short_field_takeoff_climb', 'soft_field_takeoff_climb', 'go_around', 'basic_instrument', 'chandelle', 'lazy_eight',
'steep_spiral', 'holding', 'instrument_flight', 'intercept_and_track', 'dme_arc', 'approach_before_final',
'nonprecision_final', 'precision_final', 'missed_approach', 'circling'`;
const GROUPS = `'glass-panel', 'autopilot', 'gps-navigator'`;
const CONDITIONS = `'night', 'mountain', 'short-field', 'high-crosswind'`;

/** What the club asks before a checkout is signed, in versions that never change; items signed one by one; the written quiz. */
export class CheckoutSyllabus1764000000020 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(requirements);
    await runner.query(versions);
    await runner.query(marks);
    await runner.query(quiz);
    await runner.query(signOffs);
  }

  /** Refused while sign-offs of the new kinds are on record, which the older schema cannot say. */
  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      DROP TRIGGER checkouts_fit ON checkouts; DROP FUNCTION checkout_fits();
      ALTER TABLE checkouts DROP CONSTRAINT checkouts_kind_chk, DROP CONSTRAINT checkouts_shape_chk,
        DROP COLUMN equipment_group, DROP COLUMN condition, DROP COLUMN version_id, DROP COLUMN difference_id;
      ALTER TABLE checkouts
        ADD CONSTRAINT checkouts_kind_chk CHECK (kind IN ('model', 'differences', 'annual-check')),
        ADD CONSTRAINT checkouts_shape_chk CHECK (CASE kind
          WHEN 'model' THEN model_id IS NOT NULL
          WHEN 'differences' THEN aircraft_id IS NOT NULL
          ELSE model_id IS NULL AND aircraft_id IS NULL END);
      DROP TABLE quiz_results; DROP TABLE quiz_drawn; DROP TABLE quiz_attempts; DROP FUNCTION quiz_attempt_alone();
      DROP TABLE quiz_questions; DROP FUNCTION quiz_question_kept();
      DROP TABLE checkout_marks; DROP FUNCTION checkout_mark_fits();
      DROP FUNCTION checkout_version_in_force(uuid, uuid); DROP FUNCTION checkout_may_sign(uuid, uuid, uuid);
      DROP TABLE checkout_transfers; DROP TABLE checkout_prerequisites; DROP TABLE checkout_items;
      DROP FUNCTION checkout_no_circle(); DROP FUNCTION checkout_contents_kept();
      DROP TABLE checkout_versions; DROP FUNCTION checkout_version_kept();
      DROP TABLE checkout_instructors; DROP TABLE checkout_requirements; DROP FUNCTION checkout_subject_kept();
    `);
  }
}

const requirements = `
  -- What a checkout is for. What it asks stands in its versions.
  CREATE TABLE checkout_requirements (
    club_id uuid NOT NULL, id uuid NOT NULL,
    kind text NOT NULL CONSTRAINT checkout_requirements_kind_chk CHECK (kind IN ('model', 'equipment', 'condition', 'annual-check')),
    model_id uuid,
    equipment_group text CONSTRAINT checkout_requirements_group_chk CHECK (equipment_group IN (${GROUPS})),
    condition text CONSTRAINT checkout_requirements_condition_chk CHECK (condition IN (${CONDITIONS})),
    -- Words by which equipment changes name the same group, besides its own.
    also_called text[] NOT NULL DEFAULT '{}' CONSTRAINT checkout_requirements_called_chk
      CHECK (cardinality(also_called) = 0 OR (kind = 'equipment' AND cardinality(also_called) <= 20)),
    retired boolean NOT NULL DEFAULT false,
    row_version integer NOT NULL DEFAULT 1,
    recorded_at timestamptz NOT NULL DEFAULT now(),
    PRIMARY KEY (club_id, id),
    CONSTRAINT checkout_requirements_model_fk FOREIGN KEY (club_id, model_id) REFERENCES aircraft_models (club_id, id),
    CONSTRAINT checkout_requirements_shape_chk CHECK (
      (kind = 'model') = (model_id IS NOT NULL) AND (kind = 'equipment') = (equipment_group IS NOT NULL)
      AND (kind = 'condition') = (condition IS NOT NULL))
  );
  CREATE UNIQUE INDEX checkout_requirements_subject_uq ON checkout_requirements
    (club_id, kind, coalesce(model_id::text, equipment_group, condition, '')) WHERE NOT retired;
  ${factTable('checkout_requirements')}
  CREATE FUNCTION checkout_subject_kept() RETURNS trigger LANGUAGE plpgsql AS $$
    BEGIN
      IF (NEW.kind, NEW.model_id, NEW.equipment_group, NEW.condition)
           IS DISTINCT FROM (OLD.kind, OLD.model_id, OLD.equipment_group, OLD.condition) THEN
        ${refuse('checkout_requirements', 'subject_kept', 'what a checkout is for does not change')}
      END IF;
      RETURN NEW;
    END $$;
  CREATE TRIGGER checkout_requirements_subject BEFORE UPDATE ON checkout_requirements
    FOR EACH ROW EXECUTE FUNCTION checkout_subject_kept();

  -- Who may sign it; none: every instructor.
  CREATE TABLE checkout_instructors (
    club_id uuid NOT NULL, requirement_id uuid NOT NULL, member_id uuid NOT NULL,
    PRIMARY KEY (club_id, requirement_id, member_id),
    CONSTRAINT checkout_instructors_requirement_fk FOREIGN KEY (club_id, requirement_id)
      REFERENCES checkout_requirements (club_id, id) ON DELETE CASCADE,
    CONSTRAINT checkout_instructors_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id)
  );
  ${tenantTable('checkout_instructors')}
  ${auditedTable('checkout_instructors')}
`;

const versions = `
  -- A draft is edited; once published a version stays as it is, with all it holds. The newest published one is in force.
  CREATE TABLE checkout_versions (
    club_id uuid NOT NULL, id uuid NOT NULL, requirement_id uuid NOT NULL,
    number integer NOT NULL CONSTRAINT checkout_versions_number_chk CHECK (number >= 1),
    title text NOT NULL CONSTRAINT checkout_versions_title_chk CHECK (btrim(title) <> '' AND length(title) <= 200),
    -- Null: a sign-off does not end.
    good_days integer CONSTRAINT checkout_versions_good_chk CHECK (good_days BETWEEN 1 AND 3660),
    -- Both null: no quiz is asked.
    quiz_questions integer,
    quiz_pass_percent integer,
    published_at timestamptz,
    published_by uuid,
    recorded_at timestamptz NOT NULL DEFAULT now(),
    PRIMARY KEY (club_id, id),
    CONSTRAINT checkout_versions_owner_uq UNIQUE (club_id, requirement_id, id),
    CONSTRAINT checkout_versions_number_uq UNIQUE (club_id, requirement_id, number),
    CONSTRAINT checkout_versions_requirement_fk FOREIGN KEY (club_id, requirement_id) REFERENCES checkout_requirements (club_id, id),
    CONSTRAINT checkout_versions_publisher_fk FOREIGN KEY (club_id, published_by) REFERENCES members (club_id, id),
    CONSTRAINT checkout_versions_published_chk CHECK ((published_at IS NULL) = (published_by IS NULL)),
    CONSTRAINT checkout_versions_quiz_chk CHECK (CASE WHEN num_nonnulls(quiz_questions, quiz_pass_percent) = 0 THEN true
      ELSE num_nulls(quiz_questions, quiz_pass_percent) = 0 AND quiz_questions BETWEEN 1 AND 100 AND quiz_pass_percent BETWEEN 1 AND 100 END)
  );
  CREATE UNIQUE INDEX checkout_versions_draft_uq ON checkout_versions (club_id, requirement_id) WHERE published_at IS NULL;
  ${tenantTable('checkout_versions')}
  ${auditedTable('checkout_versions')}
  CREATE FUNCTION checkout_version_kept() RETURNS trigger LANGUAGE plpgsql AS $$
    BEGIN
      IF OLD.published_at IS NOT NULL THEN
        ${refuse('checkout_versions', 'kept', 'a published version stays as it is')}
      END IF;
      IF TG_OP = 'DELETE' THEN
        RETURN OLD;
      END IF;
      RETURN NEW;
    END $$;
  CREATE TRIGGER checkout_versions_kept BEFORE UPDATE OR DELETE ON checkout_versions
    FOR EACH ROW EXECUTE FUNCTION checkout_version_kept();

  CREATE TABLE checkout_items (
    club_id uuid NOT NULL, id uuid NOT NULL, version_id uuid NOT NULL,
    position integer NOT NULL CONSTRAINT checkout_items_position_chk CHECK (position BETWEEN 1 AND 100),
    title text NOT NULL CONSTRAINT checkout_items_title_chk CHECK (btrim(title) <> '' AND length(title) <= 200),
    -- What "to standard" means here, in words.
    standard text NOT NULL CONSTRAINT checkout_items_standard_chk CHECK (btrim(standard) <> '' AND length(standard) <= 1000),
    manoeuvre text CONSTRAINT checkout_items_manoeuvre_chk CHECK (manoeuvre IN (${MANOEUVRES})),
    required boolean NOT NULL,
    PRIMARY KEY (club_id, id),
    CONSTRAINT checkout_items_position_uq UNIQUE (club_id, version_id, position),
    CONSTRAINT checkout_items_title_uq UNIQUE (club_id, version_id, title),
    CONSTRAINT checkout_items_version_fk FOREIGN KEY (club_id, version_id) REFERENCES checkout_versions (club_id, id) ON DELETE CASCADE
  );
  ${tenantTable('checkout_items')}
  ${auditedTable('checkout_items')}

  -- Checkouts that must stand first.
  CREATE TABLE checkout_prerequisites (
    club_id uuid NOT NULL, version_id uuid NOT NULL, requirement_id uuid NOT NULL,
    PRIMARY KEY (club_id, version_id, requirement_id),
    CONSTRAINT checkout_prerequisites_version_fk FOREIGN KEY (club_id, version_id) REFERENCES checkout_versions (club_id, id) ON DELETE CASCADE,
    CONSTRAINT checkout_prerequisites_requirement_fk FOREIGN KEY (club_id, requirement_id) REFERENCES checkout_requirements (club_id, id)
  );
  ${tenantTable('checkout_prerequisites')}
  ${auditedTable('checkout_prerequisites')}

  -- Like models for which a sign-off of this one counts too.
  CREATE TABLE checkout_transfers (
    club_id uuid NOT NULL, version_id uuid NOT NULL, model_id uuid NOT NULL,
    PRIMARY KEY (club_id, version_id, model_id),
    CONSTRAINT checkout_transfers_version_fk FOREIGN KEY (club_id, version_id) REFERENCES checkout_versions (club_id, id) ON DELETE CASCADE,
    CONSTRAINT checkout_transfers_model_fk FOREIGN KEY (club_id, model_id) REFERENCES aircraft_models (club_id, id)
  );
  ${tenantTable('checkout_transfers')}
  ${auditedTable('checkout_transfers')}

  -- What a published version holds stays. The transaction that writes a version whole, published, may fill it.
  CREATE FUNCTION checkout_contents_kept() RETURNS trigger LANGUAGE plpgsql AS $$
    DECLARE
      kept boolean;
    BEGIN
      FOR kept IN SELECT v.published_at IS NOT NULL AND v.xmin <> pg_current_xact_id()::xid FROM checkout_versions v
         WHERE (TG_OP <> 'INSERT' AND v.club_id = OLD.club_id AND v.id = OLD.version_id)
            OR (TG_OP <> 'DELETE' AND v.club_id = NEW.club_id AND v.id = NEW.version_id) FOR SHARE LOOP
        IF kept THEN
          ${refuse('checkout_versions', 'kept', 'a published version stays as it is')}
        END IF;
      END LOOP;
      IF TG_OP = 'DELETE' THEN
        RETURN OLD;
      END IF;
      RETURN NEW;
    END $$;
  ${['checkout_items', 'checkout_prerequisites', 'checkout_transfers']
    .map(
      (table) => `CREATE TRIGGER ${table}_kept BEFORE INSERT OR UPDATE OR DELETE ON ${table}
        FOR EACH ROW EXECUTE FUNCTION checkout_contents_kept();`,
    )
    .join('\n  ')}

  -- Followed through drafts and through what is in force; versions of before do not count.
  CREATE FUNCTION checkout_no_circle() RETURNS trigger LANGUAGE plpgsql AS $$
    BEGIN
      -- Two that would close a circle together come one after the other.
      PERFORM pg_advisory_xact_lock(hashtextextended('checkout_prerequisites ' || NEW.club_id::text, 0));
      IF EXISTS (
        WITH RECURSIVE needs AS (
          SELECT NEW.requirement_id AS id
          UNION
          SELECT p.requirement_id FROM needs n
            JOIN checkout_versions v ON v.club_id = NEW.club_id AND v.requirement_id = n.id
            JOIN checkout_prerequisites p ON p.club_id = v.club_id AND p.version_id = v.id
           WHERE v.published_at IS NULL OR NOT EXISTS (SELECT 1 FROM checkout_versions w WHERE w.club_id = v.club_id
             AND w.requirement_id = v.requirement_id AND w.published_at IS NOT NULL AND w.number > v.number))
        SELECT 1 FROM needs n JOIN checkout_versions own
          ON own.club_id = NEW.club_id AND own.id = NEW.version_id AND own.requirement_id = n.id) THEN
        ${refuse('checkout_prerequisites', 'circle_chk', 'prerequisites lead back to the checkout itself')}
      END IF;
      RETURN NEW;
    END $$;
  CREATE TRIGGER checkout_prerequisites_circle BEFORE INSERT OR UPDATE ON checkout_prerequisites
    FOR EACH ROW EXECUTE FUNCTION checkout_no_circle();
`;

const marks = `
  CREATE FUNCTION checkout_version_in_force(club uuid, version uuid) RETURNS boolean LANGUAGE sql STABLE AS $$
    SELECT EXISTS (SELECT 1 FROM checkout_versions v JOIN checkout_requirements r ON r.club_id = v.club_id AND r.id = v.requirement_id
      WHERE v.club_id = club AND v.id = version AND v.published_at IS NOT NULL AND NOT r.retired
        AND NOT EXISTS (SELECT 1 FROM checkout_versions n WHERE n.club_id = v.club_id AND n.requirement_id = v.requirement_id
          AND n.published_at IS NOT NULL AND n.number > v.number)) $$;
  CREATE FUNCTION checkout_may_sign(club uuid, requirement uuid, member uuid) RETURNS boolean LANGUAGE sql STABLE AS $$
    SELECT NOT EXISTS (SELECT 1 FROM checkout_instructors i WHERE i.club_id = club AND i.requirement_id = requirement)
      OR EXISTS (SELECT 1 FROM checkout_instructors i WHERE i.club_id = club AND i.requirement_id = requirement AND i.member_id = member) $$;

  -- An item as an instructor saw it. Nothing is edited: a correction is a record of its own that takes the other's place.
  CREATE TABLE checkout_marks (
    club_id uuid NOT NULL, id uuid NOT NULL, member_id uuid NOT NULL, item_id uuid NOT NULL,
    -- The change of an aircraft it is for, where the item belongs to a differences checkout.
    difference_id uuid,
    outcome text NOT NULL CONSTRAINT checkout_marks_outcome_chk CHECK (outcome IN ('signed', 'not-yet')),
    marked_on date NOT NULL,
    signed_by uuid NOT NULL,
    note text NOT NULL DEFAULT '' CONSTRAINT checkout_marks_note_chk CHECK (length(note) <= 1000),
    corrects uuid,
    because text CONSTRAINT checkout_marks_because_chk CHECK (length(btrim(because)) BETWEEN 5 AND 500),
    -- A correction that leaves nothing in the other's place.
    withdraws boolean NOT NULL DEFAULT false,
    recorded_at timestamptz NOT NULL DEFAULT now(),
    PRIMARY KEY (club_id, id),
    CONSTRAINT checkout_marks_owner_uq UNIQUE (club_id, member_id, item_id, id),
    CONSTRAINT checkout_marks_corrects_uq UNIQUE (club_id, corrects),
    CONSTRAINT checkout_marks_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id),
    CONSTRAINT checkout_marks_item_fk FOREIGN KEY (club_id, item_id) REFERENCES checkout_items (club_id, id),
    CONSTRAINT checkout_marks_difference_fk FOREIGN KEY (club_id, difference_id) REFERENCES differences (club_id, id),
    CONSTRAINT checkout_marks_signer_fk FOREIGN KEY (club_id, signed_by) REFERENCES members (club_id, id),
    CONSTRAINT checkout_marks_corrects_fk FOREIGN KEY (club_id, member_id, item_id, corrects)
      REFERENCES checkout_marks (club_id, member_id, item_id, id),
    CONSTRAINT checkout_marks_own_chk CHECK (signed_by <> member_id),
    CONSTRAINT checkout_marks_itself_chk CHECK (corrects <> id),
    CONSTRAINT checkout_marks_correction_chk CHECK ((corrects IS NULL) = (because IS NULL) AND (corrects IS NOT NULL OR NOT withdraws)),
    CONSTRAINT checkout_marks_why_chk CHECK (outcome = 'signed' OR withdraws OR length(btrim(note)) >= 5)
  );
  CREATE INDEX checkout_marks_member_ix ON checkout_marks (club_id, member_id, item_id);
  ${tenantTable('checkout_marks', 'append-only')}
  CREATE TRIGGER checkout_marks_audit AFTER INSERT ON checkout_marks FOR EACH ROW EXECUTE FUNCTION audit_row();

  CREATE FUNCTION checkout_mark_fits() RETURNS trigger LANGUAGE plpgsql AS $$
    DECLARE
      version uuid;
      requirement checkout_requirements;
      old checkout_marks;
    BEGIN
      SELECT * INTO old FROM checkout_marks WHERE club_id = NEW.club_id AND id = NEW.corrects;
      IF FOUND AND (old.withdraws OR old.difference_id IS DISTINCT FROM NEW.difference_id) THEN
        ${refuse('checkout_marks', 'replaced_chk', 'what was withdrawn is not corrected, and a correction is for the same aircraft')}
      END IF;
      SELECT i.version_id INTO version FROM checkout_items i WHERE i.club_id = NEW.club_id AND i.id = NEW.item_id;
      IF NOT FOUND OR NEW.withdraws THEN
        RETURN NEW;
      END IF;
      SELECT r.* INTO requirement FROM checkout_requirements r JOIN checkout_versions v ON v.club_id = r.club_id AND v.requirement_id = r.id
       WHERE v.club_id = NEW.club_id AND v.id = version FOR SHARE OF r;
      IF NOT checkout_version_in_force(NEW.club_id, version) THEN
        ${refuse('checkout_marks', 'in_force_chk', 'items are signed under the version in force')}
      END IF;
      IF NOT checkout_may_sign(NEW.club_id, requirement.id, NEW.signed_by) THEN
        ${refuse('checkout_marks', 'authorised_chk', 'this instructor may not sign this checkout')}
      END IF;
      IF NEW.difference_id IS NOT NULL AND requirement.kind <> 'equipment' THEN
        ${refuse('checkout_marks', 'difference_chk', 'a change of equipment is shown by items of an equipment group')}
      END IF;
      RETURN NEW;
    END $$;
  CREATE TRIGGER checkout_marks_fit BEFORE INSERT ON checkout_marks FOR EACH ROW EXECUTE FUNCTION checkout_mark_fits();
`;

const signOffs = `
  ALTER TABLE checkouts DROP CONSTRAINT checkouts_kind_chk, DROP CONSTRAINT checkouts_shape_chk;
  ALTER TABLE checkouts
    ADD COLUMN equipment_group text CONSTRAINT checkouts_group_chk CHECK (equipment_group IN (${GROUPS})),
    ADD COLUMN condition text CONSTRAINT checkouts_condition_chk CHECK (condition IN (${CONDITIONS})),
    -- What the club asked for it; null: nothing was laid down then.
    ADD COLUMN version_id uuid,
    -- The change that was shown, where the club laid down how.
    ADD COLUMN difference_id uuid CONSTRAINT checkouts_difference_chk CHECK (difference_id IS NULL OR (kind = 'differences' AND version_id IS NOT NULL)),
    ADD CONSTRAINT checkouts_version_fk FOREIGN KEY (club_id, version_id) REFERENCES checkout_versions (club_id, id),
    ADD CONSTRAINT checkouts_difference_fk FOREIGN KEY (club_id, difference_id) REFERENCES differences (club_id, id),
    ADD CONSTRAINT checkouts_kind_chk CHECK (kind IN ('model', 'differences', 'annual-check', 'equipment', 'condition')),
    ADD CONSTRAINT checkouts_shape_chk CHECK (CASE kind
      WHEN 'model' THEN model_id IS NOT NULL AND num_nonnulls(equipment_group, condition) = 0
      WHEN 'differences' THEN aircraft_id IS NOT NULL AND num_nonnulls(equipment_group, condition) = 0
      WHEN 'equipment' THEN equipment_group IS NOT NULL AND num_nonnulls(model_id, aircraft_id, condition) = 0
      WHEN 'condition' THEN condition IS NOT NULL AND num_nonnulls(model_id, aircraft_id, equipment_group) = 0
      ELSE num_nonnulls(model_id, aircraft_id, equipment_group, condition) = 0 END);

  -- A sign-off is for what its version is for, under the version in force, by who may, with every item it asks for signed.
  CREATE FUNCTION checkout_fits() RETURNS trigger LANGUAGE plpgsql AS $$
    DECLARE
      requirement checkout_requirements;
    BEGIN
      IF NEW.version_id IS NULL THEN
        IF EXISTS (SELECT 1 FROM checkout_requirements r JOIN checkout_versions v ON v.club_id = r.club_id AND v.requirement_id = r.id
             WHERE r.club_id = NEW.club_id AND NOT r.retired AND v.published_at IS NOT NULL AND r.kind = NEW.kind
               AND (r.model_id, r.equipment_group, r.condition) IS NOT DISTINCT FROM (NEW.model_id, NEW.equipment_group, NEW.condition)) THEN
          ${refuse('checkouts', 'version_chk', 'the club has laid down what this checkout asks for')}
        END IF;
        RETURN NEW;
      END IF;
      SELECT r.* INTO requirement FROM checkout_requirements r JOIN checkout_versions v ON v.club_id = r.club_id AND v.requirement_id = r.id
       WHERE v.club_id = NEW.club_id AND v.id = NEW.version_id FOR SHARE OF r;
      IF NOT FOUND THEN
        RETURN NEW;
      END IF;
      IF NOT checkout_version_in_force(NEW.club_id, NEW.version_id) THEN
        ${refuse('checkouts', 'in_force_chk', 'a checkout is signed under the version in force')}
      END IF;
      IF (NEW.kind = 'differences' AND (requirement.kind <> 'equipment' OR NEW.difference_id IS NULL))
         OR (NEW.kind <> 'differences' AND (requirement.kind, requirement.model_id, requirement.equipment_group, requirement.condition)
               IS DISTINCT FROM (NEW.kind, NEW.model_id, NEW.equipment_group, NEW.condition)) THEN
        ${refuse('checkouts', 'subject_chk', 'the version is for something else')}
      END IF;
      IF NOT checkout_may_sign(NEW.club_id, requirement.id, NEW.signed_by) THEN
        ${refuse('checkouts', 'authorised_chk', 'this instructor may not sign this checkout')}
      END IF;
      -- An item of an earlier version that says the same counts.
      IF EXISTS (SELECT 1 FROM checkout_items i WHERE i.club_id = NEW.club_id AND i.version_id = NEW.version_id AND i.required
           AND NOT EXISTS (SELECT 1 FROM checkout_marks m
             JOIN checkout_items s ON s.club_id = m.club_id AND s.id = m.item_id
             JOIN checkout_versions v ON v.club_id = s.club_id AND v.id = s.version_id AND v.requirement_id = requirement.id
            WHERE m.club_id = NEW.club_id AND m.member_id = NEW.member_id AND m.difference_id IS NOT DISTINCT FROM NEW.difference_id
              AND m.outcome = 'signed' AND NOT m.withdraws
              AND (s.title, s.standard, s.manoeuvre) IS NOT DISTINCT FROM (i.title, i.standard, i.manoeuvre)
              AND NOT EXISTS (SELECT 1 FROM checkout_marks n WHERE n.club_id = m.club_id AND n.corrects = m.id))) THEN
        ${refuse('checkouts', 'items_chk', 'an item it asks for is not signed')}
      END IF;
      RETURN NEW;
    END $$;
  CREATE TRIGGER checkouts_fit BEFORE INSERT ON checkouts FOR EACH ROW EXECUTE FUNCTION checkout_fits();
`;
