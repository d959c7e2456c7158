import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Choice, DayInput, TextInput } from '../parts/fields.js';
import { newKey } from '../parts/key.js';
import { Refusal } from '../parts/refusal.js';
import { today } from '../parts/time.js';
import { minorOf, moneySays } from './money.js';
import type { MoneyUnit } from './types.js';

const KINDS = [
  ['receipt', 'Money that came in'],
  ['credit', 'Taken off the account'],
  ['charge', 'Put on the account'],
] as const;

/** Enters what came in for an account, or what is put right. */
export function EnterForm({
  memberId,
  unit,
  zone,
  entered,
}: {
  memberId: string;
  unit: MoneyUnit;
  zone: string;
  entered: (what: string) => void;
}) {
  const [kind, setKind] = useState<(typeof KINDS)[number][0]>('receipt');
  const [amount, setAmount] = useState('');
  const [receivedOn, setReceivedOn] = useState(today(zone));
  const [words, setWords] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  // One key for what is meant to be entered once, also when the answer was lost on the way.
  const [key, setKey] = useState(() => newKey());
  const submit = async (event: Event) => {
    event.preventDefault();
    const minor = minorOf(amount, unit);
    if (minor === null || minor <= 0)
      return setProblem(`Amount: give it in figures, such as ${moneySays(unit.minorPerUnit * 125, unit)}.`);
    const [path, body] =
      kind === 'receipt'
        ? (['receipts', { amountMinor: minor, receivedOn, words }] as const)
        : (['adjustments', { amountMinor: kind === 'credit' ? -minor : minor, reason: words }] as const);
    const went = await attempt(setProblem, () =>
      call<void>('POST', `/members/${memberId}/${path}`, body, { 'Idempotency-Key': key }),
    );
    if (!went) return undefined;
    setKey(newKey());
    setAmount('');
    setWords('');
    return entered(`Entered: ${moneySays(minor, unit)}.`);
  };
  return (
    <form class="card unprinted" onSubmit={(event) => void submit(event)}>
      <h3>Enter on this account</h3>
      <p class="hint">
        Only the fact that it came in: no card, no bank details. An entry is never changed; a wrong one is
        reversed.
      </p>
      <div class="row">
        <Choice label="What" value={kind} set={setKind} of={KINDS} />
        <TextInput label={`Amount, ${unit.currency}`} value={amount} set={setAmount} required max={12} />
        {kind === 'receipt' && (
          <DayInput label="Came in on" value={receivedOn} set={setReceivedOn} required max={today(zone)} />
        )}
      </div>
      <TextInput
        label={kind === 'receipt' ? 'Note; the member reads it' : 'Why; the member reads it'}
        value={words}
        set={setWords}
        required={kind !== 'receipt'}
        max={500}
      />
      <Refusal problem={problem} />
      <button class="main">Enter it</button>
    </form>
  );
}
