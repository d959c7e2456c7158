import { useState } from 'preact/hooks';
import { ANSWER_WORD } from '../../../rules/explain/words.js';
import { Ways } from '../answer/ways.js';
import { inTheWay } from '../answer/words.js';
import { call } from '../api/client.js';
import type { Answers, Decision } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Choice, DayInput, FigureInput, Tick } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { Said } from '../parts/said.js';
import { instantIn, plusDays, today } from '../parts/time.js';
import type { ClubAircraft } from './types.js';

interface Props {
  whose: string;
  own: boolean;
  zone: string;
  aircraft: ClubAircraft[];
}

/** "What do I need before that day, with so many passengers, at night?": asked of the engine as a local flight of an hour. */
export function NeedForm({ whose, own, zone, aircraft }: Props) {
  const [day, setDay] = useState(plusDays(today(zone), 30));
  const [passengers, setPassengers] = useState('2');
  const [night, setNight] = useState(false);
  const [chosen, setChosen] = useState('');
  const [decision, setDecision] = useState<Decision | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const roomy = aircraft.find(({ seats }) => seats > Number(passengers)) ?? aircraft[0];
  const aircraftId = chosen || (roomy?.id ?? '');
  const ask = () =>
    attempt(setProblem, async () => {
      setDecision(null);
      const [departs, arrives] = (night ? ['22:30', '23:30'] : ['12:00', '13:00']).map((clock) =>
        instantIn(zone, day, clock),
      );
      const aboard = Number(passengers);
      const { decisions } = await call<Answers>('POST', '/decisions', {
        ...{ departs, arrives, aircraftIds: [aircraftId], ...(own ? {} : { memberId: whose }) },
        // The day may lie farther ahead than the club takes bookings.
        planned: true,
        ...{ purpose: aboard > 0 ? 'passengers' : 'solo', personsOnBoard: 1 + aboard, flightRules: 'VFR' },
      });
      setDecision(decisions[0]!);
    });
  return (
    <section aria-labelledby="need">
      <h3 id="need">What do I need before…</h3>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void ask();
        }}
      >
        <div class="row">
          <DayInput label="Day of the flight" value={day} set={setDay} required />
          <FigureInput
            {...{ label: 'Passengers', value: passengers, set: setPassengers, required: true }}
            {...{ min: 0, max: 19, step: '1' }}
          />
          <Choice
            label="In"
            value={aircraftId}
            set={setChosen}
            of={aircraft.map(
              ({ id, registration, seats }) => [id, `${registration}, ${seats} seats`] as const,
            )}
          />
          <Tick value={night} set={setNight}>
            at night, at 22:30
          </Tick>
        </div>
        <button class="main">What do I need?</button>
      </form>
      <Refusal problem={problem} />
      <div aria-live="polite">{decision && <Needed decision={decision} zone={zone} />}</div>
    </section>
  );
}

function Needed({ decision, zone }: { decision: Decision; zone: string }) {
  const blocking = decision.findings.filter(inTheWay);
  return (
    <div class="needed" data-answer={decision.answer}>
      <p>
        As things stand: <strong>{ANSWER_WORD[decision.answer]}</strong> in {decision.aircraft.registration},
        for an hour at home under VFR.
      </p>
      <ul class="lines">
        {blocking.map((finding) => (
          <li key={finding.rule}>
            <strong>{finding.title}.</strong> <Said text={finding.says} zone={zone} />
          </li>
        ))}
      </ul>
      <Ways key={decision.id} decision={decision} zone={zone} atOnce />
      <p class="small">{decision.caution}</p>
    </div>
  );
}
