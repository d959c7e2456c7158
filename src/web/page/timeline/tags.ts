/** Where the answers' words stand in the drawing: once for each day while there is room, else once for each stretch of days. */
import type { Answer } from '../api/types.js';
import { dayAt, partOf, type Day } from './days.js';
import { byDay, stretchesOf } from './stretches.js';
import type { Step } from './types.js';

/** A word in the middle of an area: days from `left` to `right`, parts of the day from `top` to `bottom`. */
export interface Tag {
  answer: Answer;
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** So many days get a word each. */
const EACH_DAY = 14;

export function tagsOf(days: readonly Day[], steps: readonly Step[]): Tag[] {
  if (days.length <= EACH_DAY) {
    return byDay(days, steps).flatMap(({ day, parts }) => {
      const left = dayAt(days, day.from);
      return parts.map(({ answer, from, to }) => ({
        ...{ answer, left, right: left + 1, top: partOf(day, from), bottom: partOf(day, to) },
      }));
    });
  }
  const tags: Tag[] = [];
  for (const { first, last, onFirst, onLast } of stretchesOf(days, steps)) {
    const [left, right] = [dayAt(days, first.from), dayAt(days, last.from) + 1];
    onLast.forEach(({ answer, from, to }, index) => {
      const { from: began, to: ended } = onFirst[index]!;
      // What all its days have of the part; the first part may begin with the span, in the middle of a day.
      const top = index === 0 ? partOf(last, from) : Math.max(partOf(first, began), partOf(last, from));
      const bottom = Math.min(partOf(first, ended), partOf(last, to));
      if (!widened(tags, { answer, left, right, top, bottom }))
        tags.push({ answer, left, right, top, bottom });
    });
  }
  return tags;
}

/** So much of the day two areas must share for one word to stand for both. */
const SHARED = 0.15;

/** Lets the word of the area to the left stand for this one too, where the two are one band. */
function widened(tags: readonly Tag[], { answer, left, right, top, bottom }: Tag): boolean {
  const band = tags.find(
    (tag) =>
      tag.answer === answer &&
      tag.right === left &&
      Math.min(tag.bottom, bottom) - Math.max(tag.top, top) >= SHARED,
  );
  if (!band) return false;
  Object.assign(band, { right, top: Math.max(band.top, top), bottom: Math.min(band.bottom, bottom) });
  return true;
}
