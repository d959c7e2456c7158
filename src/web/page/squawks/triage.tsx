import { useEffect, useState } from 'preact/hooks';
import { ApiProblem, call } from '../api/client.js';
import { Closing } from './closing.js';
import { EffectView } from './effect-view.js';
import { GuideForm, type Answers } from './guide-form.js';
import type { Effects, Guide, Squawk } from './types.js';
import { today } from '../parts/time.js';
import { isOpen } from './words.js';
import { Refusal } from '../parts/refusal.js';

const STEPS = [
  { step: 'ground', words: 'Ground the aircraft' },
  { step: 'defer', words: 'Defer it' },
  { step: 'close', words: 'Close or reopen it' },
] as const;
type Step = (typeof STEPS)[number]['step'];

interface Props {
  squawk: Squawk;
  others: Squawk[];
  zone: string;
  changed(): void;
}

/** What the coordinator decides: first what it would do, then the deed. */
export function Triage({ squawk, others, zone, changed }: Props) {
  const [step, setStep] = useState<Step | null>(isOpen(squawk.state) ? null : 'close');
  const [guide, setGuide] = useState<Guide | null>(null);
  const [answers, setAnswers] = useState<Answers>({});
  const [deadlineOn, setDeadlineOn] = useState('');
  const [effects, setEffects] = useState<Effects | null>(null);
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const at = `/aircraft/${squawk.aircraftId}/squawks/${squawk.id}`;

  const run = async (work: () => Promise<void>) => {
    setBusy(true);
    setProblem(null);
    try {
      await work();
    } catch (error) {
      if (!(error instanceof ApiProblem)) throw error;
      setProblem(error.problem.detail);
    } finally {
      setBusy(false);
    }
  };
  // A preview is of what stands in the form: whatever is changed there needs another.
  useEffect(() => setEffects(null), [step, answers, deadlineOn]);
  useEffect(() => {
    if (step !== 'defer' || guide) return;
    void run(async () => {
      const found = await call<Guide>('GET', `${at}/deferral-guide`);
      setGuide(found);
      setDeadlineOn(found.deadlineOn ?? '');
    });
  }, [step]);

  const deferral = { deferredOn: today(zone), deadlineOn: deadlineOn || null, ...answers };
  const preview = () =>
    run(async () => {
      const body = step === 'defer' ? { step, deferral } : { step };
      setEffects(await call<Effects>('POST', `${at}/effects`, body));
    });
  const confirm = () =>
    run(async () => {
      await call('POST', `${at}/${step}`, step === 'defer' ? deferral : undefined);
      changed();
    });
  const barred =
    step === 'defer' && (guide === null || guide.outcome === 'no-deferral' || stopped(guide, answers));
  const open = isOpen(squawk.state);
  return (
    <div class="triage">
      {open && (
        <fieldset>
          <legend>What is decided</legend>
          {STEPS.filter((one) => !already(squawk, one.step)).map((one) => (
            <label key={one.step} class="tick">
              <input
                type="radio"
                name={`step-${squawk.id}`}
                checked={step === one.step}
                onChange={() => setStep(one.step)}
              />
              {one.words}
            </label>
          ))}
        </fieldset>
      )}
      {step === 'defer' && guide && (
        <GuideForm
          guide={guide}
          answers={answers}
          deadlineOn={deadlineOn}
          answer={(field, value) => setAnswers({ ...answers, [field]: value })}
          setDeadline={setDeadlineOn}
        />
      )}
      {step === 'close' && (
        <Closing squawk={squawk} others={others} at={at} busy={busy} run={run} changed={changed} />
      )}
      <Refusal problem={problem} />
      {(step === 'ground' || step === 'defer') && !barred && (
        <div class="acts">
          <button class="second" disabled={busy} onClick={() => void preview()}>
            See what it does
          </button>
          <button class="main" disabled={busy || effects === null} onClick={() => void confirm()}>
            {step === 'ground' ? 'Ground it' : 'Defer it'}
          </button>
          {effects === null && <span class="hint">Look at what it does first.</span>}
        </div>
      )}
      <div role="status">{effects && <EffectView effects={effects} zone={zone} />}</div>
    </div>
  );
}

const already = ({ state }: Squawk, step: Step): boolean =>
  (step === 'ground' && state === 'grounding') || (step === 'defer' && state === 'deferred');

/** A person's answer here rules the deferral out just as one on record does. */
const stopped = (guide: Guide, answers: Answers): boolean =>
  guide.steps.some(({ field }) => field?.startsWith('requiredBy') && answers[field] === true);
