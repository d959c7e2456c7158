import type { LocalDate } from '../../rules/index.js';

/** Who and what is taken when: people and aircraft by id, minutes of a day. */
export class Roster {
  private readonly taken = new Map<string, [number, number][]>();

  /** Free from minute `from` to `to`? Those who meet at the minute do not collide. */
  isFree(id: string, date: LocalDate, from: number, to: number): boolean {
    return (this.taken.get(`${id}|${date}`) ?? []).every(([start, end]) => end <= from || start >= to);
  }

  take(id: string, date: LocalDate, from: number, to: number): void {
    const key = `${id}|${date}`;
    const list = this.taken.get(key) ?? [];
    list.push([from, to]);
    this.taken.set(key, list);
  }

  /** Anything at all on that day? */
  isIdle(id: string, date: LocalDate): boolean {
    return !this.taken.has(`${id}|${date}`);
  }
}
