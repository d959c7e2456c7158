import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { TextInput } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { Said } from '../parts/said.js';
import { spanIn } from '../parts/time.js';
import { moneySays } from './money.js';
import type { Entry, Statement } from './types.js';
import { KIND, lineSays } from './words.js';

/** The entries of a period between what was owed before and after. */
export function StatementTable({
  statement,
  zone,
  mayReverse,
  reversed,
}: {
  statement: Statement;
  zone: string;
  mayReverse: boolean;
  reversed: () => void;
}) {
  const { from, to, entries, openingMinor, closingMinor } = statement;
  return (
    <table class="entries">
      <thead>
        <tr>
          <th scope="col">Entered</th>
          <th scope="col">What</th>
          <th scope="col" class="money">
            Amount
          </th>
          <th scope="col" class="money">
            Balance
          </th>
        </tr>
      </thead>
      <tbody>
        <tr class="edge">
          <td>
            <Said text={from} zone={zone} />
          </td>
          <td>Before that</td>
          <td />
          <td class="money">{moneySays(openingMinor, statement)}</td>
        </tr>
        {entries.map((entry) => (
          <tr key={entry.id} data-kind={entry.kind}>
            <td>
              <Said text={entry.postedOn} zone={zone} />
            </td>
            <td>
              <What entry={entry} zone={zone} />
              {mayReverse && entry.kind !== 'reversal' && entry.reversedBy === null && (
                <Reverse entry={entry} reversed={reversed} />
              )}
            </td>
            <td class="money">{moneySays(entry.amountMinor, entry)}</td>
            <td class="money">{moneySays(entry.balanceMinor, entry)}</td>
          </tr>
        ))}
        <tr class="edge">
          <td>
            <Said text={to} zone={zone} />
          </td>
          <td>{entries.length === 0 ? 'Nothing was entered' : 'At the end of that'}</td>
          <td />
          <td class="money">{moneySays(closingMinor, statement)}</td>
        </tr>
      </tbody>
    </table>
  );
}

/** What an entry is about, to the flight and the rate. */
function What({ entry, zone }: { entry: Entry; zone: string }) {
  const { kind, registration, departedAt, arrivedAt, words, lines, chargeNo } = entry;
  return (
    <>
      <strong>{registration ?? KIND[kind]}</strong>
      {entry.reversedBy !== null && <em> (reversed)</em>}
      {departedAt !== null && arrivedAt !== null && <span> {spanIn(zone, departedAt, arrivedAt)}</span>}
      {(chargeNo ?? 1) > 1 && <span>, charged anew</span>}
      {words !== '' && <span class="words">{words}</span>}
      {lines.length > 0 && (
        <ul class="lines">
          {lines.map((line) => (
            <li key={line.kind}>{lineSays(line, entry)}</li>
          ))}
        </ul>
      )}
    </>
  );
}

/** Takes an entry off again, with the reason. */
function Reverse({ entry, reversed }: { entry: Entry; reversed: () => void }) {
  const [reason, setReason] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const submit = async (event: Event) => {
    event.preventDefault();
    const went = await attempt(setProblem, () =>
      call<void>('POST', `/ledger-entries/${entry.id}/reverse`, { reason }),
    );
    if (went) reversed();
  };
  return (
    <details class="unprinted">
      <summary>Reverse it</summary>
      <form onSubmit={(event) => void submit(event)}>
        <TextInput label="Why; the member reads it" value={reason} set={setReason} required max={500} />
        <Refusal problem={problem} />
        <button class="danger">Reverse {moneySays(entry.amountMinor, entry)}</button>
      </form>
    </details>
  );
}
