/** The score by folder, as a table. */

const DETECTED = ['Killed', 'Locked', 'Timeout'];
const LOST = ['Survived', 'NoCoverage'];

/** Two folders below src/rules, three for the packs of a country. */
export function folderOf(fileName) {
  const parts = fileName
    .replace(/^.*src\/rules\//, '')
    .split('/')
    .slice(0, -1);
  return parts.slice(0, parts[0] === 'packs' ? 3 : 1).join('/') || '.';
}

/** @param {{ file: string, status: string }[]} results */
export function summary(results) {
  const rows = new Map();
  for (const { file, status } of results) {
    for (const name of [folderOf(file), 'all']) {
      const row = rows.get(name) ?? {
        killed: 0,
        locked: 0,
        survived: 0,
        'not reached': 0,
        invalid: 0,
        ignored: 0,
      };
      if (status === 'Locked') row.locked += 1;
      if (DETECTED.includes(status)) row.killed += 1;
      else if (status === 'Survived') row.survived += 1;
      else if (status === 'NoCoverage') row['not reached'] += 1;
      else if (status === 'Ignored') row.ignored += 1;
      else row.invalid += 1;
      rows.set(name, row);
    }
  }
  const lines = [...rows]
    .sort(([a], [b]) => (a === 'all' ? 1 : b === 'all' ? -1 : a < b ? -1 : 1))
    .map(([name, { killed, locked, survived, 'not reached': missed, invalid }]) => {
      const total = killed + survived + missed;
      const score = total === 0 ? '-' : `${((100 * killed) / total).toFixed(1)} %`;
      return [name, total, killed, locked, survived, missed, invalid, score];
    });
  return table([
    ['folder', 'mutants', 'killed', 'by the lock alone', 'survived', 'not reached', 'invalid', 'score'],
    ...lines,
  ]);
}

/** No test noticed it, or none ran it. */
export const isLost = ({ status }) => LOST.includes(status);
/** A test failed, or the change never came to an end. */
export const isDetected = ({ status }) => DETECTED.includes(status);

function table(rows) {
  const widths = rows[0].map((_, column) => Math.max(...rows.map((row) => String(row[column]).length)));
  return rows
    .map((row) =>
      row
        .map((cell, column) =>
          column === 0 ? String(cell).padEnd(widths[0]) : String(cell).padStart(widths[column]),
        )
        .join('  '),
    )
    .join('\n');
}
