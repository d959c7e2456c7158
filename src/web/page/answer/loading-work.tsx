import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Decision } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { EnvelopePicture } from './envelope-picture.js';
import './loading-work.css';
import { STEP_WORDS, WHEN_WORDS, type Work, type WorkedRunway } from './loading-types.js';

/** The flight's loading and runways, worked out when somebody opens it. */
export function LoadingWork({ decision }: { decision: Decision }) {
  const [work, setWork] = useState<Work | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const open = () =>
    attempt(setProblem, async () => setWork(await call<Work>('GET', `/decisions/${decision.id}/loading`)));
  return (
    <details class="loading" onToggle={(event) => event.currentTarget.open && work === null && void open()}>
      <summary>Loading and runways of {decision.aircraft.registration}</summary>
      <Refusal problem={problem} />
      {work === null && problem === null && <p class="hint">Working it out…</p>}
      {work && (
        <>
          {work.points.length > 0 && <Loading work={work} />}
          {work.runways.map((runway) => (
            <Runway
              key={`${runway.does} ${runway.airfield} ${runway.weightLb}`}
              of={runway}
              factor={work.marginFactor}
            />
          ))}
          {work.unknown.map((because) => (
            <p key={because} class="hint">
              Not worked out: {because}.
            </p>
          ))}
          <p class="caution">{work.caution}</p>
        </>
      )}
    </details>
  );
}

const whole = (value: number): string => value.toFixed(0);

function Loading({ work }: { work: Work }) {
  const { lines, points, envelopes, maxTakeoffLb } = work;
  return (
    <div class="two">
      <div class="scroll" tabIndex={0} role="group" aria-label="Loading sheet">
        <table>
          <caption>At take-off{maxTakeoffLb !== null && `, ${whole(maxTakeoffLb)} lb at most`}</caption>
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col">lb</th>
              <th scope="col">arm, in</th>
              <th scope="col">moment, lb-in</th>
            </tr>
          </thead>
          <tbody>
            {lines.map((line) => (
              <tr key={line.what}>
                <th scope="row">{line.what}</th>
                <td>{line.weightLb.toFixed(1)}</td>
                <td>{line.armIn.toFixed(1)}</td>
                <td>{whole(line.momentLbIn)}</td>
              </tr>
            ))}
          </tbody>
          <tfoot>
            {points.map((point) => (
              <tr key={point.when}>
                <th scope="row">{WHEN_WORDS[point.when]}</th>
                <td>{point.weightLb.toFixed(1)}</td>
                <td>{point.armIn.toFixed(2)}</td>
                <td>
                  {point.categories.length === 0 ? (
                    <strong class="outside">outside the limits</strong>
                  ) : (
                    `within ${point.categories.join(', ')}`
                  )}
                </td>
              </tr>
            ))}
          </tfoot>
        </table>
      </div>
      <EnvelopePicture envelopes={envelopes} points={points} />
    </div>
  );
}

function Runway({ of, factor }: { of: WorkedRunway; factor: number | null }) {
  const fits = of.neededFt <= of.lengthFt;
  const does = of.does === 'takeoff' ? 'Take-off' : 'Landing';
  const wind = Math.abs(of.headwindKt).toFixed(0);
  return (
    <div class="runway">
      <h4>
        {does} at {of.airfield}, runway {of.runway}: {whole(of.neededFt)} ft of {whole(of.lengthFt)} ft{' '}
        {fits ? '' : <strong class="outside">too short</strong>}
      </h4>
      <p>
        At {whole(of.weightLb)} lb, pressure altitude {whole(of.pressureAltitudeFt)} ft, {of.oatC.toFixed(0)}{' '}
        °C, density altitude {whole(of.densityAltitudeFt)} ft, {wind} kt{' '}
        {of.headwindKt < 0 ? 'from behind' : 'from ahead'}.
      </p>
      <ol>
        {of.steps.map((step) => (
          <li key={step.step}>
            {STEP_WORDS[step.step]}
            {step.percent !== null && ` ${step.percent > 0 ? '+' : ''}${step.percent.toFixed(0)} %`}:{' '}
            {whole(step.groundRollFt)} ft ground roll, {whole(step.over50Ft)} ft over 50 ft
          </li>
        ))}
        {factor !== null && factor !== 1 && (
          <li>
            The club’s margin × {factor}: {whole(of.neededFt)} ft
          </li>
        )}
      </ol>
      {of.ifWetFt !== null && <p>On a wet runway {whole(of.ifWetFt)} ft over 50 ft, before the margin.</p>}
      {of.halfWay && (
        <p>
          By {whole(of.halfWay.atFt)} ft, half the runway, {Math.ceil(of.halfWay.leastKt)} kt, or stop; about{' '}
          {Math.floor(of.halfWay.expectedKt)} kt are to be expected there.
        </p>
      )}
    </div>
  );
}
