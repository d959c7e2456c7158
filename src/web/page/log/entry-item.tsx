import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { Day, Said } from '../parts/said.js';
import { spanIn } from '../parts/time.js';
import type { LogCheck, LogEntry } from './types.js';
import { CHECKS, COUNTS, DEVICES, HOURS, kindSays, roleSays } from './words.js';

interface Props {
  entry: LogEntry;
  at: string;
  zone: string;
  writes: boolean;
  edit: (entry: LogEntry) => void;
  changed: () => void;
}

/** One flight: its values, and beside each that cannot be, what was worked out. */
export function EntryItem({ entry, at, zone, writes, edit, changed }: Props) {
  const [problem, setProblem] = useState<string | null>(null);
  const [sure, setSure] = useState(false);
  const takeOut = () =>
    attempt(setProblem, async () => {
      await call('POST', `${at}/${entry.id}/void`, undefined, { 'If-Match': `"${entry.rowVersion}"` });
      changed();
    });
  const name = `${entry.fromAirfield} to ${entry.toAirfield} on ${entry.flownOn}`;
  return (
    <li data-entry={entry.id} class={entry.voidedAt ? 'void' : undefined}>
      <p>
        <strong>
          <Day date={entry.flownOn} />, {entry.fromAirfield} to {entry.toAirfield}
        </strong>
        {entry.voidedAt && <span class="tag">void, no longer counted</span>}
        <small>
          {entry.aircraftWords}; {roleSays(entry.role)}
        </small>
      </p>
      <Values entry={entry} />
      <details>
        <summary>
          All of it, and how it was checked<span class="unseen">: {name}</span>
        </summary>
        <Whole entry={entry} zone={zone} />
      </details>
      <Refusal problem={problem} />
      {writes && !entry.voidedAt && (
        <div class="buttons">
          <button type="button" class="quiet" aria-label={`Change ${name}`} onClick={() => edit(entry)}>
            Change
          </button>
          {sure ? (
            <button type="button" class="quiet danger" onClick={() => void takeOut()}>
              Take it out of every count; it stays on record
            </button>
          ) : (
            <button type="button" class="quiet" aria-label={`Void ${name}`} onClick={() => setSure(true)}>
              Void
            </button>
          )}
        </div>
      )}
    </li>
  );
}

/** The values that are not nought, each with its flag beside it; then the other flags. */
function Values({ entry }: { entry: LogEntry }) {
  const flags = entry.checks.filter(({ outcome }) => outcome === 'flagged');
  const unchecked = [
    ...new Set(entry.checks.filter(({ outcome }) => outcome === 'not-checkable').map(({ says }) => says)),
  ];
  const flagged = (field: string) => flags.some((one) => one.field === field);
  const shown = [
    ...HOURS.map(([field, words]) => [field, words, `${entry[field].toFixed(1)} h`] as const),
    ...COUNTS.map(([field, words]) => [field, words, String(entry[field])] as const),
  ].filter(([field]) => entry[field] !== 0 || field === 'totalH' || flagged(field));
  const others = flags.filter(({ field }) => !shown.some(([name]) => name === field));
  return (
    <>
      <dl class="values">
        {shown.map(([field, words, value]) => (
          <div key={field} class={flagged(field) ? 'flagged' : undefined}>
            <dt>{words}</dt>
            <dd>
              {value}
              {flags
                .filter((one) => one.field === field)
                .map((one) => (
                  <Flag key={one.check} flag={one} />
                ))}
            </dd>
          </div>
        ))}
      </dl>
      {others.map((one) => (
        <p key={one.check} class="flagged">
          {one.written}
          <Flag flag={one} />
        </p>
      ))}
      {unchecked.length > 0 && <p class="small">Not checked: {unchecked.join(' ')}</p>}
    </>
  );
}

function Flag({ flag }: { flag: LogCheck }) {
  return (
    <span class="flag">
      <span aria-hidden="true">⚑</span> worked out {flag.computed}. <Said text={flag.says} zone="UTC" />
    </span>
  );
}

function Whole({ entry, zone }: { entry: LogEntry; zone: string }) {
  const device = DEVICES.find(([key]) => key === entry.device)?.[1];
  return (
    <div class="whole">
      <p>
        {entry.timesKnown
          ? `${spanIn(zone, entry.departedAt, entry.arrivedAt)} at the club, `
          : 'Times not known, '}
        {kindSays(entry.category, entry.class)}
        {entry.tailwheel && ', tailwheel'}
        {entry.soleManipulator && ', sole manipulator'}
        {entry.device && `, ${device}`}
        {entry.holding && ', holding'}
        {entry.interceptTrack && ', intercepting and tracking'}.
      </p>
      {entry.remarks && <p>{entry.remarks}</p>}
      <ul class="checks">
        {entry.checks.map((one) => (
          <li key={one.check}>
            <strong>{CHECKS[one.check] ?? one.check}:</strong> {one.written}
            {one.computed === null ? ', not checkable' : `, worked out ${one.computed}`}.{' '}
            <Said text={one.says} zone="UTC" /> {one.source && <small>{one.source}.</small>}
          </li>
        ))}
      </ul>
    </div>
  );
}
