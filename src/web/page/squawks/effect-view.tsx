import { Said } from '../parts/said.js';
import { momentIn } from '../parts/time.js';
import type { Effect, Effects } from './types.js';
import { ANSWER_WORDS, VERDICT_MARKS, VERDICT_WORDS } from './words.js';

/** What a step would do: to each kind of flight, and to the flights booked. */
export function EffectView({ effects, zone }: { effects: Effects; zone: string }) {
  const { bookings, bookingsJudged } = effects;
  return (
    <section class="effects" aria-label="What it does">
      <h5>Because of this squawk, flights would be</h5>
      <ul>
        {effects.kinds.map((one) => (
          <li key={one.kind} data-kind={one.kind} data-verdict={one.then?.verdict ?? ''}>
            <strong>{one.title}</strong>:{' '}
            {one.then ? <Verdict of={one.then} zone={zone} /> : <span>not tried. {one.because}</span>}
            {one.now && one.then && one.now.verdict !== one.then.verdict && (
              <small> (now: {VERDICT_WORDS[one.now.verdict].toLowerCase()})</small>
            )}
          </li>
        ))}
      </ul>
      <h5>Flights booked</h5>
      <p>
        {bookingsJudged === 0
          ? 'None is booked on this aircraft.'
          : `${bookings.length} of ${bookingsJudged} would be answered otherwise.`}
      </p>
      {bookings.length > 0 && (
        <ul aria-label="Bookings answered otherwise">
          {bookings.map((one) => (
            <li key={one.bookingId}>
              {momentIn(zone, one.departs)}, {one.memberName}: {ANSWER_WORDS[one.before]} becomes{' '}
              <strong>{ANSWER_WORDS[one.after]}</strong>.{' '}
              {one.because.map(({ rule, says }) => (
                <Said key={rule} text={says} zone={zone} />
              ))}
            </li>
          ))}
        </ul>
      )}
      <p class="caution">{effects.caution}</p>
    </section>
  );
}

function Verdict({ of, zone }: { of: Effect; zone: string }) {
  return (
    <>
      <span class={`verdict ${of.verdict}`}>
        <span aria-hidden="true">{VERDICT_MARKS[of.verdict]}</span> {VERDICT_WORDS[of.verdict]}
      </span>{' '}
      {[...of.says.map(({ says }) => says), ...of.conditions].map((text) => (
        <span key={text}>
          <Said text={text} zone={zone} />{' '}
        </span>
      ))}
    </>
  );
}
