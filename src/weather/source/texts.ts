/** A plain-text answer of a weather service as single reports: each begins a line, and what is indented goes on. */
export function reportsIn(answer: string): string[] {
  const reports: string[] = [];
  for (const line of answer.split(/\r?\n/)) {
    if (line.trim() === '') continue;
    const goesOn = /^\s/.test(line) && reports.length > 0;
    if (goesOn) reports[reports.length - 1] += ` ${line.trim()}`;
    else reports.push(line.trim());
  }
  return reports;
}
