import type { MigrationInterface, QueryRunner } from 'typeorm';

const BEFORE = [
  'annual',
  'hours-100',
  'altimeter-static',
  'transponder',
  'elt-inspection',
  'elt-battery',
  'vor-check',
];
const OF: [table: string, more: readonly string[]][] = [
  ['airworthiness_items', ['directive', 'club']],
  ['item_templates', ['club']],
];

const kinds = (words: readonly string[]): string => words.map((word) => `'${word}'`).join(', ');
const checked = (table: string, words: readonly string[]): string => `
  ALTER TABLE ${table} DROP CONSTRAINT ${table}_kind_chk,
    ADD CONSTRAINT ${table}_kind_chk CHECK (kind IN (${kinds(words)}));`;

/** Inspections of a progressive programme (14 CFR 91.409(d)) among the airworthiness items. */
export class Progressive1764000000039 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      OF.map(([table, more]) => checked(table, [...BEFORE, 'progressive', ...more])).join(''),
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    // A release that knows no programmes asks for the annual again, whatever becomes of these: they stay as the club's own items.
    await runner.query(
      OF.map(
        ([table, more]) => `
      ALTER TABLE ${table} NO FORCE ROW LEVEL SECURITY, DISABLE TRIGGER USER;
      UPDATE ${table} SET kind = 'club' WHERE kind = 'progressive';
      ALTER TABLE ${table} FORCE ROW LEVEL SECURITY, ENABLE TRIGGER USER;
      ${checked(table, [...BEFORE, ...more])}`,
      ).join(''),
    );
  }
}
