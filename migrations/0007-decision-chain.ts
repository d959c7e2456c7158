import type { MigrationInterface, QueryRunner } from 'typeorm';
import { tenantTable } from './support.js';

/** Each club's decisions, and officers' overrides, chained by digest in the order in which they were sealed. */
export class DecisionChain1764000000007 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      CREATE TABLE decision_chain (
        club_id uuid NOT NULL REFERENCES clubs (club_id),
        seq bigint NOT NULL CONSTRAINT decision_chain_seq_chk CHECK (seq >= 1),
        decision_id uuid,
        override_id uuid,
        -- SHA-256 of the sealed record, all its columns.
        entry text NOT NULL CONSTRAINT decision_chain_entry_chk CHECK (entry ~ '^[0-9a-f]{64}$'),
        sealed_at timestamptz NOT NULL CONSTRAINT decision_chain_second_chk CHECK (sealed_at = date_trunc('second', sealed_at)),
        -- The link before; of the first, zeros.
        previous text NOT NULL,
        previous_seq bigint GENERATED ALWAYS AS (CASE WHEN seq > 1 THEN seq - 1 END) STORED,
        link text NOT NULL,
        PRIMARY KEY (club_id, seq),
        CONSTRAINT decision_chain_one_chk CHECK (num_nonnulls(decision_id, override_id) = 1),
        CONSTRAINT decision_chain_first_chk CHECK (seq > 1 OR previous = repeat('0', 64)),
        CONSTRAINT decision_chain_link_chk CHECK (link = encode(sha256(convert_to(concat_ws(E'\\n',
          'bellcrank.chain-link/1', club_id::text, seq::text, to_char(sealed_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"'),
          previous, entry), 'UTF8')), 'hex')),
        CONSTRAINT decision_chain_link_uq UNIQUE (club_id, seq, link),
        CONSTRAINT decision_chain_decision_uq UNIQUE (club_id, decision_id),
        CONSTRAINT decision_chain_override_uq UNIQUE (club_id, override_id),
        CONSTRAINT decision_chain_decision_fk FOREIGN KEY (club_id, decision_id) REFERENCES decisions (club_id, id),
        CONSTRAINT decision_chain_override_fk FOREIGN KEY (club_id, override_id) REFERENCES overrides (club_id, id),
        CONSTRAINT decision_chain_previous_fk FOREIGN KEY (club_id, previous_seq, previous)
          REFERENCES decision_chain (club_id, seq, link)
      );
      ${tenantTable('decision_chain', 'append-only')}

      -- What is not sealed yet is looked for among the latest.
      CREATE INDEX decisions_recorded_ix ON decisions (club_id, recorded_at);
    `);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP INDEX decisions_recorded_ix; DROP TABLE decision_chain;');
  }
}
