/** Reads attempts. The right answers come along only once an attempt is handed in. */
import type { EntityManager } from 'typeorm';
import { CAUTION } from '../../rules/index.js';
import type { AttemptShort, AttemptView, QuestionAsked } from './attempt.dto.js';
import { LETTERS, QuizQuestion } from './question.entity.js';
import type { Scored } from './score.js';

interface AttemptRow extends AttemptShort {
  answers: Scored[] | null;
}

const instant = (value: string): string =>
  `to_char(${value} AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"')`;
const ROW = `SELECT a.id, a.member_id AS "memberId", a.requirement_id AS "requirementId", v.title, ${instant('a.started_at')} AS "startedAt",
    r.answers, CASE WHEN r.attempt_id IS NOT NULL THEN jsonb_build_object('handedInAt', ${instant('r.handed_in_at')},
      'rightCount', r.right_count, 'askedCount', r.asked_count, 'passPercent', r.pass_percent, 'passed', r.passed) END AS result
  FROM quiz_attempts a JOIN checkout_versions v ON v.club_id = a.club_id AND v.id = a.version_id
  LEFT JOIN quiz_results r ON r.club_id = a.club_id AND r.attempt_id = a.id
 WHERE a.club_id = $1`;

/** Null where the club has none of that id. */
export async function readAttempt(em: EntityManager, clubId: string, id: string): Promise<AttemptRow | null> {
  const [row] = await em.query<AttemptRow[]>(`${ROW} AND a.id = $2`, [clubId, id]);
  return row ?? null;
}

/** Of a member from a position on, newest first. */
export async function listAttempts(
  em: EntityManager,
  of: { clubId: string; memberId: string; after: string | null },
  count: number,
): Promise<AttemptShort[]> {
  const rows = await em.query<AttemptRow[]>(
    `${ROW} AND a.member_id = $2 AND ($3::uuid IS NULL OR a.id < $3) ORDER BY a.id DESC LIMIT $4`,
    [of.clubId, of.memberId, of.after, count],
  );
  return rows.map(({ answers: _answers, ...row }) => row);
}

/** The questions drawn, in their order. */
export const drawnFor = (em: EntityManager, clubId: string, attemptId: string): Promise<QuizQuestion[]> =>
  em
    .createQueryBuilder(QuizQuestion, 'question')
    .innerJoin(
      'quiz_drawn',
      'drawn',
      'drawn.club_id = question.club_id AND drawn.question_id = question.id AND drawn.attempt_id = :attemptId',
      { attemptId },
    )
    .where('question.clubId = :clubId', { clubId })
    .orderBy('drawn.position')
    .getMany();

export async function attemptView(em: EntityManager, clubId: string, row: AttemptRow): Promise<AttemptView> {
  const { answers, ...short } = row;
  const questions = await drawnFor(em, clubId, row.id);
  return {
    ...short,
    questions: questions.map((one) =>
      asked(one, answers?.find(({ questionId }) => questionId === one.id) ?? null),
    ),
    caution: CAUTION,
  };
}

const asked = (question: QuizQuestion, scored: Scored | null): QuestionAsked => ({
  ...{
    id: question.id,
    topic: question.topic,
    kind: question.kind,
    text: question.text,
    unit: question.unit,
  },
  choices: question.choices.map((text, index) => ({ letter: LETTERS[index]!, text })),
  scored: scored && {
    ...{ chosen: [...scored.chosen], value: scored.value, right: scored.right },
    ...{ rightLetters: question.rightLetters, rightValue: question.rightValue },
    ...{ tolerance: question.tolerance, reference: question.reference },
  },
});
