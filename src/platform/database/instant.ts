/** An instant column as RFC 3339 in UTC with whole seconds; null stays null. */
export const instant = (column: string): string =>
  `to_char(${column} AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"')`;
