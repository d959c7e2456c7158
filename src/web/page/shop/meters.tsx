import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { spanIn } from '../parts/time.js';
import { METER_WORDS, type MeterRates } from './types.js';

/** Stretches between readings in which a meter ran otherwise than the aircraft was flown. */
export function Meters({ aircraftId, zone }: { aircraftId: string; zone: string }) {
  const [rates, setRates] = useState<MeterRates | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const open = () =>
    attempt(setProblem, async () =>
      setRates(await call<MeterRates>('GET', `/aircraft/${aircraftId}/meters/rates`)),
    );
  const odd = rates?.stretches.filter(({ look }) => look !== 'as-usual') ?? [];
  return (
    <details class="card" onToggle={(event) => event.currentTarget.open && void open()}>
      <summary>Meters against the log</summary>
      {rates !== null && odd.length === 0 && (
        <p class="hint">
          The meters ran as the aircraft was flown, over {rates.stretches.length} stretches of a year.
        </p>
      )}
      <ul>
        {odd.slice(0, 20).map((one) => (
          <li key={one.toReadingId}>
            <strong>{METER_WORDS[one.kind]}</strong>, {spanIn(zone, one.from, one.to)}: {one.says}
          </li>
        ))}
      </ul>
      {odd.length > 20 && <p class="hint">And {odd.length - 20} older ones.</p>}
      <Refusal problem={problem} />
    </details>
  );
}
