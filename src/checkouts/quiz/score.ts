/** Scores a quiz and draws one. Pure: whoever draws brings the chance. */
import type { Letter, QuizQuestion } from './question.entity.js';

type Asked = Pick<QuizQuestion, 'id' | 'kind' | 'rightLetters' | 'rightValue' | 'tolerance'>;

/** What was answered; a question left out is wrong. */
export interface Answer {
  questionId: string;
  chosen: readonly Letter[];
  value: number | null;
}

/** An answer as it was scored. */
export interface Scored extends Answer {
  right: boolean;
}

/** All the right choices and no other; a number within the tolerance, its edge too. */
export function isRight(question: Asked, answer: Answer | undefined): boolean {
  if (!answer) return false;
  if (question.kind === 'number') {
    if (answer.value === null || question.rightValue === null || question.tolerance === null) return false;
    // What a decimal cannot hold exactly must not put the edge outside: 0.1 + 0.2.
    const slack = 1e-9 * Math.max(1, Math.abs(question.rightValue));
    return Math.abs(answer.value - question.rightValue) <= question.tolerance + slack;
  }
  const chosen = new Set(answer.chosen);
  return (
    chosen.size === question.rightLetters.length && question.rightLetters.every((one) => chosen.has(one))
  );
}

/** Every question asked, answered or not. */
export const scoreAll = (questions: readonly Asked[], answers: readonly Answer[]): Scored[] =>
  questions.map((question) => {
    const answer = answers.find(({ questionId }) => questionId === question.id);
    const { chosen = [], value = null } = answer ?? {};
    return { questionId: question.id, chosen, value, right: isRight(question, answer) };
  });

/** Enough of a hundred? Whole numbers, so that no rounding decides. */
export const isPassed = (of: { right: number; asked: number; passPercent: number }): boolean =>
  of.right * 100 >= of.passPercent * of.asked;

/**
 * So many questions, of each topic in turn as long as it has any, in the order drawn.
 * @param below a whole number from 0 and below what it is given
 */
export function drawQuestions<T extends { topic: string }>(
  bank: readonly T[],
  count: number,
  below: (limit: number) => number,
): T[] {
  const left = new Map<string, T[]>();
  for (const one of bank) left.set(one.topic, [...(left.get(one.topic) ?? []), one]);
  const drawn: T[] = [];
  while (drawn.length < count && left.size > 0)
    for (const [topic, questions] of [...left]) {
      if (drawn.length === count) break;
      drawn.push(...questions.splice(below(questions.length), 1));
      if (questions.length === 0) left.delete(topic);
    }
  return drawn;
}
