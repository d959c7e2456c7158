import { applyDecorators } from '@nestjs/common';
import { ApiResponse } from '@nestjs/swagger';

const WHEN = {
  400: 'The request cannot be read, or fields were refused',
  401: 'Not signed in, or the sign-in was refused',
  403: 'Not your role, or not yours',
  404: 'Not found in your club',
  409: 'In conflict with what is stored',
  412: 'Somebody else changed it since',
  422: 'A value is not possible',
  428: 'If-Match is missing',
  429: 'Too many requests',
};

/** Describes the problem answers of a route in the API; their schema is the platform's `Problem`. */
export const ApiProblems = (...statuses: (keyof typeof WHEN)[]): MethodDecorator & ClassDecorator =>
  applyDecorators(
    ...statuses.map((status) =>
      ApiResponse({
        status,
        description: WHEN[status],
        content: { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } },
      }),
    ),
  );
