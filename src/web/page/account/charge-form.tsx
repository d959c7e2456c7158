import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Choice, FigureInput, figureOf, TextInput } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { spanIn } from '../parts/time.js';
import { names } from '../session/session.js';
import { minorOf } from './money.js';
import type { MoneyUnit, Uncharged } from './types.js';

/** Charges a flight that came back, by what its meters ran. */
export function ChargeForm({
  flight,
  unit,
  zone,
  charged,
}: {
  flight: Uncharged;
  unit: MoneyUnit;
  zone: string;
  charged: () => void;
}) {
  const [typed, setTyped] = useState({ hobbs: '', tach: '', minutes: '', gallons: '', paid: '', club: '' });
  const [payerId, setPayer] = useState(flight.memberId);
  const [problem, setProblem] = useState<string | null>(null);
  const set = (part: keyof typeof typed) => (value: string) => setTyped({ ...typed, [part]: value });
  const teacher = names.value.find(({ id }) => id === flight.instructorId)?.name;
  const submit = async (event: Event) => {
    event.preventDefault();
    const paid = typed.paid.trim() === '' ? 0 : minorOf(typed.paid, unit);
    if (paid === null || paid < 0) return setProblem('Paid for it: give an amount in figures.');
    const went = await attempt(setProblem, () =>
      call<void>('POST', `/bookings/${flight.bookingId}/charge`, {
        payerId,
        ...{ departedAt: flight.departs, arrivedAt: flight.arrives, instructorId: flight.instructorId },
        ...{ hobbsH: figureOf(typed.hobbs), tachH: figureOf(typed.tach) },
        instructionMinutes: figureOf(typed.minutes),
        ...{ fuelBoughtUsGal: figureOf(typed.gallons) ?? 0, fuelPaidMinor: paid },
        fuelClubUsGal: figureOf(typed.club) ?? 0,
      }),
    );
    return went ? charged() : undefined;
  };
  const title = `${flight.registration}, ${flight.memberName}, ${spanIn(zone, flight.departs, flight.arrives)}`;
  return (
    <li>
      <details class="card">
        <summary>{title}</summary>
        <form onSubmit={(event) => void submit(event)}>
          <div class="row">
            <FigureInput label="Hobbs ran, h" value={typed.hobbs} set={set('hobbs')} min={0} step="0.1" />
            <FigureInput label="Tachometer ran, h" value={typed.tach} set={set('tach')} min={0} step="0.1" />
          </div>
          {teacher !== undefined && (
            <FigureInput
              {...{ label: `Instruction by ${teacher}, min`, min: 0, step: '1' }}
              {...{ value: typed.minutes, set: set('minutes') }}
            />
          )}
          <div class="row">
            <FigureInput label="Fuel bought, US gal" value={typed.gallons} set={set('gallons')} min={0} />
            <TextInput
              label={`Paid for it, ${unit.currency}`}
              value={typed.paid}
              set={set('paid')}
              max={12}
            />
            <FigureInput label="The club's fuel, US gal" value={typed.club} set={set('club')} min={0} />
          </div>
          <Choice
            label="On the account of"
            value={payerId}
            set={setPayer}
            of={names.value.map(({ id, name }) => [id, name] as const)}
          />
          <Refusal problem={problem} />
          <button class="main">Charge it</button>
        </form>
      </details>
    </li>
  );
}
