import type { MigrationInterface, QueryRunner } from 'typeorm';
import { factTable } from './support.js';

/** A check constraint of an older migration, made wider here and as it was on the way back. */
interface Widened {
  table: string;
  constraint: string;
  now: string;
  before: string;
}

const oneOf = (column: string, words: readonly string[]): string =>
  `${column} IN (${words.map((word) => `'${word}'`).join(', ')})`;

const LEVELS = ['student', 'sport', 'recreational', 'private', 'commercial', 'atp'];
const REVIEWS = [
  'flight-review',
  'practical-test',
  'proficiency-check',
  'instrument-proficiency-check',
  'faa-proficiency-phase',
  'instructor-practical-test',
  'instructor-renewal',
];
const ENDORSEMENTS = [
  'solo',
  'solo-night',
  'solo-cross-country-training',
  'solo-cross-country-flight',
  'solo-other-airport-25nm',
  'solo-repeated-route-50nm',
  'complex',
  'high-performance',
  'high-altitude',
  'tailwheel',
  'recreational-50nm',
  'recreational-cross-country',
  'recreational-airspace',
  'recreational-refresher',
  'sport-night',
  'sport-airspace',
  'sport-controllable-propeller',
  'sport-retractable-gear',
  'grandfather-complex',
  'grandfather-high-performance',
  'grandfather-high-altitude',
  'grandfather-tailwheel',
];

const WIDENED: readonly Widened[] = [
  {
    table: 'certificates',
    constraint: 'certificates_level_chk',
    now: oneOf('level', [...LEVELS, 'lapl']),
    before: oneOf('level', LEVELS),
  },
  {
    table: 'medicals',
    constraint: 'medicals_class_chk',
    now: 'class IN (1, 2, 3, 4)',
    before: 'class IN (1, 2, 3)',
  },
  {
    table: 'reviews',
    constraint: 'reviews_kind_chk',
    now: oneOf('kind', [...REVIEWS, 'safety-seminar', 'self-paced-study', 'written-examination']),
    before: oneOf('kind', REVIEWS),
  },
  {
    table: 'endorsements',
    constraint: 'endorsements_kind_chk',
    now: oneOf('kind', [
      ...ENDORSEMENTS,
      'differences-variable-pitch',
      'differences-retractable-gear',
      'differences-tailwheel',
      'differences-pressurised',
    ]),
    before: oneOf('kind', ENDORSEMENTS),
  },
];

const replaced = ({ table, constraint }: Widened, check: string): string =>
  `ALTER TABLE ${table} DROP CONSTRAINT ${constraint}, ADD CONSTRAINT ${constraint} CHECK (${check});`;

/** Papers of clubs in Europe and Canada: ratings that end, light aircraft licences, category 4 and LAPL medicals. */
export class ForeignPapers1764000000008 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      ${WIDENED.map((one) => replaced(one, one.now)).join('\n      ')}

      CREATE TABLE ratings (
        club_id uuid NOT NULL, id uuid NOT NULL, member_id uuid NOT NULL,
        kind text NOT NULL CONSTRAINT ratings_kind_chk CHECK (kind IN ('single-engine-piston-land', 'single-engine-piston-sea',
          'multi-engine-piston-land', 'multi-engine-piston-sea', 'touring-motor-glider', 'type', 'instrument', 'night', 'language')),
        -- Which type, or which language.
        designator text,
        issued_on date NOT NULL,
        valid_through date,
        row_version integer NOT NULL DEFAULT 1,
        recorded_at timestamptz NOT NULL DEFAULT now(),
        verified_by uuid,
        verified_at timestamptz,
        PRIMARY KEY (club_id, id),
        CONSTRAINT ratings_designator_chk CHECK ((kind IN ('type', 'language')) = (designator IS NOT NULL)),
        CONSTRAINT ratings_span_chk CHECK (valid_through IS NULL OR valid_through >= issued_on),
        CONSTRAINT ratings_member_fk FOREIGN KEY (club_id, member_id) REFERENCES members (club_id, id),
        CONSTRAINT ratings_verified_fk FOREIGN KEY (club_id, verified_by) REFERENCES members (club_id, id),
        CONSTRAINT ratings_verified_chk CHECK ((verified_by IS NULL) = (verified_at IS NULL))
      );
      CREATE INDEX ratings_member_ix ON ratings (club_id, member_id);
      ${factTable('ratings')}
    `);
  }

  /** Refused by the narrower checks while papers of the new kinds are on record. */
  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      DROP TABLE ratings;
      ${WIDENED.map((one) => replaced(one, one.before)).join('\n      ')}
    `);
  }
}
