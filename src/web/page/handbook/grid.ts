/** A table of distances as it stands in a handbook, typed or pasted from a spreadsheet. */

export interface Grid {
  temperaturesC: number[];
  pressureAltitudesFt: number[];
  /** A row for each pressure altitude. */
  feet: number[][];
}

/** Why a text is no table. */
export class GridFault extends Error {}

/**
 * Reads a table: the first line the temperatures, each line after it a pressure altitude and its distances. Between figures stand tabs,
 * semicolons, bars or blanks; a comma is a thousands separator where three digits follow it, and stands between figures otherwise.
 *
 * @throws GridFault saying which line cannot be read
 */
export function gridOf(text: string): Grid {
  const lines = text
    .split(/\r?\n/)
    .map((line) => line.trim())
    .filter((line) => line !== '');
  if (lines.length < 3)
    throw new GridFault('A table has a line of temperatures and two pressure altitudes at least.');
  const [head, ...rows] = lines;
  const temperaturesC = figures(head!, 1, true);
  const read = rows.map((line, index) => {
    const [altitude, ...feet] = figures(line, index + 2, false);
    if (feet.length !== temperaturesC.length)
      throw new GridFault(
        `Line ${index + 2} has ${feet.length} distances for ${temperaturesC.length} temperatures.`,
      );
    return { altitude: altitude!, feet };
  });
  return {
    temperaturesC,
    pressureAltitudesFt: read.map(({ altitude }) => altitude),
    feet: read.map(({ feet }) => feet),
  };
}

/** The figures of a line; in the head, what stands in the corner may be words. */
function figures(line: string, number: number, isHead: boolean): number[] {
  const cells = line
    .replace(/[−–]/g, '-')
    .replace(/(?<=\d),(?=\d{3}(?!\d))/g, '')
    .split(/[\s;|,]+/)
    .filter((cell) => cell !== '');
  const firstFigure = cells.findIndex((cell) => /^[-+]?\d/.test(cell));
  const kept = isHead && firstFigure > 0 ? cells.slice(firstFigure) : cells;
  const found = kept.map((cell) => Number(cell.replace(/°?[CF]$|ft$|'$/i, '')));
  const wrong = found.findIndex((figure) => !Number.isFinite(figure));
  if (wrong >= 0) throw new GridFault(`Line ${number}: “${kept[wrong]!}” is no figure.`);
  return found;
}

/** A table as text, as `gridOf` reads it. */
export const gridText = ({ temperaturesC, pressureAltitudesFt, feet }: Grid): string =>
  [
    ['ft', ...temperaturesC].join('\t'),
    ...pressureAltitudesFt.map((altitude, at) => [altitude, ...feet[at]!].join('\t')),
  ].join('\n');
