import type { Answers, Decision, Problem } from '../api/types.js';
import { AircraftAnswer } from './aircraft-answer.js';

interface Props {
  asked: { answers: Answers; said: string };
  zone: string;
  book(decision: Decision): Promise<Problem | null>;
}

/** The fleet's answers, best first. */
export function AnswerList({ asked, zone, book }: Props) {
  const { decisions, caution } = asked.answers;
  const open = decisions.filter(
    (decision) => decision.answer === 'yes' || decision.answer === 'yes-with-conditions',
  ).length;
  return (
    <>
      <h2>
        {open === 0 ? 'No aircraft answers yes' : `${open} of ${decisions.length} aircraft can be booked`}
        <small>{asked.said}</small>
      </h2>
      <ul class="fleet">
        {decisions.map((decision) => (
          <AircraftAnswer key={decision.id} decision={decision} zone={zone} book={book} />
        ))}
      </ul>
      <p class="caution">{caution}</p>
    </>
  );
}
