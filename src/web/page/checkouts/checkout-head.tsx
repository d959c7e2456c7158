import { Day } from '../parts/said.js';
import { dayIn } from '../parts/time.js';
import type { Progress } from './types.js';
import { left, STATE, stands } from './words.js';

/** A checkout's name and state, what is left of it, and what stands of it. */
export function CheckoutHead({ of, zone }: { of: Progress; zone: string }) {
  const { signOff, difference, quiz } = of;
  // What stands is signed anew from the beginning: that is of interest once it ends, or somebody has begun.
  const again = stands(of);
  const begun = of.state === 'ending' || of.items.some(({ mark }) => mark !== null);
  const lacks = again && !begun ? [] : left(of);
  const told = of.title.toLowerCase().includes(of.subject.toLowerCase());
  const name = told ? of.title : `${of.title} (${of.subject})`;
  return (
    <>
      <h4>
        {difference ? `${difference.registration}: ${difference.title}` : name}{' '}
        <span class={`state ${of.state}`}>{STATE[of.state]}</span>
      </h4>
      {difference && (
        <p class="hint">
          Changed on <Day date={difference.since} />; to be shown before it is flown without an instructor.
        </p>
      )}
      {signOff && (
        <p>
          Signed by {signOff.signedBy.name} on <Day date={signOff.signedOn} />
          {signOff.likeModel && ', for a like model'}
          {signOff.expiresOn && (
            <>
              , {of.state === 'ended' ? 'ended after' : 'good through'} <Day date={signOff.expiresOn} />
            </>
          )}
          .
        </p>
      )}
      {lacks.length > 0 && (
        <p class="lacks">
          {again ? 'Left for the next one' : 'Left'}: {lacks.join(', ')}.
        </p>
      )}
      {quiz && quiz.state === 'wait' && quiz.notBefore && (
        <p class="hint">
          Quiz not passed ({quiz.bestPercent ?? 0} of 100 right); again from {dayIn(zone, quiz.notBefore)}.
        </p>
      )}
      {quiz?.state === 'passed' && quiz.passedOn && (
        <p class="hint">
          Quiz passed on <Day date={quiz.passedOn} />, {quiz.bestPercent} of 100 right.
        </p>
      )}
    </>
  );
}
