import type { Answer } from '../api/types.js';
import { ANSWER_WORD } from '../../../rules/explain/words.js';
import { LOOKS } from '../answer/words.js';
import { at, cut, type Day, type Piece } from './days.js';
import { fillOf } from './patterns.js';
import { tagsOf, type Tag } from './tags.js';
import { fitting, ticksOf } from './ticks.js';
import type { Step } from './types.js';

const HOURS = [6, 12, 18];
/** Room for the hours on the left and the dates on top, pixels. */
export const GUTTER = 26;
export const TOP = 18;

interface Props {
  days: readonly Day[];
  steps: readonly Step[];
  width: number;
  height: number;
  chosen: Step | null;
}

/**
 * The span as a carpet: a column for each day, midnight at the top and at the bottom, departures filled with the pattern of
 * their answer. What happens every day, such as nightfall, is a band across it.
 */
export function Carpet({ days, steps, width, height, chosen }: Props) {
  const column = (width - GUTTER) / days.length;
  const tall = height - TOP;
  const x = (day: number): number => GUTTER + day * column;
  const y = (part: number): number => TOP + part * tall;
  const box = ({ day, top, bottom }: Piece): string =>
    `M${x(day).toFixed(2)} ${y(top).toFixed(2)}H${x(day + 1).toFixed(2)}V${y(bottom).toFixed(2)}H${x(day).toFixed(2)}Z`;
  const pieces = steps.map((step) => ({ step, pieces: cut(days, at(step.from), at(step.to)) }));
  const shapes = new Map<Answer, string[]>();
  for (const { step, pieces: of } of pieces) {
    shapes.set(step.answer, [...(shapes.get(step.answer) ?? []), ...of.map(box)]);
  }
  const ticks = ticksOf(days);
  const labels = fitting(ticks, column, days.length);
  const tags = tagsOf(days, steps);
  return (
    <svg width={width} height={height} class="carpet" aria-hidden="true">
      {[...shapes].map(([answer, path]) => (
        <path key={answer} d={path.join('')} fill={fillOf(answer)} shape-rendering="crispEdges" />
      ))}
      {HOURS.map((hour) => (
        <g key={hour}>
          <line x1={GUTTER} x2={width} y1={y(hour / 24)} y2={y(hour / 24)} class="hour" />
          <text x={GUTTER - 5} y={y(hour / 24) + 4} class="hour-label">
            {String(hour).padStart(2, '0')}
          </text>
        </g>
      ))}
      {ticks.map(({ day, strong }, index) => (
        <g key={day}>
          <line
            x1={x(day)}
            x2={x(day)}
            y1={strong ? 4 : TOP}
            y2={height}
            class={strong ? 'tick strong' : 'tick'}
          />
          <text x={x(day) + 4} y={12}>
            {labels[index]}
          </text>
        </g>
      ))}
      <rect x={GUTTER} y={TOP} width={width - GUTTER} height={tall} class="border" />
      {tags.map((tag) => (
        <Word key={`${tag.answer} ${tag.left} ${tag.top}`} tag={tag} />
      ))}
      {chosen && <path d={cut(days, at(chosen.from), at(chosen.to)).map(box).join('')} class="chosen" />}
    </svg>
  );

  /** The answer's shape, and its word where there is room. */
  function Word({ tag: { answer, left, right, top, bottom } }: { tag: Tag }) {
    const room = (right - left) * column;
    if ((bottom - top) * tall < 20 || room < 24) return null;
    const word = ANSWER_WORD[answer];
    const text = room > 30 + word.length * 8 ? `${LOOKS[answer].shape} ${word}` : LOOKS[answer].shape;
    const wide = text.length === 1 ? 20 : 14 + text.length * 7;
    const [cx, cy] = [x((left + right) / 2), y((top + bottom) / 2)];
    return (
      <g class={`tag ${LOOKS[answer].tone}`}>
        <rect x={cx - wide / 2} y={cy - 9} width={wide} height={18} rx={4} />
        <text x={cx} y={cy + 4}>
          {text}
        </text>
      </g>
    );
  }
}
