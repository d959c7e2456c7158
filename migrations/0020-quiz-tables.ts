/** The tables of the written quiz: a part of migration 0020, never changed once that has landed. */
import { factTable, tenantTable } from './support.js';

const LETTERS = `'a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'`;

/** Raises a refusal under the name of a constraint, so that it is told as one. */
export const refuse = (table: string, name: string, says: string): string =>
  `RAISE EXCEPTION '${says}' USING ERRCODE = 'check_violation', CONSTRAINT = '${table}_${name}', TABLE = '${table}';`;

export const quiz = `
  -- The club's own bank. Published questions stay as they are and can only be retired.
  CREATE TABLE quiz_questions (
    club_id uuid NOT NULL, id uuid NOT NULL, requirement_id uuid NOT NULL,
    topic text NOT NULL CONSTRAINT quiz_questions_topic_chk CHECK (topic IN ('limits', 'systems', 'emergency-memory')),
    kind text NOT NULL CONSTRAINT quiz_questions_kind_chk CHECK (kind IN ('single', 'multiple', 'number')),
    text text NOT NULL CONSTRAINT quiz_questions_text_chk CHECK (btrim(text) <> '' AND length(text) <= 1000),
    choices text[] NOT NULL DEFAULT '{}',
    -- Letters of the right ones among the choices, in their order.
    right_letters text[] NOT NULL DEFAULT '{}',
    right_value double precision,
    tolerance double precision,
    unit text CONSTRAINT quiz_questions_unit_chk CHECK (btrim(unit) <> '' AND length(unit) <= 40),
    -- Where the answer is written.
    reference text NOT NULL DEFAULT '' CONSTRAINT quiz_questions_reference_chk CHECK (length(reference) <= 200),
    state text NOT NULL CONSTRAINT quiz_questions_state_chk CHECK (state IN ('draft', 'published', 'retired')),
    row_version integer NOT NULL DEFAULT 1,
    recorded_at timestamptz NOT NULL DEFAULT now(),
    PRIMARY KEY (club_id, id),
    CONSTRAINT quiz_questions_owner_uq UNIQUE (club_id, requirement_id, id),
    CONSTRAINT quiz_questions_requirement_fk FOREIGN KEY (club_id, requirement_id) REFERENCES checkout_requirements (club_id, id),
    CONSTRAINT quiz_questions_answer_chk CHECK (CASE kind
      WHEN 'number' THEN cardinality(choices) = 0 AND cardinality(right_letters) = 0 AND right_value IS NOT NULL AND coalesce(tolerance >= 0, false)
      ELSE num_nonnulls(right_value, tolerance, unit) = 0 AND cardinality(choices) BETWEEN 2 AND 8
        AND right_letters <@ (ARRAY[${LETTERS}])[1:cardinality(choices)]
        AND CASE kind WHEN 'single' THEN cardinality(right_letters) = 1 ELSE cardinality(right_letters) >= 1 END END)
  );
  CREATE INDEX quiz_questions_requirement_ix ON quiz_questions (club_id, requirement_id);
  ${factTable('quiz_questions')}
  CREATE FUNCTION quiz_question_kept() RETURNS trigger LANGUAGE plpgsql AS $$
    BEGIN
      IF OLD.state <> 'draft' AND (TG_OP = 'DELETE' OR OLD.state = 'retired' OR NEW.state = 'draft'
           OR to_jsonb(NEW) - 'state' - 'row_version' IS DISTINCT FROM to_jsonb(OLD) - 'state' - 'row_version') THEN
        ${refuse('quiz_questions', 'kept', 'a published question stays as it is')}
      END IF;
      IF TG_OP = 'DELETE' THEN
        RETURN OLD;
      END IF;
      RETURN NEW;
    END $$;
  CREATE TRIGGER quiz_questions_kept BEFORE UPDATE OR DELETE ON quiz_questions
    FOR EACH ROW EXECUTE FUNCTION quiz_question_kept();

  CREATE TABLE quiz_attempts (
    club_id uuid NOT NULL, id uuid NOT NULL, member_id uuid NOT NULL, requirement_id uuid NOT NULL, version_id uuid NOT NULL,
    started_at timestamptz NOT NULL,
    recorded_at timestamptz NOT NULL DEFAULT now(),
    PRIMARY KEY (club_id, id),
    CONSTRAINT quiz_attempts_owner_uq UNIQUE (club_id, requirement_id, id),
    CONSTRAINT quiz_attempts_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id),
    CONSTRAINT quiz_attempts_version_fk FOREIGN KEY (club_id, requirement_id, version_id)
      REFERENCES checkout_versions (club_id, requirement_id, id)
  );
  CREATE INDEX quiz_attempts_member_ix ON quiz_attempts (club_id, member_id, requirement_id);
  ${tenantTable('quiz_attempts', 'append-only')}

  -- The questions drawn for it, of its own bank.
  CREATE TABLE quiz_drawn (
    club_id uuid NOT NULL, requirement_id uuid NOT NULL, attempt_id uuid NOT NULL, question_id uuid NOT NULL,
    position integer NOT NULL CONSTRAINT quiz_drawn_position_chk CHECK (position BETWEEN 1 AND 100),
    PRIMARY KEY (club_id, attempt_id, question_id),
    CONSTRAINT quiz_drawn_position_uq UNIQUE (club_id, attempt_id, position),
    CONSTRAINT quiz_drawn_attempt_fk FOREIGN KEY (club_id, requirement_id, attempt_id)
      REFERENCES quiz_attempts (club_id, requirement_id, id),
    CONSTRAINT quiz_drawn_question_fk FOREIGN KEY (club_id, requirement_id, question_id)
      REFERENCES quiz_questions (club_id, requirement_id, id)
  );
  ${tenantTable('quiz_drawn', 'append-only')}

  -- Handed in once, and scored then.
  CREATE TABLE quiz_results (
    club_id uuid NOT NULL, attempt_id uuid NOT NULL,
    -- [{"questionId": …, "chosen": ["a"], "value": null, "right": true}]
    answers jsonb NOT NULL CONSTRAINT quiz_results_answers_chk CHECK (jsonb_typeof(answers) = 'array'),
    right_count integer NOT NULL,
    asked_count integer NOT NULL,
    pass_percent integer NOT NULL CONSTRAINT quiz_results_pass_chk CHECK (pass_percent BETWEEN 1 AND 100),
    passed boolean NOT NULL,
    handed_in_at timestamptz NOT NULL,
    recorded_at timestamptz NOT NULL DEFAULT now(),
    PRIMARY KEY (club_id, attempt_id),
    CONSTRAINT quiz_results_attempt_fk FOREIGN KEY (club_id, attempt_id) REFERENCES quiz_attempts (club_id, id),
    CONSTRAINT quiz_results_count_chk CHECK (asked_count >= 1 AND right_count BETWEEN 0 AND asked_count),
    CONSTRAINT quiz_results_passed_chk CHECK (passed = (right_count * 100 >= pass_percent * asked_count))
  );
  ${tenantTable('quiz_results', 'append-only')}

  -- One attempt at a time: another draw would show more of the bank.
  CREATE FUNCTION quiz_attempt_alone() RETURNS trigger LANGUAGE plpgsql AS $$
    BEGIN
      PERFORM 1 FROM members WHERE club_id = NEW.club_id AND id = NEW.member_id FOR NO KEY UPDATE;
      IF EXISTS (SELECT 1 FROM quiz_attempts a WHERE a.club_id = NEW.club_id AND a.member_id = NEW.member_id
           AND a.requirement_id = NEW.requirement_id
           AND NOT EXISTS (SELECT 1 FROM quiz_results r WHERE r.club_id = a.club_id AND r.attempt_id = a.id)) THEN
        ${refuse('quiz_attempts', 'open_chk', 'an attempt is not handed in yet')}
      END IF;
      RETURN NEW;
    END $$;
  CREATE TRIGGER quiz_attempts_alone BEFORE INSERT ON quiz_attempts FOR EACH ROW EXECUTE FUNCTION quiz_attempt_alone();
`;
