import type { MigrationInterface, QueryRunner } from 'typeorm';
import { tenantTable } from './support.js';

/** Tables whose changes open pages are told of: the topic, and the column of whoever it concerns ('': everybody). */
const LIVE: [table: string, topic: string, member: string][] = [
  ['bookings', 'bookings', ''],
  ['bookings', 'flights', 'member_id'],
  ['booking_people', 'flights', 'member_id'],
  ['displacements', 'flights', 'member_id'],
  ['standing_changes', 'standing', ''],
  ['notices', 'notices', 'member_id'],
  ['aircraft', 'fleet', ''],
  ['squawks', 'fleet', ''],
  ['work_orders', 'fleet', ''],
  ['meter_readings', 'fleet', ''],
  ['compliances', 'fleet', ''],
];

const triggerOf = ([table, topic]: (typeof LIVE)[number]): string => `${table}_live_${topic}`;

/** Calendar feeds by secret address, and what has changed for pages that are open. */
export class Feeds1764000000032 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      CREATE TABLE calendar_feeds (
        club_id uuid NOT NULL, id uuid NOT NULL, member_id uuid NOT NULL,
        shows text NOT NULL CONSTRAINT calendar_feeds_shows_chk CHECK (shows IN ('own', 'aircraft', 'club')),
        aircraft_id uuid,
        title text NOT NULL CONSTRAINT calendar_feeds_title_chk CHECK (btrim(title) <> '' AND length(title) <= 120),
        -- SHA-256 of the address's secret; the address itself is told once and kept nowhere.
        token_hash text NOT NULL CONSTRAINT calendar_feeds_hash_chk CHECK (token_hash ~ '^[0-9a-f]{64}$'),
        revoked_at timestamptz,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id),
        CONSTRAINT calendar_feeds_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id),
        CONSTRAINT calendar_feeds_aircraft_fk FOREIGN KEY (club_id, aircraft_id) REFERENCES aircraft (club_id, id),
        CONSTRAINT calendar_feeds_of_chk CHECK ((shows = 'aircraft') = (aircraft_id IS NOT NULL)),
        CONSTRAINT calendar_feeds_hash_uq UNIQUE (club_id, token_hash)
      );
      CREATE INDEX calendar_feeds_member_ix ON calendar_feeds (club_id, member_id, id);
      ${tenantTable('calendar_feeds')}

      -- What open pages have to read again, for an hour. Names and says nothing: readers ask for what they may see.
      CREATE TABLE live_changes (
        club_id uuid NOT NULL REFERENCES clubs (club_id) ON DELETE CASCADE,
        id bigint GENERATED ALWAYS AS IDENTITY,
        topic text NOT NULL CONSTRAINT live_changes_topic_chk CHECK (topic ~ '^[a-z]+(-[a-z]+)*$'),
        -- Whom it concerns; null: everybody.
        member_id uuid,
        -- Readers go by transactions and not by id: ids are given out before they are committed.
        noted_by xid8 NOT NULL DEFAULT pg_current_xact_id(),
        recorded_at timestamptz NOT NULL DEFAULT now(),
        PRIMARY KEY (club_id, id)
      );
      CREATE INDEX live_changes_noted_ix ON live_changes (noted_by, club_id, topic);
      CREATE INDEX live_changes_recorded_ix ON live_changes (club_id, recorded_at);
      ${tenantTable('live_changes')}
      CREATE POLICY live_changes_sweep ON live_changes FOR SELECT USING (bellcrank_club() IS NULL);
      CREATE POLICY live_changes_by_hand ON live_changes FOR INSERT WITH CHECK (bellcrank_club() IS NULL);

      CREATE FUNCTION note_live(club uuid, what text, whom uuid) RETURNS void LANGUAGE sql AS $$
        INSERT INTO live_changes (club_id, topic, member_id) SELECT club, what, whom WHERE NOT EXISTS (
          SELECT 1 FROM live_changes WHERE noted_by = pg_current_xact_id() AND club_id = club AND topic = what
             AND member_id IS NOT DISTINCT FROM whom) $$;

      -- Arguments: the topic, and the column of whoever it concerns.
      CREATE FUNCTION note_live_change() RETURNS trigger LANGUAGE plpgsql AS $$
        DECLARE
          one jsonb;
          old_row jsonb := CASE WHEN TG_OP <> 'INSERT' THEN to_jsonb(OLD) END;
          new_row jsonb := CASE WHEN TG_OP <> 'DELETE' THEN to_jsonb(NEW) END;
        BEGIN
          IF old_row - 'row_version' = new_row - 'row_version' THEN RETURN NULL; END IF;
          FOREACH one IN ARRAY array_remove(ARRAY[old_row, new_row], NULL) LOOP
            PERFORM note_live((one ->> 'club_id')::uuid, TG_ARGV[0], (one ->> nullif(TG_ARGV[1], ''))::uuid);
          END LOOP;
          RETURN NULL;
        END $$;
      ${LIVE.map(
        (of) => `CREATE TRIGGER ${triggerOf(of)} AFTER INSERT OR UPDATE OR DELETE ON ${of[0]} FOR EACH ROW
          EXECUTE FUNCTION note_live_change('${of[1]}', '${of[2]}');`,
      ).join('\n')}

      -- An answer that became another one concerns whoever is aboard.
      CREATE FUNCTION note_live_answer() RETURNS trigger LANGUAGE plpgsql AS $$
        BEGIN
          PERFORM note_live(NEW.club_id, 'flights', p.member_id) FROM booking_people p
            WHERE p.club_id = NEW.club_id AND p.booking_id = NEW.booking_id;
          RETURN NULL;
        END $$;
      CREATE TRIGGER standing_changes_live_flights AFTER INSERT ON standing_changes FOR EACH ROW
        EXECUTE FUNCTION note_live_answer();
    `);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      DROP TRIGGER standing_changes_live_flights ON standing_changes; DROP FUNCTION note_live_answer();
      ${LIVE.map((of) => `DROP TRIGGER ${triggerOf(of)} ON ${of[0]};`).join('\n')}
      DROP FUNCTION note_live_change(); DROP FUNCTION note_live(uuid, text, uuid);
      DROP TABLE live_changes; DROP TABLE calendar_feeds;
    `);
  }
}
