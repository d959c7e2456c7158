/**
 * Take-off and landing tables of a flight manual: distance against pressure altitude and temperature, at one weight.
 * Values between the printed ones are interpolated on both axes; outside the printed ones the manual says nothing, and
 * so do we.
 */

/** `distancesFt[i][j]` belongs to `pressureAltitudesFt[i]` and `temperaturesC[j]`; both axes ascend. */
export interface PerformanceTable {
  weightLb: number;
  pressureAltitudesFt: readonly number[];
  temperaturesC: readonly number[];
  distancesFt: readonly (readonly number[])[];
}

/** A distance, or why there is none. */
export type TableAnswer = { found: true; distanceFt: number } | { found: false; because: string };

/** What is wrong with a table; empty when it can be read. */
export function tableFaults(table: PerformanceTable): string[] {
  const faults: string[] = [];
  const axes = { 'pressure altitudes': table.pressureAltitudesFt, temperatures: table.temperaturesC };
  for (const [name, axis] of Object.entries(axes)) {
    if (axis.length < 2) faults.push(`${name}: at least two are needed`);
    if (!axis.every((value, index) => Number.isFinite(value) && (index === 0 || value > axis[index - 1]!)))
      faults.push(`${name}: they must be numbers that ascend`);
  }
  if (table.distancesFt.length !== table.pressureAltitudesFt.length)
    faults.push('distances: one row is needed for each pressure altitude');
  for (const [index, row] of table.distancesFt.entries()) {
    if (
      row.length !== table.temperaturesC.length ||
      !row.every((value) => value > 0 && Number.isFinite(value))
    )
      faults.push(`distances: row ${index + 1} needs a positive number for each temperature`);
  }
  return faults;
}

/**
 * Distance at a pressure altitude and temperature, for a weight no greater than the table's. Refuses to extrapolate.
 * Throws RangeError on a table with faults.
 */
export function distanceFromTable(
  table: PerformanceTable,
  at: { pressureAltitudeFt: number; oatC: number; weightLb: number },
): TableAnswer {
  const faults = tableFaults(table);
  if (faults.length > 0) throw new RangeError(`the table cannot be read: ${faults.join('; ')}`);
  return readTable(table, at);
}

/** The same for a table that is known to have no faults. */
export function readTable(
  table: PerformanceTable,
  at: { pressureAltitudeFt: number; oatC: number; weightLb: number },
): TableAnswer {
  if (!(at.weightLb <= table.weightLb))
    return no(`the table is for ${table.weightLb} lb and the aircraft weighs ${at.weightLb} lb`);
  const row = bracket(table.pressureAltitudesFt, at.pressureAltitudeFt);
  if (!row) return no(outside('pressure altitude', at.pressureAltitudeFt, table.pressureAltitudesFt, 'ft'));
  const column = bracket(table.temperaturesC, at.oatC);
  if (!column) return no(outside('temperature', at.oatC, table.temperaturesC, 'C'));
  const along = (index: number): number => {
    const cells = table.distancesFt[index]!;
    return between(cells[column.index]!, cells[column.index + 1]!, column.part);
  };
  return { found: true, distanceFt: between(along(row.index), along(row.index + 1), row.part) };
}

/** The cell of an axis that holds a value, and how far into it; null outside the axis. */
function bracket(axis: readonly number[], value: number): { index: number; part: number } | null {
  if (!(value >= axis[0]! && value <= axis[axis.length - 1]!)) return null;
  let index = 0;
  while (value > axis[index + 1]!) index += 1;
  return { index, part: (value - axis[index]!) / (axis[index + 1]! - axis[index]!) };
}

const between = (a: number, b: number, part: number): number => a + (b - a) * part;
const no = (because: string): TableAnswer => ({ found: false, because });
const outside = (what: string, value: number, axis: readonly number[], unit: string): string =>
  `${what} ${value} ${unit} is outside the table, which runs from ${axis[0]} to ${axis[axis.length - 1]} ${unit}`;
