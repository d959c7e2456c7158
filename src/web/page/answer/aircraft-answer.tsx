import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { estimateSays } from '../account/estimate.js';
import type { Decision, Problem } from '../api/types.js';
import { Said } from '../parts/said.js';
import { overrideOf, SetAside } from '../parts/set-aside.js';
import { ANSWER_WORD } from '../../../rules/explain/words.js';
import { horizonSays } from '../../../rules/explain/sentences.js';
import { FindingLine } from './finding-line.js';
import { LoadingWork } from './loading-work.js';
import { Ways } from './ways.js';
import { WeatherWork } from './weather-work.js';
import { advises, inTheWay, LOOKS } from './words.js';

interface Props {
  decision: Decision;
  zone: string;
  book(decision: Decision, override?: object): Promise<Problem | null>;
  /** Whoever looks may set the club's rules aside. */
  officer?: boolean;
  /** What else can be done with the flight where the aircraft may be booked. */
  more?: (decision: Decision) => ComponentChildren;
}

/** One aircraft's answer: the word, why, until when, and the button. */
export function AircraftAnswer({ decision, zone, book, officer = false, more }: Props) {
  const [state, setState] = useState<'open' | 'booking' | 'booked'>('open');
  const [problem, setProblem] = useState<Problem | null>(null);
  const { shape, tone } = LOOKS[decision.answer];
  const blocking = decision.findings.filter(inTheWay);
  const advice = decision.findings.filter(advises);
  const met = decision.findings.filter((finding) => finding.status === 'met');
  const mayBook = decision.answer === 'yes' || decision.answer === 'yes-with-conditions';

  const submit = async (override?: object) => {
    setState('booking');
    const refused = await book(decision, override);
    setProblem(refused);
    setState(refused ? 'open' : 'booked');
  };

  return (
    <li
      class={`aircraft ${tone}`}
      data-answer={decision.answer}
      data-registration={decision.aircraft.registration}
    >
      <div class="verdict">
        <span class="shape" aria-hidden="true">
          {shape}
        </span>
        <h3>
          <span class="word">{ANSWER_WORD[decision.answer]}</span>
          <span class="registration">{decision.aircraft.registration}</span>
          <span class="model">{decision.aircraft.makeModel}</span>
          <Cost aircraftId={decision.aircraft.id} />
        </h3>
        {mayBook && state !== 'booked' && (
          <button
            class="main"
            disabled={state === 'booking'}
            onClick={() => void submit()}
            aria-label={`Book ${decision.aircraft.registration}`}
          >
            {state === 'booking' ? 'Booking…' : 'Book'}
          </button>
        )}
        {state === 'booked' && <span class="booked">Booked ✓</span>}
      </div>
      {problem && (
        <p class="problem" role="alert">
          <strong>{problem.title}.</strong> {problem.errors?.[0]?.message ?? problem.detail}
        </p>
      )}
      {decision.answer === 'dual-only' || decision.answer === 'ask-officer' ? (
        <p class="says">{decision.says}</p>
      ) : null}
      {blocking.length > 0 && (
        <ul class="findings">
          {blocking.map((finding) => (
            <FindingLine key={finding.rule} decision={decision} finding={finding} zone={zone} />
          ))}
        </ul>
      )}
      {mayBook && decision.conditions.length > 0 && (
        <div class="conditions">
          <strong>Before departure</strong>
          <ul>
            {decision.conditions.map((condition) => (
              <li>
                <Said text={condition} zone={zone} />
              </li>
            ))}
          </ul>
        </div>
      )}
      {mayBook && more?.(decision)}
      {officer && decision.answer === 'ask-officer' && state !== 'booked' && (
        <BookAllTheSame
          registration={decision.aircraft.registration}
          busy={state === 'booking'}
          book={(override) => void submit(override)}
        />
      )}
      <Ways decision={decision} zone={zone} />
      <WeatherWork decision={decision} zone={zone} />
      <LoadingWork decision={decision} />
      <Horizon decision={decision} zone={zone} />
      {advice.length > 0 && (
        <ul class="findings advice">
          {advice.map((finding) => (
            <FindingLine key={finding.rule} decision={decision} finding={finding} zone={zone} />
          ))}
        </ul>
      )}
      <details class="met">
        <summary>{met.length} rules met: see each</summary>
        <ul class="findings">
          {met.map((finding) => (
            <FindingLine key={finding.rule} decision={decision} finding={finding} zone={zone} />
          ))}
        </ul>
      </details>
    </li>
  );
}

/** An officer's way past the club's own rules: with a reason that stays on record, and never past the law. */
function BookAllTheSame(props: { registration: string; busy: boolean; book(override: object): void }) {
  const { registration, busy, book } = props;
  const [reason, setReason] = useState('');
  return (
    <details class="all-the-same">
      <summary>Set the club’s rules aside for {registration}</summary>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          book(overrideOf(reason));
        }}
      >
        <SetAside value={reason} set={setReason} />
        <button disabled={busy || reason.trim() === ''}>Book {registration} all the same</button>
      </form>
    </details>
  );
}

/** About what it costs, by the rate and the hours planned; nothing where the club keeps no rate. */
function Cost({ aircraftId }: { aircraftId: string }) {
  const says = estimateSays(aircraftId);
  return says === null ? null : <span class="cost">{says}</span>;
}

/** Until when the answer stands. */
function Horizon({ decision, zone }: { decision: Decision; zone: string }) {
  const titles = decision.findings
    .filter((finding) => decision.horizon.because.includes(finding.rule))
    .map((finding) => finding.title);
  return (
    <p class="horizon">
      <Said text={horizonSays(decision.horizon, titles)} zone={zone} />
    </p>
  );
}
