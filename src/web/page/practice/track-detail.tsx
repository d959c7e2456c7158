/** How the reading of a track came to what it says; each opens. */
import { clockIn } from '../parts/time.js';
import type { TrackReading } from './types.js';
import { MEASURES } from './words.js';

type Event = TrackReading['events'][number];

const KINDS: Record<string, string> = {
  'take-off': 'Take-off',
  landing: 'Landing',
  'low-approach': 'Go-around',
  'steep-turn': 'Steep turn',
  hold: 'Hold',
};

export function eventSays(event: Event, zone: string): string {
  const where =
    event.airfield === null ? '' : ` at ${event.airfield}${event.runway ? `, runway ${event.runway}` : ''}`;
  const stop = event.fullStop === null ? '' : event.fullStop ? ', full stop' : ', touch-and-go';
  const bank =
    event.bankDeg === null
      ? ''
      : `, ${event.bankDeg}° of bank, wind there ${event.windKt} kt from ${event.windFromDeg}°`;
  return `${clockIn(zone, event.at)} ${KINDS[event.kind] ?? event.kind}${where}${stop}${bank}`;
}

/** How sure an event is: the factors whose product it is. */
export function EventDetail({ event, zone }: { event: Event; zone: string }) {
  return (
    <details class="how">
      <summary>How sure: {event.confidence}</summary>
      {event.until !== event.at && (
        <p>
          From {clockIn(zone, event.at)} to {clockIn(zone, event.until)}.
        </p>
      )}
      {event.altitudeDevFt && (
        <p>
          Height from its beginning: {event.altitudeDevFt.least} to {event.altitudeDevFt.most} ft.
        </p>
      )}
      <ul>
        {event.factors.map(({ says, factor }) => (
          <li key={says}>
            {says}: {factor}
          </li>
        ))}
      </ul>
      <p>Multiplied, they give {event.confidence}. This is no probability.</p>
    </details>
  );
}

const FIELDS: Record<string, string> = {
  departedAt: 'Set off',
  arrivedAt: 'Came to rest',
  fromAirfield: 'From',
  toAirfield: 'To',
  totalTenths: 'Hours, in tenths',
  nightTenths: 'Hours at night, in tenths',
  takeoffs: 'Take-offs',
  landings: 'Landings',
  fullStopLandings: 'Landings to a full stop',
  nightTakeoffs: 'Take-offs at night',
  nightFullStopLandings: 'Landings at night to a full stop',
};
const fieldOf = (name: string): string =>
  FIELDS[name] ?? name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** What each value of the log was counted from. */
export function LogDetail({
  log,
  numberOf,
}: {
  log: TrackReading['log'];
  numberOf: (event: string) => string;
}) {
  if (log.length === 0) return null;
  return (
    <details class="how">
      <summary>How each figure for the log was counted</summary>
      <ul>
        {log.map(({ field, value, evidence, confidence, caveats }) => (
          <li key={field}>
            <strong>{fieldOf(field)}:</strong> {value === null ? 'not seen' : String(value)}
            {evidence.length > 0 && `, from ${evidence.map(numberOf).join(', ')}`}, how sure: {confidence}.{' '}
            {caveats.join(' ')}
          </li>
        ))}
      </ul>
    </details>
  );
}

/** What would be recorded, and what to know about it. */
export function PracticeDetail({
  record,
  confidence,
  caveats,
}: Pick<TrackReading['practice'][number], 'record' | 'confidence' | 'caveats'>) {
  const measured = (record['measured'] ?? {}) as Record<string, { least: number; most: number } | null>;
  const runwayFt = record['runwayFt'] as number | null;
  return (
    <details class="how">
      <summary>How sure: {confidence}; what would be recorded</summary>
      <ul>
        {MEASURES.flatMap(({ measure, label }) => {
          const span = measured[measure];
          return span ? [{ label, span }] : [];
        }).map(({ label, span }) => (
          <li key={label}>
            {label}: {span.least === span.most ? span.least : `${span.least} to ${span.most}`}
          </li>
        ))}
        <li>At night: {record['night'] === null ? 'not said' : record['night'] ? 'yes' : 'no'}</li>
        {runwayFt !== null && <li>Runway: {runwayFt} ft</li>}
        {caveats.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </details>
  );
}
