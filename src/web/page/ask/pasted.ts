/** Reports of weather as a request takes them. */
export interface Pasted {
  metar: string[];
  taf: string[];
}

/** Begins a report or forecast: its kind, or a station of four letters with a time. */
const BEGINS = /^(?:METAR|SPECI|TAF|[A-Z][A-Z0-9]{3}\s+\d{6}Z)\b/i;
/** A forecast tells the span it holds for. */
const FORECAST = /^TAF\b|\d{6}Z\s+(?:AUTO\s+)?\d{4}\/\d{4}\b/i;

/** Pasted text as single reports, each from the line that begins it to the next; null where nothing was pasted. */
export function pastedReports(text: string): Pasted | null {
  const all: string[] = [];
  for (const line of text.split(/\r?\n|=/).map((one) => one.trim())) {
    if (line === '') continue;
    if (all.length === 0 || BEGINS.test(line)) all.push(line);
    else all[all.length - 1] += ` ${line}`;
  }
  if (all.length === 0) return null;
  return {
    metar: all.filter((one) => !FORECAST.test(one)),
    taf: all.filter((one) => FORECAST.test(one)),
  };
}
