/** Least squares in the two forms the track needs. */

/**
 * Coefficients of the polynomial of a degree that fits best, lowest power first; null when the points do not settle it.
 * Times should be about zero and of the order of one, or the sums lose digits.
 */
export function fitPolynomial(ts: readonly number[], ys: readonly number[], degree: number): number[] | null {
  const size = degree + 1;
  if (ts.length < size) return null;
  const sums: number[] = new Array(2 * degree + 1).fill(0);
  const right: number[] = new Array(size).fill(0);
  for (let point = 0; point < ts.length; point += 1) {
    let power = 1;
    for (let k = 0; k <= 2 * degree; k += 1) {
      sums[k]! += power;
      if (k < size) right[k]! += power * ys[point]!;
      power *= ts[point]!;
    }
  }
  const rows = right.map((value, k) => [...sums.slice(k, k + size), value]);
  return solve(rows);
}

/** Gaussian elimination with the largest pivot; rows hold the matrix and, last, the right-hand side. */
function solve(rows: number[][]): number[] | null {
  const size = rows.length;
  for (let column = 0; column < size; column += 1) {
    let best = column;
    for (let row = column + 1; row < size; row += 1)
      if (Math.abs(rows[row]![column]!) > Math.abs(rows[best]![column]!)) best = row;
    [rows[column], rows[best]] = [rows[best]!, rows[column]!];
    const pivot = rows[column]![column]!;
    if (!(Math.abs(pivot) > 1e-9)) return null;
    for (let row = 0; row < size; row += 1) {
      if (row === column) continue;
      const factor = rows[row]![column]! / pivot;
      for (let k = column; k <= size; k += 1) rows[row]![k]! -= factor * rows[column]![k]!;
    }
  }
  return rows.map((row, k) => row[size]! / row[k]!);
}

/** A circle fitted to points of a plane. */
export interface Circle {
  x: number;
  y: number;
  radius: number;
  /** Root mean square distance of the points from it. */
  rms: number;
}

/**
 * The circle nearest to the points: Kåsa's linear fit for a start, then Gauss-Newton on the distances themselves, since
 * the linear fit alone makes a short arc's circle too small. Null when the points lie on a line or are too few.
 */
export function fitCircle(xs: readonly number[], ys: readonly number[]): Circle | null {
  const n = xs.length;
  if (n < 3) return null;
  const mean = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / n;
  const [mx, my] = [mean(xs), mean(ys)];
  const us = xs.map((x) => x - mx);
  const vs = ys.map((y) => y - my);
  const sum = (f: (u: number, v: number) => number): number =>
    us.reduce((total, u, at) => total + f(u, vs[at]!), 0);
  const square = (u: number, v: number): number => u * u + v * v;
  const start = solve([
    [sum((u) => u * u), sum((u, v) => u * v), sum((u, v) => u * square(u, v)) / 2],
    [sum((u, v) => u * v), sum((_u, v) => v * v), sum((u, v) => v * square(u, v)) / 2],
  ]);
  if (!start) return null;
  let [x, y] = [start[0]!, start[1]!];
  let radius = Math.sqrt(x * x + y * y + sum(square) / n);
  for (let tries = 0; tries < 20; tries += 1) {
    const rows = [
      [0, 0, 0, 0],
      [0, 0, 0, 0],
      [0, 0, 0, 0],
    ];
    for (let at = 0; at < n; at += 1) {
      const distance = Math.hypot(us[at]! - x, vs[at]! - y) || 1e-9;
      // How the distance less the radius changes with x, y and the radius.
      const slope = [(x - us[at]!) / distance, (y - vs[at]!) / distance, -1];
      const miss = distance - radius;
      for (let i = 0; i < 3; i += 1) {
        for (let j = 0; j < 3; j += 1) rows[i]![j]! += slope[i]! * slope[j]!;
        rows[i]![3]! -= slope[i]! * miss;
      }
    }
    const step = solve(rows);
    if (!step) return null;
    x += step[0]!;
    y += step[1]!;
    radius += step[2]!;
    if (Math.hypot(step[0]!, step[1]!, step[2]!) < 1e-6) break;
  }
  if (!(radius > 0) || !Number.isFinite(x + y + radius)) return null;
  const rms = Math.sqrt(sum((u, v) => (Math.hypot(u - x, v - y) - radius) ** 2) / n);
  return { x: x + mx, y: y + my, radius, rms };
}
