/** Plain text on standard output. */

export const say = (line = '') => console.log(line);

export function heading(text) {
  say();
  say(text);
  say('-'.repeat(text.length));
}

/** Rows as aligned columns; the first row is the head. All but the first column stand right. */
export function table(rows) {
  const widths = rows[0].map((_cell, column) => Math.max(...rows.map((row) => String(row[column]).length)));
  for (const row of rows) {
    say(
      `  ${row.map((cell, column) => (column === 0 ? String(cell).padEnd(widths[column]) : String(cell).padStart(widths[column]))).join('   ')}`,
    );
  }
}

export function notes(...lines) {
  for (const line of lines) say(`  · ${line}`);
}
