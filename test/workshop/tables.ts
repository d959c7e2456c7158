/** The case tables as files: every `*.cases.yaml` below the packs, read strictly, with the place of each mistake. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { LineCounter, parseDocument } from 'yaml';
import { readCaseTable, type CaseTable, type Place } from '../../src/rules/workshop/case-table.js';

/** A table and where it stands. */
export interface TableFile {
  /** Path from the project's folder. */
  file: string;
  table: CaseTable;
  /** Line of each case, in the table's order, from 1. */
  lines: number[];
}

const ROOT = join(__dirname, '../..');
const PACKS = join(ROOT, 'src/rules/packs');

/** Reads one table's text; throws naming file and line of the first mistake. */
export function readTable(file: string, text: string): TableFile {
  const counter = new LineCounter();
  const document = parseDocument(text, { lineCounter: counter, prettyErrors: false });
  const lineAt = (offset: number): number => counter.linePos(offset).line;
  for (const error of [...document.errors, ...document.warnings])
    throw new Error(`${file}:${lineAt(error.pos[0])}: ${error.message}`);
  const lineOf = (path: Place): number => {
    // The nearest part of the path that is written in the file.
    for (let length = path.length; length > 0; length -= 1) {
      const node = document.getIn(path.slice(0, length), true) as
        { range?: [number, number, number] } | undefined;
      if (node?.range) return lineAt(node.range[0]);
    }
    return 1;
  };
  const table = readCaseTable(document.toJS(), (path, message) => {
    throw new Error(`${file}:${lineOf(path)}: ${message}`);
  });
  return { file, table, lines: table.cases.map((_, index) => lineOf(['cases', index])) };
}

/** Every case table of the packs, by path. */
export function readTables(): TableFile[] {
  return readdirSync(PACKS, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.cases.yaml'))
    .sort()
    .map((name) => {
      const path = join(PACKS, name);
      return readTable(relative(ROOT, path), readFileSync(path, 'utf8'));
    });
}
