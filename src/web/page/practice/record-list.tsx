import { useState } from 'preact/hooks';
import { Tick } from '../parts/fields.js';
import { CorrectForm } from './record-form.js';
import { RecordLine } from './record-line.js';
import type { PracticeRecord } from './types.js';
import { WithdrawForm } from './withdraw-form.js';

interface May {
  correct: boolean;
  withdraw: boolean;
}

/** Records, newest flight first. A wrong one is corrected by another, or withdrawn with a reason; it stays to be seen. */
export function RecordList({
  records,
  at,
  zone,
  may,
  all,
  setAll,
  changed,
}: {
  records: PracticeRecord[];
  at: string;
  zone: string;
  may: (record: PracticeRecord) => May;
  /** Whether those that do not count any more are shown too. */
  all: boolean;
  setAll: (all: boolean) => void;
  changed: () => void;
}) {
  const [open, setOpen] = useState<{ id: string; to: keyof May } | null>(null);
  const toggle = (id: string, to: keyof May) =>
    setOpen(open?.id === id && open.to === to ? null : { id, to });
  const done = () => {
    setOpen(null);
    changed();
  };
  return (
    <section aria-labelledby="records">
      <h3 id="records">On record</h3>
      <Tick value={all} set={setAll}>
        Show corrected and withdrawn ones too
      </Tick>
      {records.length === 0 && <p class="hint">Nothing is recorded yet.</p>}
      <ul class="records">
        {records.map((one) => {
          const stands = one.correctedBy === null && !one.withdraws;
          const allowed = stands ? may(one) : { correct: false, withdraw: false };
          const is = (to: keyof May) => open?.id === one.id && open.to === to;
          const name = `${one.title} of ${one.flownOn}`;
          return (
            <li key={one.id} class={stands ? undefined : 'gone'}>
              <RecordLine one={one} />
              {(allowed.correct || allowed.withdraw) && (
                <div class="may">
                  {allowed.correct && (
                    <button
                      class="quiet"
                      aria-expanded={is('correct')}
                      aria-label={`Correct ${name}`}
                      onClick={() => toggle(one.id, 'correct')}
                    >
                      Correct
                    </button>
                  )}
                  {allowed.withdraw && (
                    <button
                      class="quiet"
                      aria-expanded={is('withdraw')}
                      aria-label={`Withdraw ${name}`}
                      onClick={() => toggle(one.id, 'withdraw')}
                    >
                      Withdraw
                    </button>
                  )}
                </div>
              )}
              {is('correct') && <CorrectForm at={at} zone={zone} record={one} corrected={done} />}
              {is('withdraw') && <WithdrawForm at={`${at}/${one.id}`} withdrawn={done} />}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
