import { useMemo, useState } from 'preact/hooks';
import { LOOKS } from '../answer/words.js';
import { momentIn } from '../parts/time.js';
import { Carpet, GUTTER, TOP } from './carpet.js';
import { at, dayAt } from './days.js';
import { departureIn, firstIn, GOOD, type Frame } from './slots.js';
import { StepDetail } from './step-detail.js';
import { stepSays } from './step-words.js';
import { StretchList } from './stretch-list.js';
import { stretchesOf } from './stretches.js';
import type { AircraftTimeline, Slot } from './types.js';
import { useWidth } from './use-width.js';

interface Props {
  timeline: AircraftTimeline;
  frame: Frame;
  zone: string;
  take(slot: Slot): void;
}

/** A pointed-at departure falls on a quarter of an hour. */
const QUARTER = 15 * 60_000;
const DAY = 86_400_000;

/** One aircraft: the drawing, which is walked with the arrow keys, the step pointed at, and the same in words. */
export function Lane({ timeline, frame, zone, take }: Props) {
  const { aircraft, steps, horizonNote } = timeline;
  const { days } = frame;
  const { ref, width } = useWidth<HTMLDivElement>();
  const [cursor, setCursor] = useState<{ index: number; wish: number } | null>(null);
  const stretches = useMemo(() => stretchesOf(days, steps), [days, steps]);
  const height = TOP + (days.length <= 7 ? 126 : 96);
  const first = firstIn(steps, GOOD, frame);
  const dual = first ? null : firstIn(steps, ['dual-only'], frame);
  const step = cursor === null ? null : steps[cursor.index]!;

  const indexAt = (time: number): number => {
    const found = steps.findIndex(({ to }) => at(to) > time);
    return found === -1 ? steps.length - 1 : found;
  };
  const go = (index: number) => setCursor({ index: Math.min(Math.max(index, 0), steps.length - 1), wish: 0 });
  const byDays = (count: number) => {
    const from = step ? at(step.from) : days[0]!.from;
    go(indexAt(Math.max(from, at(steps[0]!.from)) + count * DAY));
  };
  const point = (event: PointerEvent) => {
    const { left, top } = (event.currentTarget as HTMLElement).getBoundingClientRect();
    const across = (event.clientX - left - GUTTER) / (width - GUTTER);
    const down = Math.min(1, Math.max(0, (event.clientY - top - TOP) / (height - TOP)));
    const day = days[Math.min(Math.max(Math.floor(across * days.length), 0), days.length - 1)]!;
    const time = day.from + down * (day.to - day.from);
    setCursor({ index: indexAt(time), wish: Math.floor(time / QUARTER) * QUARTER });
  };
  const keys: Record<string, () => void> = {
    ArrowRight: () => go(cursor === null ? 0 : cursor.index + 1),
    ArrowDown: () => go(cursor === null ? 0 : cursor.index + 1),
    ArrowLeft: () => go((cursor?.index ?? 0) - 1),
    ArrowUp: () => go((cursor?.index ?? 0) - 1),
    PageDown: () => byDays(1),
    PageUp: () => byDays(-1),
    Home: () => go(0),
    End: () => go(steps.length - 1),
  };

  return (
    <li class="lane" data-registration={aircraft.registration}>
      <div class="lane-head">
        <h3>
          <span class="registration">{aircraft.registration}</span>{' '}
          <span class="model">{aircraft.makeModel}</span>
        </h3>
        <FirstOf slot={first ?? dual} zone={zone} take={take} name={aircraft.registration} />
      </div>
      <div
        ref={ref}
        class="field"
        role="slider"
        tabIndex={0}
        aria-label={`${aircraft.registration}, departures through the span`}
        aria-valuemin={1}
        aria-valuemax={steps.length}
        aria-valuenow={(cursor?.index ?? 0) + 1}
        aria-valuetext={stepSays(step ?? steps[0]!, zone)}
        onPointerDown={point}
        onFocus={() => cursor ?? go(indexAt(frame.now))}
        onKeyDown={(event) => {
          const key = keys[event.key];
          if (!key) return;
          event.preventDefault();
          key();
        }}
      >
        {width > 0 && <Carpet {...{ days, steps, width, height, chosen: step }} />}
      </div>
      {step && cursor && (
        <StepDetail
          step={step}
          slot={step.answer === 'no' ? null : departureIn(step, frame, cursor.wish)}
          zone={zone}
          take={take}
        />
      )}
      {horizonNote && <p class="hint">{horizonNote}</p>}
      <details class="in-words">
        <summary>In words, day by day</summary>
        <StretchList stretches={stretches} zone={zone} />
      </details>
    </li>
  );
}

function FirstOf({
  slot,
  zone,
  take,
  name,
}: {
  slot: Slot | null;
  zone: string;
  take(slot: Slot): void;
  name: string;
}) {
  if (!slot) return <span class="none">Not in these days</span>;
  const { shape, tone } = LOOKS[slot.answer];
  const words = `${slot.answer === 'dual-only' ? 'with an instructor from' : 'from'} ${momentIn(zone, slot.departs)}`;
  return (
    <button
      class="quiet"
      aria-label={`${name} ${words}: put it into the flight above`}
      onClick={() => take(slot)}
    >
      <span class={`shape ${tone}`} aria-hidden="true">
        {shape}
      </span>{' '}
      {words}
    </button>
  );
}

/** Lanes in the order in which they open: those that never do come last. */
export function opening(timeline: AircraftTimeline, frame: Frame): number {
  const first = firstIn(timeline.steps, GOOD, frame);
  if (first) return at(first.departs);
  const dual = firstIn(timeline.steps, ['dual-only'], frame);
  return dual ? Number.MAX_SAFE_INTEGER / 2 + dayAt(frame.days, at(dual.departs)) : Number.MAX_SAFE_INTEGER;
}
