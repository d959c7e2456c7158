import type { ComponentChildren } from 'preact';
import type { Answers, Decision, Problem } from '../api/types.js';
import { commandSays } from '../../../rules/explain/sentences.js';
import { names } from '../session/session.js';
import { AircraftAnswer } from './aircraft-answer.js';

interface Props {
  asked: { answers: Answers; said: string };
  zone: string;
  book(decision: Decision, override?: object): Promise<Problem | null>;
  /** May whoever looks set the club's rules aside for it? */
  setsAside?: (decision: Decision) => boolean;
  more?: (decision: Decision) => ComponentChildren;
}

/** The fleet's answers, best first. */
export function AnswerList({ asked, zone, book, setsAside, more }: Props) {
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
      {decisions[0] && <Command crew={decisions[0].crew} />}
      <ul class="fleet">
        {decisions.map((decision) => (
          <AircraftAnswer
            key={decision.id}
            decision={decision}
            zone={zone}
            book={book}
            officer={setsAside?.(decision) ?? false}
            more={more}
          />
        ))}
      </ul>
      <p class="caution">{caution}</p>
    </>
  );
}

/** Who is pilot in command of the flight, whichever aircraft it is. */
function Command({ crew: { picId, picBecause } }: { crew: Decision['crew'] }) {
  const name = picId === null ? null : (names.value.find(({ id }) => id === picId)?.name ?? 'Somebody');
  return <p class="command">{commandSays(name, picBecause)}</p>;
}
