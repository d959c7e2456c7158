import { useState } from 'preact/hooks';
import { across, dayOf, monthOf, monthsOf, type Scale } from '../maintenance/scale.js';
import { useWidth } from '../timeline/use-width.js';
import { Dot, Shape } from './lapse-dot.js';
import type { Lapse, Lapses } from './types.js';

const ROW = 24;
const HEAD = 54;
/** Room for the date the picture begins on, pixels. */
const FIRST_WORD = 50;
const AT_FIRST = 30;
const MORE = 60;

/**
 * People down, time across. A lapse of law is a disc, one of the club a diamond; its letter tells the requirement, and a
 * number beside a ring counts the booked flights it costs. Above, all lapses by week. The table below says the same in words.
 */
export function LapsePicture({ found, lapses }: { found: Lapses; lapses: Lapse[] }) {
  const { ref, width } = useWidth<HTMLDivElement>();
  const [most, setMost] = useState(AT_FIRST);
  const scale: Scale = { from: found.from, days: daysOf(found) };
  const people = [...new Set(lapses.map(({ memberId }) => memberId))];
  const shown = people.slice(0, most);
  const names = width < 600 ? 110 : 190;
  const x = (date: string): number => names + 10 + (across(scale, date) / 100) * (width - names - 26);
  const letters = lettersOf(lapses);
  const letterOf = new Map(letters.map(({ rule, letter }) => [rule, letter]));
  const height = HEAD + shown.length * ROW + 6;
  return (
    <div ref={ref} class="lapse-picture">
      <ul class="legend" aria-label="Requirements in the picture">
        {letters.map(({ rule, title, weight, letter }) => (
          <li key={rule}>
            <svg width="20" height="20" aria-hidden="true">
              <Shape weight={weight} cx={10} cy={10} letter={letter} />
            </svg>{' '}
            {title}
          </li>
        ))}
      </ul>
      <p class="hint">
        Disc: law; diamond: club rule. A ring with a number: booked flights lost. Grey columns: lapses by
        week.
      </p>
      {width > 0 && (
        <svg
          width={width}
          height={height}
          role="img"
          aria-label={`Lapses of ${people.length} members from ${dayOf(found.from)} to ${dayOf(found.through)}; the table below says the same`}
        >
          <Weeks lapses={lapses} days={scale.days} x0={x(found.from)} x1={x(found.through)} />
          <text x={x(found.from)} y={HEAD - 6} class="tick-word edge">
            {dayOf(found.from)}
          </text>
          {monthsOf(scale).map((first) => (
            <g key={first}>
              <line class="tick-line" x1={x(first)} x2={x(first)} y1={HEAD - 8} y2={height} />
              {x(first) - x(found.from) > FIRST_WORD && (
                <text x={x(first) + 3} y={HEAD - 6} class="tick-word">
                  {monthOf(first)}
                </text>
              )}
            </g>
          ))}
          {shown.map((memberId, row) => (
            <Person
              key={memberId}
              of={lapses.filter((one) => one.memberId === memberId)}
              y={HEAD + row * ROW + ROW / 2}
              names={names}
              x={x}
              from={found.from}
              striped={row % 2 === 0}
              width={width}
              letterOf={letterOf}
            />
          ))}
        </svg>
      )}
      {people.length > shown.length && (
        <button type="button" class="quiet" onClick={() => setMost(most + MORE)}>
          Draw {Math.min(MORE, people.length - shown.length)} more of {people.length} members
        </button>
      )}
    </div>
  );
}

const daysOf = ({ from, through }: Lapses): number =>
  Math.round((Date.parse(through) - Date.parse(from)) / 86_400_000);

function Weeks({ lapses, days, x0, x1 }: { lapses: Lapse[]; days: number; x0: number; x1: number }) {
  const counts: number[] = Array<number>(Math.ceil((days + 1) / 7)).fill(0);
  for (const { inDays } of lapses) counts[Math.floor(inDays / 7)]! += 1;
  const top = Math.max(...counts);
  const wide = ((x1 - x0) / Math.max(1, days)) * 7;
  return (
    <>
      {counts.map((count, week) => (
        <rect
          key={week}
          class="week"
          x={x0 + week * wide + 1}
          width={Math.max(1, Math.min(wide - 2, x1 + 8 - x0 - week * wide))}
          y={HEAD - 20 - (count / top) * 30}
          height={(count / top) * 30}
        >
          <title>{count}</title>
        </rect>
      ))}
    </>
  );
}

function Person({
  of,
  y,
  names,
  x,
  from,
  striped,
  width,
  letterOf,
}: {
  of: Lapse[];
  y: number;
  names: number;
  x: (date: string) => number;
  from: string;
  striped: boolean;
  width: number;
  letterOf: Map<string, string>;
}) {
  const { memberName } = of[0]!;
  const most = Math.floor(names / 8.2);
  const last = of.at(-1)!;
  return (
    <g>
      {striped && <rect class="stripe" x={0} width={width} y={y - ROW / 2} height={ROW} />}
      <text x={4} y={y + 4} class="person">
        {memberName.length > most ? `${memberName.slice(0, most - 1)}…` : memberName}
      </text>
      <line class="good" x1={x(from)} x2={x(last.on)} y1={y} y2={y} />
      {of.map((one) => (
        <Dot
          key={`${one.rule}${one.on}${one.aircraft?.join() ?? ''}`}
          of={one}
          cx={x(one.on)}
          cy={y}
          letter={letterOf.get(one.rule)!}
        />
      ))}
    </g>
  );
}

/** A letter for each requirement, in the order of the alphabet of their titles. */
function lettersOf(
  lapses: Lapse[],
): { rule: string; title: string; weight: Lapse['weight']; letter: string }[] {
  const rules = new Map(lapses.map(({ rule, title, weight }) => [rule, { rule, title, weight }]));
  return [...rules.values()]
    .sort((a, b) => a.title.localeCompare(b.title))
    .map((one, index) => ({ ...one, letter: index < 26 ? String.fromCharCode(65 + index) : '·' }));
}
