import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../../accounts/current-user.js';
import {
  addRecord,
  editRecord,
  findRecord,
  pageOfRecords,
  removeRecord,
} from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { show } from '../../platform/http/views.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { valueRefused } from '../../platform/problems/value-refused.js';
import { REQUIREMENTS } from '../requirements/requirements.service.js';
import { LETTERS, QuizQuestion } from './question.entity.js';
import {
  type QuestionChangesDto,
  type QuestionDto,
  type QuestionPage,
  type QuestionQuery,
  QuestionView,
} from './question.dto.js';
import './quiz.problems.js';

const QUESTIONS = { entity: QuizQuestion, noun: 'question' };

/** The club's bank of questions. Its answers are for officers. */
@Injectable()
export class QuestionsService {
  constructor(private readonly db: TenantDb) {}

  /** @throws 404 */
  list({ clubId }: SignedIn, requirementId: string, query: QuestionQuery): Promise<QuestionPage> {
    return this.db.run(
      clubId,
      async (em) => {
        await findRecord(em, REQUIREMENTS, { clubId, id: requirementId });
        const where = { clubId, requirementId, ...(query.state ? { state: query.state } : {}) };
        const page = await pageOfRecords(em, QUESTIONS, where, query);
        return { ...page, items: page.items.map(view) };
      },
      { readOnly: true },
    );
  }

  /** @throws 404, 422 */
  add({ clubId, memberId }: SignedIn, requirementId: string, body: QuestionDto): Promise<QuestionView> {
    return this.db.run(
      clubId,
      async (em) => {
        await findRecord(em, REQUIREMENTS, { clubId, id: requirementId });
        const values = { ...columnsOf(body), clubId, requirementId, state: 'draft' as const };
        assertAnswerable(values);
        return view(await addRecord(em, QUESTIONS, values));
      },
      { actorId: memberId },
    );
  }

  /** @throws 404, 409 where it is published, 412, 422 */
  edit(
    { clubId, memberId }: SignedIn,
    id: string,
    version: number,
    changes: QuestionChangesDto,
  ): Promise<QuestionView> {
    const change = (row: QuizQuestion): Partial<QuizQuestion> => {
      const { state, ...rest } = changes;
      const values = columnsOf(rest);
      const given = Object.values(values).some((value) => value !== undefined);
      const back =
        state !== undefined && state !== row.state && (row.state === 'retired' || state === 'draft');
      if (row.state !== 'draft' && (given || back)) throw new ProblemException('question-published');
      assertAnswerable({ ...row, ...definedOf(values) });
      return { ...values, ...(state === undefined ? {} : { state }) };
    };
    return this.db.run(
      clubId,
      async (em) => view(await editRecord(em, QUESTIONS, { where: { clubId, id }, version, change })),
      { actorId: memberId },
    );
  }

  /** Only a draft. @throws 404, 409, 412 */
  remove({ clubId, memberId }: SignedIn, id: string, version: number): Promise<void> {
    return this.db.run(
      clubId,
      async (em) => {
        const row = await findRecord(em, QUESTIONS, { clubId, id });
        if (row.rowVersion === version && row.state !== 'draft')
          throw new ProblemException('question-published');
        await removeRecord(em, QUESTIONS, { where: { clubId, id }, version });
      },
      { actorId: memberId },
    );
  }
}

type Columns = Partial<
  Pick<
    QuizQuestion,
    'topic' | 'kind' | 'text' | 'choices' | 'rightLetters' | 'rightValue' | 'tolerance' | 'unit' | 'reference'
  >
>;

/** Whole rows get null for what a new question leaves out; what an edit leaves out stays undefined. */
function columnsOf({ choices, ...rest }: Partial<QuestionDto>): Columns {
  return {
    ...rest,
    ...(choices && {
      choices: choices.map(({ text }) => text),
      rightLetters: LETTERS.filter((_letter, index) => choices[index]?.right),
    }),
  };
}

const definedOf = (values: Columns): Columns =>
  Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));

/** Can it be answered, and in one way? @throws 422 */
function assertAnswerable(of: Columns): void {
  const { kind, choices = [], rightLetters = [], rightValue = null, tolerance = null, unit = null } = of;
  if (kind === 'number') {
    if (choices.length > 0) throw valueRefused('choices', 'A number is asked for without choices.');
    if (rightValue === null) throw valueRefused('rightValue', 'Give the right number.');
    if (tolerance === null)
      throw valueRefused('tolerance', 'Say how far off is still right; 0 for not at all.');
    return;
  }
  const number = { rightValue, tolerance, unit };
  const stray = (Object.keys(number) as (keyof typeof number)[]).find((name) => number[name] !== null);
  if (stray) throw valueRefused(stray, 'Only a question for a number has it.');
  if (choices.length < 2) throw valueRefused('choices', 'Give two to eight choices.');
  const twice = choices.findIndex((text, index) => choices.indexOf(text) !== index);
  if (twice >= 0) throw valueRefused(`choices[${twice}].text`, 'Two choices say the same.');
  if (rightLetters.length === 0) throw valueRefused('choices', 'Say which of the choices is right.');
  if (kind === 'single' && rightLetters.length > 1)
    throw valueRefused('choices', 'Of a single choice just one is right.');
}

const view = (row: QuizQuestion): QuestionView =>
  show(QuestionView, row, {
    choices: row.choices.map((text, index) => ({ text, right: row.rightLetters.includes(LETTERS[index]!) })),
  });
