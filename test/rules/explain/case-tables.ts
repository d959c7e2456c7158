/** Every case of every case table, for checks that hold whatever a rule says. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { readCaseTable, type Case } from '../../../src/rules/workshop/case-table.js';

const PACKS = join(__dirname, '../../../src/rules/packs');

/** The case tables, in order of their files. */
export const TABLES: { rule: string; cases: Case[] }[] = readdirSync(PACKS, {
  recursive: true,
  encoding: 'utf8',
})
  .filter((name) => name.endsWith('.cases.yaml'))
  .sort()
  .map((name) => readCaseTable(parse(readFileSync(join(PACKS, name), 'utf8'))));
