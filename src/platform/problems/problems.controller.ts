import { Controller, Get, Param } from '@nestjs/common';
import { ApiOperation, ApiTags } from '@nestjs/swagger';
import { OpenToAll } from '../http/open-to-all.js';
import { allProblems, knownProblem, type ProblemKind } from './problem-catalogue.js';
import { ProblemException } from './problem-exception.js';

/** Explains the kinds of problem: where the `type` member of a problem document points. */
@ApiTags('problems')
@OpenToAll()
@Controller('problems')
export class ProblemsController {
  /** All kinds. */
  @Get()
  @ApiOperation({
    operationId: 'listProblems',
    summary: 'List every kind of problem this service answers with',
  })
  list(): { items: ProblemKind[] } {
    return { items: allProblems() };
  }

  /** One kind. */
  @Get(':code')
  @ApiOperation({ operationId: 'explainProblem', summary: 'Explain a kind of problem' })
  explain(@Param('code') code: string): ProblemKind {
    const kind = knownProblem(code);
    if (!kind)
      throw new ProblemException('not-found', {
        detail: 'No problem has this code. All of them are listed at /problems.',
      });
    return kind;
  }
}
