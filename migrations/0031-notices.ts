import type { MigrationInterface, QueryRunner } from 'typeorm';
import { tenantTable, versionedTable } from './support.js';

const ofMember = (table: string): string =>
  `CONSTRAINT ${table}_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id)`;

/** Lets whoever speaks for no club yet see which clubs have work due (ids and times only), and cascades note it. */
const sweptFor = (table: string): string => `
  CREATE POLICY ${table}_sweep ON ${table} FOR SELECT USING (bellcrank_club() IS NULL);
  CREATE POLICY ${table}_by_hand ON ${table} FOR INSERT WITH CHECK (bellcrank_club() IS NULL);`;

/** What people are told: notices, the mail they go out in, what each person wants of it, and what they were reminded of. */
export class Notices1764000000031 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      -- One message to one person, with one notice or, as a digest, with many.
      CREATE TABLE notice_mails (
        club_id uuid NOT NULL, id uuid NOT NULL, member_id uuid NOT NULL,
        digest boolean NOT NULL,
        state text NOT NULL DEFAULT 'waiting' CONSTRAINT notice_mails_state_chk CHECK (state IN ('waiting', 'sent', 'given-up')),
        due_at timestamptz NOT NULL,
        attempts integer NOT NULL DEFAULT 0 CONSTRAINT notice_mails_attempts_chk CHECK (attempts BETWEEN 0 AND 1000),
        -- Until then the one who took it is at it.
        taken_until timestamptz,
        -- What went wrong last.
        fault text CONSTRAINT notice_mails_fault_chk CHECK (length(fault) <= 500),
        sent_at timestamptz,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        ${ofMember('notice_mails')},
        CONSTRAINT notice_mails_sent_chk CHECK ((state = 'sent') = (sent_at IS NOT NULL)),
        CONSTRAINT notice_mails_given_up_chk CHECK (state <> 'given-up' OR fault IS NOT NULL)
      );
      -- What comes in before a digest goes out goes into it.
      CREATE UNIQUE INDEX notice_mails_digest_uq ON notice_mails (club_id, member_id)
        WHERE digest AND state = 'waiting' AND attempts = 0;
      CREATE INDEX notice_mails_due_ix ON notice_mails (club_id, due_at) WHERE state = 'waiting';
      CREATE INDEX notice_mails_given_up_ix ON notice_mails (club_id, id) WHERE state = 'given-up';
      ${tenantTable('notice_mails')}

      CREATE TABLE notices (
        club_id uuid NOT NULL, id uuid NOT NULL, member_id uuid NOT NULL,
        kind text NOT NULL CONSTRAINT notices_kind_chk CHECK (kind ~ '^[a-z]+(-[a-z]+)*$' AND length(kind) <= 60),
        cause text NOT NULL CONSTRAINT notices_cause_chk CHECK (btrim(cause) <> '' AND length(cause) <= 300),
        -- What happened, in the order it did: [{ key, title, says, link }].
        items jsonb NOT NULL CONSTRAINT notices_items_chk
          CHECK (jsonb_typeof(items) = 'array' AND jsonb_array_length(items) >= 1),
        urgent boolean NOT NULL,
        occurred_at timestamptz NOT NULL,
        -- Until then more of the same cause goes into it; then it is settled, and mail is made of it or not.
        gathers_until timestamptz NOT NULL,
        settled_at timestamptz,
        mail_id uuid,
        read_at timestamptz,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        ${ofMember('notices')},
        CONSTRAINT notices_mail_fk FOREIGN KEY (club_id, mail_id) REFERENCES notice_mails (club_id, id),
        CONSTRAINT notices_gathers_chk CHECK (gathers_until >= occurred_at),
        CONSTRAINT notices_settled_chk CHECK (mail_id IS NULL OR settled_at IS NOT NULL)
      );
      -- However many things an event touches, a person has one notice of it.
      CREATE UNIQUE INDEX notices_cause_uq ON notices (club_id, member_id, cause) WHERE settled_at IS NULL;
      CREATE INDEX notices_member_ix ON notices (club_id, member_id, id);
      CREATE INDEX notices_unread_ix ON notices (club_id, member_id) WHERE read_at IS NULL;
      CREATE INDEX notices_gathering_ix ON notices (club_id, gathers_until) WHERE settled_at IS NULL;
      CREATE INDEX notices_mail_ix ON notices (club_id, mail_id) WHERE mail_id IS NOT NULL;
      ${tenantTable('notices')}

      CREATE TABLE notice_preferences (
        club_id uuid NOT NULL, member_id uuid NOT NULL,
        -- By kind of notice: now, daily or off. A kind that is not named goes as the service has it.
        choices jsonb NOT NULL CONSTRAINT notice_preferences_choices_chk CHECK (jsonb_typeof(choices) = 'object'
          AND NOT jsonb_path_exists(choices, '$.* ? (@.type() != "string" || (@ != "now" && @ != "daily" && @ != "off"))')),
        -- Clock of the club's zone. Both or neither.
        quiet_from time, quiet_to time,
        digest_hour integer NOT NULL CONSTRAINT notice_preferences_hour_chk CHECK (digest_hour BETWEEN 0 AND 23),
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, member_id),
        ${ofMember('notice_preferences')},
        CONSTRAINT notice_preferences_quiet_chk CHECK ((quiet_from IS NULL) = (quiet_to IS NULL) AND quiet_from <> quiet_to)
      );
      ${tenantTable('notice_preferences')}
      ${versionedTable('notice_preferences')}

      -- Each lapse is told of once at each of the club's lead times.
      CREATE TABLE reminders (
        club_id uuid NOT NULL, member_id uuid NOT NULL,
        subject text NOT NULL CONSTRAINT reminders_subject_chk CHECK (btrim(subject) <> '' AND length(subject) <= 300),
        lead text NOT NULL CONSTRAINT reminders_lead_chk CHECK (lead ~ '^[0-9]{1,4} [dh]$'),
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, member_id, subject, lead),
        ${ofMember('reminders')}
      );
      ${tenantTable('reminders')}

      -- When a club's notices, its mail or its reminders are to be looked at. What has been done is taken out.
      CREATE TABLE notice_due (
        club_id uuid NOT NULL REFERENCES clubs (club_id) ON DELETE CASCADE,
        id bigint GENERATED ALWAYS AS IDENTITY,
        work text NOT NULL CONSTRAINT notice_due_work_chk CHECK (work IN ('notices', 'reminders')),
        due_at timestamptz NOT NULL,
        PRIMARY KEY (club_id, id)
      );
      CREATE INDEX notice_due_at_ix ON notice_due (due_at);
      ${tenantTable('notice_due')}
      ${sweptFor('notice_due')}
      CREATE FUNCTION begin_reminders() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
          INSERT INTO notice_due (club_id, work, due_at) VALUES (NEW.club_id, 'reminders', NEW.recorded_at);
          RETURN NULL;
        END $$;
      CREATE TRIGGER clubs_reminded AFTER INSERT ON clubs FOR EACH ROW EXECUTE FUNCTION begin_reminders();
      -- Clubs that are there already. Their owner is bound by row-level security too.
      ALTER TABLE clubs NO FORCE ROW LEVEL SECURITY;
      INSERT INTO notice_due (club_id, work, due_at) SELECT club_id, 'reminders', now() FROM clubs;
      ALTER TABLE clubs FORCE ROW LEVEL SECURITY;
    `);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      DROP TRIGGER clubs_reminded ON clubs; DROP FUNCTION begin_reminders();
      DROP TABLE notice_due; DROP TABLE reminders; DROP TABLE notice_preferences; DROP TABLE notices; DROP TABLE notice_mails;
    `);
  }
}
