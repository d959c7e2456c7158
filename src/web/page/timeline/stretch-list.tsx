import type { Answer } from '../api/types.js';
import { ANSWER_WORD, listed } from '../../../rules/explain/words.js';
import { LOOKS } from '../answer/words.js';
import { clockIn, dayIn } from '../parts/time.js';
import { instantOf, type Day } from './days.js';
import type { Part, Stretch } from './stretches.js';

interface Props {
  stretches: readonly Stretch[];
  zone: string;
}

/** The timeline in words. */
export function StretchList({ stretches, zone }: Props) {
  return (
    <ol class="stretches">
      {stretches.map((stretch) => (
        <li key={stretch.first.date}>
          <strong>{daysSay(stretch, zone)}</strong>
          <ul>
            {answersIn(stretch).map((answer) => (
              <li key={answer} class={LOOKS[answer].tone}>
                <span class="shape" aria-hidden="true">
                  {LOOKS[answer].shape}
                </span>{' '}
                {ANSWER_WORD[answer]}: {timesSay(stretch, answer, zone)}
                <Because titles={stretch.because.get(answer) ?? []} />
              </li>
            ))}
          </ul>
        </li>
      ))}
    </ol>
  );
}

function Because({ titles }: { titles: string[] }) {
  if (titles.length === 0) return null;
  const more = titles.length - 3;
  const told = more > 0 ? [...titles.slice(0, 3), `${more} more`] : titles;
  return <span class="because"> In the way: {listed(told)}.</span>;
}

const ORDER = Object.keys(LOOKS) as Answer[];
const answersIn = ({ onFirst }: Stretch): Answer[] =>
  ORDER.filter((answer) => onFirst.some((part) => part.answer === answer));

/** 'Wed 11 Mar', 'Wed 11 Mar to Tue 24 Mar, every day'. */
function daysSay({ first, last, days }: Stretch, zone: string): string {
  const name = (day: Day): string => dayIn(zone, instantOf(day.from));
  return days === 1 ? name(first) : `${name(first)} to ${name(last)}, every day`;
}

/** 'all day', 'the rest of the day', '07:38 to 18:20 (at the end 07:19 to 18:34)'. */
function timesSay(stretch: Stretch, answer: Answer, zone: string): string {
  const answers = answersIn(stretch);
  if (answers.length === 1) return allDay(stretch.onFirst[0]!, stretch, zone);
  const of = (parts: readonly Part[]): Part[] => parts.filter((part) => part.answer === answer);
  if (answer === answers.at(-1) && of(stretch.onFirst).length > 1) return 'the rest of the day.';
  const say = (parts: readonly Part[], day: Day): string =>
    listed(of(parts).map((part) => partSays(part, day, zone)));
  const [first, last] = [say(stretch.onFirst, stretch.first), say(stretch.onLast, stretch.last)];
  if (first === last) return `${first}.`;
  return drift(stretch) <= A_LITTLE
    ? `${first}, give or take a few minutes.`
    : `${first}; by the last day ${last}.`;
}

/** Not worth two times. */
const A_LITTLE = 6 * 60_000;

/** The most by which an edge moves from the first day to the last, milliseconds. */
function drift({ first, last, onFirst, onLast }: Stretch): number {
  const moved = onFirst
    .slice(1)
    .map(({ from }, index) => from - first.from - (onLast[index + 1]!.from - last.from));
  return Math.max(0, ...moved.map(Math.abs));
}

function allDay(part: Part, { first, days }: Stretch, zone: string): string {
  if (days > 1 || (part.from === first.from && part.to === first.to)) return 'all day.';
  return `${partSays(part, first, zone)}.`;
}

function partSays({ from, to }: Part, day: Day, zone: string): string {
  const clock = (time: number): string => clockIn(zone, instantOf(time));
  if (from === day.from) return `until ${clock(to)}`;
  return to === day.to ? `from ${clock(from)}` : `${clock(from)} to ${clock(to)}`;
}
