import { createHash } from 'node:crypto';

/**
 * A stream of numbers that depends on its seed alone: splitmix32 over a SHA-256 of the name. Each part of the demo club
 * draws from a stream of its own name, so that a change in one part does not shift all the others.
 */
export class Draw {
  private state: number;

  constructor(seed: string) {
    this.state = createHash('sha256').update(seed).digest().readUInt32BE(0);
  }

  /** Uniform in [0, 1). */
  next(): number {
    this.state = (this.state + 0x9e3779b9) | 0;
    let mixed = this.state ^ (this.state >>> 16);
    mixed = Math.imul(mixed, 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 4_294_967_296;
  }

  /** A whole number from `least` to `most`, both included. */
  int(least: number, most: number): number {
    return least + Math.floor(this.next() * (most - least + 1));
  }

  chance(probability: number): boolean {
    return this.next() < probability;
  }

  /** One of the list. Throws RangeError on an empty one. */
  pick<T>(list: readonly T[]): T {
    if (list.length === 0) throw new RangeError('nothing to pick from');
    return list[Math.floor(this.next() * list.length)]!;
  }

  /** One of the list, likelier the heavier it is; undefined when nothing has weight. */
  weighted<T>(list: readonly T[], weight: (one: T) => number): T | undefined {
    const total = list.reduce((sum, one) => sum + weight(one), 0);
    let left = this.next() * total;
    return list.find((one) => {
      const own = weight(one);
      left -= own;
      return own > 0 && left < 0;
    });
  }

  /** A shuffled copy. */
  shuffle<T>(list: readonly T[]): T[] {
    const out = [...list];
    for (let index = out.length - 1; index > 0; index -= 1) {
      const other = this.int(0, index);
      [out[index], out[other]] = [out[other]!, out[index]!];
    }
    return out;
  }
}
