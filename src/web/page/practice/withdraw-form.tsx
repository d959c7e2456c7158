import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { TextInput } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';

/** Withdraws a record; `at` is its address. */
export function WithdrawForm({ at, withdrawn }: { at: string; withdrawn: () => void }) {
  const [because, setBecause] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void attempt(setProblem, async () => {
          await call('POST', `${at}/correct`, { because, record: null });
          withdrawn();
        });
      }}
    >
      <TextInput
        label="Why it is withdrawn; it stays on record"
        value={because}
        set={setBecause}
        required
        max={500}
      />
      <Refusal problem={problem} />
      <button class="main">Withdraw it</button>
    </form>
  );
}
