/**
 * A text in a CSV file that a spreadsheet opens must not begin like a formula (OWASP, CSV Injection): an apostrophe before it makes it
 * a text. The way back takes just that apostrophe off again, so nothing is lost; hence not the writer's own escaping, which cannot
 * be undone. Signs are taken in their full-width forms, too, and after blanks.
 */
const LIKE_A_FORMULA = /^[\s\u00a0\ufeff]*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r\n]/u;
const GUARDED = /^'(?:'|[\s\u00a0\ufeff]*[=+\-@\uff1d\uff0b\uff0d\uff20]|[\t\r\n])/u;

/** The text as it may stand in a file. */
export const guarded = (text: string): string =>
  LIKE_A_FORMULA.test(text) || GUARDED.test(text) ? `'${text}` : text;

/** The text as it was before it was guarded. */
export const unguarded = (cell: string): string => (GUARDED.test(cell) ? cell.slice(1) : cell);
