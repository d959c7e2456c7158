/** What is looked at before a flight, piece by piece. */
import { ANSWER_WORD } from '../../../rules/explain/words.js';
import { Choice, FigureInput, TextInput, Tick } from '../parts/fields.js';
import { Said } from '../parts/said.js';
import { momentIn } from '../parts/time.js';
import { GAP_WORDS, stateWord } from './words.js';
import type { Sheet } from './types.js';

/** The answer of now: its conditions, each to be accepted; or what stands in the way. */
export function Answer({ sheet, zone, ticked, tick }: Ticks) {
  const { decision, mayGo, setAside } = sheet;
  const inTheWay = decision.findings.filter(
    // What is unknown and can still be settled is a condition, and in nobody's way.
    ({ status, weight, conditions }) =>
      weight !== 'advice' &&
      (status === 'short' || status === 'error' || (status === 'unknown' && conditions.length === 0)),
  );
  return (
    <fieldset class={mayGo ? 'may' : 'stays'}>
      <legend>
        Now: <strong>{ANSWER_WORD[decision.answer]}</strong>
      </legend>
      <p>
        <Said text={decision.says} zone={zone} />
      </p>
      {setAside.length > 0 && <p>An officer set aside for this flight: {setAside.join(', ')}.</p>}
      {!mayGo && (
        <ul class="reasons">
          {inTheWay.map(({ rule, title, says }) => (
            <li key={rule}>
              <strong>{title}:</strong> <Said text={says} zone={zone} />
            </li>
          ))}
        </ul>
      )}
      {mayGo &&
        decision.conditions.map((condition) => (
          <Tick key={condition} value={ticked.has(condition)} set={tick(condition)}>
            <Said text={condition} zone={zone} />
          </Tick>
        ))}
    </fieldset>
  );
}

export interface Ticks {
  sheet: Sheet;
  zone: string;
  ticked: ReadonlySet<string>;
  tick(id: string): (on: boolean) => void;
}

/** What is open or deferred, each to be read. */
export function Squawks({ sheet, zone, ticked, tick }: Ticks) {
  return (
    <fieldset>
      <legend>Squawks</legend>
      {sheet.squawks.length === 0 && <p>None open.</p>}
      {sheet.squawks.map(({ id, title, detail, state, reportedAt }) => (
        <Tick key={id} value={ticked.has(id)} set={tick(id)}>
          <strong>{title}</strong> ({stateWord(state)}, {momentIn(zone, reportedAt)})
          {detail && <span class="detail">{detail}</span>}
        </Tick>
      ))}
    </fieldset>
  );
}

interface MeterProps {
  label: string;
  last: number;
  readAt: string;
  zone: string;
  value: string;
  set(value: string): void;
  gap: { because: string; note: string };
  setGap(gap: { because: string; note: string }): void;
}

/** A meter held against its last reading: what it went on by is accounted for. */
export function MeterOut({ label, last, readAt, zone, value, set, gap, setGap }: MeterProps) {
  const more = value !== '' && Number(value) > last;
  return (
    <div class="meter">
      <FigureInput label={`${label} shows, h`} {...{ value, set, required: true, min: 0, step: '0.1' }} />
      <p class="small">
        Last read {last.toFixed(1)} h, {momentIn(zone, readAt)}
      </p>
      {value !== '' && Number(value) < last && <p class="wrong">That is less than it was. Read it again.</p>}
      {more && (
        <div class="row">
          <Choice
            label={`${(Number(value) - last).toFixed(1)} h not accounted for: what are they?`}
            value={gap.because}
            set={(because) => setGap({ ...gap, because })}
            of={GAP_WORDS}
          />
          <TextInput
            label="In a few words"
            {...{ value: gap.note, required: true, max: 500 }}
            set={(note) => setGap({ ...gap, note })}
          />
        </div>
      )}
    </div>
  );
}
