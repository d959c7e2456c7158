/** The quiz: what is right, what is enough, what is drawn. */
import { drawQuestions, isPassed, isRight, scoreAll } from '../../src/checkouts/quiz/score.js';

const speed = { id: 'q1', kind: 'number' as const, rightLetters: [], rightValue: 71, tolerance: 1 };
const one = {
  id: 'q2',
  kind: 'single' as const,
  rightLetters: ['b' as const],
  rightValue: null,
  tolerance: null,
};
const some = { ...one, id: 'q3', kind: 'multiple' as const, rightLetters: ['a' as const, 'c' as const] };
const value = (questionId: string, number: number) => ({ questionId, chosen: [], value: number });
const chosen = (questionId: string, ...letters: ('a' | 'b' | 'c')[]) => ({
  questionId,
  chosen: letters,
  value: null,
});

describe('an answer', () => {
  it.each([
    [69.9, false],
    [70, true],
    [71, true],
    [72, true],
    [72.1, false],
  ])('of %p to 71 within 1 is right: %p', (number, right) => {
    expect(isRight(speed, value('q1', number))).toBe(right);
  });

  it('at the edge is not put outside by decimals that cannot be held exactly', () => {
    expect(0.1 + 0.2 - 0.2).not.toBe(0.1);
    expect(isRight({ ...speed, rightValue: 0.2, tolerance: 0.1 }, value('q1', 0.3))).toBe(true);
    expect(isRight({ ...speed, rightValue: 0.2, tolerance: 0.1 }, value('q1', 0.3001))).toBe(false);
  });

  it('names all the right choices and no other', () => {
    expect(isRight(one, chosen('q2', 'b'))).toBe(true);
    expect(isRight(one, chosen('q2', 'a'))).toBe(false);
    expect(isRight(some, chosen('q3', 'c', 'a'))).toBe(true);
    expect(isRight(some, chosen('q3', 'a'))).toBe(false);
    expect(isRight(some, chosen('q3', 'a', 'b', 'c'))).toBe(false);
  });

  it('that was not given is wrong', () => {
    expect(scoreAll([speed, one, some], [chosen('q2', 'b')]).map(({ right }) => right)).toEqual([
      false,
      true,
      false,
    ]);
    expect(isRight(speed, chosen('q1'))).toBe(false);
  });
});

describe('a pass', () => {
  // FAA Airman Knowledge Testing Matrix: private pilot airplane, 60 questions, passing score 70 (from memory).
  it.each([
    [42, 60, 70, true],
    [41, 60, 70, false],
    // Nothing is rounded up: two of three are 66.7 %.
    [2, 3, 67, false],
    [2, 3, 66, true],
    [7, 7, 100, true],
    [6, 7, 100, false],
  ])('of %p right of %p at %p %%: %p', (right, asked, passPercent, passed) => {
    expect(isPassed({ right, asked, passPercent })).toBe(passed);
  });
});

describe('a draw', () => {
  const bank = [...'aaaabbc'].map((topic, id) => ({ id, topic }));
  /** Numbers in turn, as chance would give them. */
  const chance = (seed: number) => {
    let state = seed;
    return (limit: number): number => {
      state = (state * 48_271) % 2_147_483_647;
      return state % limit;
    };
  };

  it('takes of each topic in turn, none twice, and all there is where more is asked', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const three = drawQuestions(bank, 3, chance(seed));
      expect(three.map(({ topic }) => topic).sort()).toEqual(['a', 'b', 'c']);
      const six = drawQuestions(bank, 6, chance(seed));
      expect(new Set(six.map(({ id }) => id)).size).toBe(6);
      expect(six.filter(({ topic }) => topic === 'c')).toHaveLength(1);
      expect(drawQuestions(bank, 20, chance(seed))).toHaveLength(7);
    }
  });

  it('can bring any question', () => {
    const seen = new Set<number>();
    for (let seed = 1; seed <= 200; seed++)
      for (const { id } of drawQuestions(bank, 3, chance(seed))) seen.add(id);
    expect(seen.size).toBe(7);
  });
});
