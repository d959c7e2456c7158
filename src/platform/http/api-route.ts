import { applyDecorators, HttpCode, type Type } from '@nestjs/common';
import { ApiBearerAuth, ApiOperation, ApiResponse } from '@nestjs/swagger';

/** What a route's description says. */
export interface RouteWords {
  /** OpenAPI operation id, unique in the API. */
  id: string;
  summary: string;
  description?: string;
  /** Class of the answer's body; null for an answer without one. */
  answer: Type<unknown> | null;
  /** 200 unless said otherwise; 204 without a body. */
  status?: number;
  /** Statuses of problems besides 400 and 401. */
  refuses?: number[];
}

const REFUSALS: Record<number, string> = {
  400: 'Something in the request cannot be read; the problem names the field',
  401: 'Not signed in',
  403: 'Not your role',
  404: 'Not there, or not in your club',
  409: 'In conflict with what is stored; the problem says what to do',
  412: 'Somebody changed it since you read it',
  422: 'Readable but not possible; the problem says what to do',
  428: 'If-Match is missing',
};

const PROBLEM = { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } };

/** Describes a route of signed-in people: its id, its answer and its refusals. */
export function ApiRoute(of: RouteWords): MethodDecorator {
  const status = of.status ?? (of.answer === null ? 204 : 200);
  const refusals = [400, 401, ...(of.refuses ?? [])].map((code) =>
    ApiResponse({ status: code, description: REFUSALS[code] ?? 'Refused', content: PROBLEM }),
  );
  return applyDecorators(
    HttpCode(status),
    ApiBearerAuth(),
    ApiOperation({
      operationId: of.id,
      summary: of.summary,
      ...(of.description ? { description: of.description } : {}),
    }),
    ApiResponse(
      of.answer === null ? { status, description: 'Done' } : { status, type: of.answer, description: 'Done' },
    ),
    ...refusals,
  );
}
