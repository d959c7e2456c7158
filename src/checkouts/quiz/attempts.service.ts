import { Injectable } from '@nestjs/common';
import { randomInt } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { MEMBERS } from '../../members/member-rows.js';
import { assertOwnOr, isOwn, READERS } from '../../members/members.access.js';
import { Clock } from '../../platform/clock.js';
import { findRecord, notThere } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { pageOf, type PageQuery, readCursor } from '../../platform/http/pages.js';
import { newId } from '../../platform/ids.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { valueRefused } from '../../platform/problems/value-refused.js';
import { loadProgress } from '../progress/load-progress.js';
import { progressOf } from '../progress/progress-of.js';
import { REQUIREMENTS } from '../requirements/requirements.service.js';
import { attemptView, drawnFor, listAttempts, readAttempt } from './attempt-rows.js';
import type { AttemptPage, AttemptView, HandInDto } from './attempt.dto.js';
import { QuizQuestion } from './question.entity.js';
import { drawQuestions, isPassed, scoreAll } from './score.js';
import './quiz.problems.js';

/** The written quiz, taken by the member alone and scored by the service. */
@Injectable()
export class AttemptsService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** Draws a quiz for whoever asks, or gives the one that is not handed in yet. @throws 404, 409 */
  start({ clubId, memberId }: SignedIn, requirementId: string): Promise<AttemptView> {
    const work = async (em: EntityManager): Promise<AttemptView> => {
      await findRecord(em, REQUIREMENTS, { clubId, id: requirementId });
      await findRecord(em, MEMBERS, { clubId, id: memberId }, { lock: true });
      const loaded = await loadProgress(em, { clubId, memberIds: [memberId], now: this.clock.now() });
      const requirement = loaded.inForce.find(({ id }) => id === requirementId);
      const asked = requirement?.version.quiz;
      if (!requirement || !asked) throw new ProblemException('quiz-not-asked');
      const { quiz } = progressOf(requirement, loaded.of(memberId), loaded.inForce, loaded.asked);
      if (quiz!.openAttemptId !== null) return this.view(em, clubId, quiz!.openAttemptId);
      if (quiz!.state === 'passed') throw new ProblemException('quiz-passed-already');
      if (quiz!.state === 'wait')
        throw new ProblemException('quiz-wait', {
          detail: `The next quiz may begin at ${quiz!.notBefore}. Until then, read what was wrong.`,
          extensions: { notBefore: quiz!.notBefore },
        });
      const bank = await em.findBy(QuizQuestion, { clubId, requirementId, state: 'published' });
      if (bank.length < asked.questions)
        throw new ProblemException('quiz-bank-short', {
          detail: `The quiz draws ${asked.questions} questions and ${bank.length} are published. Tell an officer.`,
        });
      const id = newId();
      await em.query(
        'INSERT INTO quiz_attempts (club_id, id, member_id, requirement_id, version_id, started_at) VALUES ($1, $2, $3, $4, $5, $6)',
        [clubId, id, memberId, requirementId, requirement.version.id, this.clock.now()],
      );
      const drawn = drawQuestions(bank, asked.questions, (limit) => randomInt(limit));
      await em.query(
        `INSERT INTO quiz_drawn (club_id, requirement_id, attempt_id, question_id, position)
         SELECT $1, $2, $3, q.id, q.position FROM unnest($4::uuid[]) WITH ORDINALITY q (id, position)`,
        [clubId, requirementId, id, drawn.map((one) => one.id)],
      );
      return this.view(em, clubId, id);
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /** With the right answers once it is handed in. @throws 403, 404 */
  read(by: SignedIn, id: string): Promise<AttemptView> {
    const { clubId } = by;
    return this.db.run(
      clubId,
      async (em) => {
        const row = await readAttempt(em, clubId, id);
        if (!row) throw notThere('quiz attempt');
        assertOwnOr(by, row.memberId, READERS);
        return attemptView(em, clubId, row);
      },
      { readOnly: true },
    );
  }

  /** Scores it, once. @throws 403, 404, 409, 422 */
  handIn(by: SignedIn, id: string, { answers }: HandInDto): Promise<AttemptView> {
    const { clubId, memberId } = by;
    const work = async (em: EntityManager): Promise<AttemptView> => {
      const row = await readAttempt(em, clubId, id);
      if (!row) throw notThere('quiz attempt');
      if (!isOwn(by, row.memberId))
        throw new ProblemException('not-yours', {
          detail: 'A quiz is handed in by the member who takes it.',
        });
      if (row.result) throw new ProblemException('quiz-handed-in-already');
      const questions = await drawnFor(em, clubId, id);
      assertAnswers(questions, answers);
      const scored = scoreAll(
        questions,
        answers.map(({ questionId, chosen = [], value = null }) => ({ questionId, chosen, value })),
      );
      const [asked, right] = [questions.length, scored.filter((one) => one.right).length];
      const passPercent = await passPercentOf(em, clubId, id);
      await em.query(
        `INSERT INTO quiz_results (club_id, attempt_id, answers, right_count, asked_count, pass_percent, passed, handed_in_at)
         VALUES ($1, $2, $3, $4, $5, $6, $7, $8)`,
        [
          ...[clubId, id, JSON.stringify(scored), right, asked, passPercent],
          ...[isPassed({ right, asked, passPercent }), this.clock.now()],
        ],
      );
      return this.view(em, clubId, id);
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /** A member's attempts, newest first. @throws 403, 404 */
  list(by: SignedIn, memberId: string, query: PageQuery): Promise<AttemptPage> {
    assertOwnOr(by, memberId, READERS);
    const { clubId } = by;
    const after = readCursor(query.cursor);
    return this.db.run(
      clubId,
      async (em) => {
        await findRecord(em, MEMBERS, { clubId, id: memberId });
        return pageOf(await listAttempts(em, { clubId, memberId, after }, query.limit + 1), query.limit);
      },
      { readOnly: true },
    );
  }

  private async view(em: EntityManager, clubId: string, id: string): Promise<AttemptView> {
    return attemptView(em, clubId, (await readAttempt(em, clubId, id))!);
  }
}

/** The pass mark of the version it was drawn under. */
async function passPercentOf(em: EntityManager, clubId: string, attemptId: string): Promise<number> {
  const [row] = await em.query<{ passPercent: number }[]>(
    `SELECT v.quiz_pass_percent AS "passPercent" FROM quiz_attempts a
       JOIN checkout_versions v ON v.club_id = a.club_id AND v.id = a.version_id WHERE a.club_id = $1 AND a.id = $2`,
    [clubId, attemptId],
  );
  return row!.passPercent;
}

/** Answers to what was asked, each once and in its form. @throws 422 */
function assertAnswers(questions: readonly QuizQuestion[], answers: HandInDto['answers']): void {
  answers.forEach(({ questionId, chosen = [], value = null }, index) => {
    const at = `answers[${index}]`;
    const question = questions.find(({ id }) => id === questionId);
    if (!question) throw valueRefused(`${at}.questionId`, 'This quiz does not ask that.');
    if (answers.findIndex((one) => one.questionId === questionId) !== index)
      throw valueRefused(`${at}.questionId`, 'It is answered twice. Answer it once.');
    if (question.kind === 'number' ? chosen.length > 0 : value !== null)
      throw valueRefused(
        question.kind === 'number' ? `${at}.chosen` : `${at}.value`,
        question.kind === 'number' ? 'A number is asked for.' : 'Choices are asked for.',
      );
    if (question.kind === 'single' && chosen.length > 1)
      throw valueRefused(`${at}.chosen`, 'One choice is asked for.');
  });
}
