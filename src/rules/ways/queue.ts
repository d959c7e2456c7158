/** A priority queue: the least by `before` comes out first (a binary heap). */
export class Queue<T> {
  private readonly heap: T[] = [];

  constructor(private readonly before: (a: T, b: T) => boolean) {}

  get size(): number {
    return this.heap.length;
  }

  push(item: T): void {
    const { heap, before } = this;
    let at = heap.push(item) - 1;
    while (at > 0) {
      const up = (at - 1) >> 1;
      if (!before(heap[at]!, heap[up]!)) break;
      [heap[at], heap[up]] = [heap[up]!, heap[at]!];
      at = up;
    }
  }

  pop(): T | undefined {
    const { heap, before } = this;
    const top = heap[0];
    const last = heap.pop();
    if (heap.length > 0 && last !== undefined) {
      heap[0] = last;
      for (let at = 0; ;) {
        let least = at;
        for (const child of [2 * at + 1, 2 * at + 2]) {
          if (child < heap.length && before(heap[child]!, heap[least]!)) least = child;
        }
        if (least === at) break;
        [heap[at], heap[least]] = [heap[least]!, heap[at]!];
        at = least;
      }
    }
    return top;
  }
}
