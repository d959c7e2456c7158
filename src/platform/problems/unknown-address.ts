import { Injectable, NotFoundException, type OnApplicationBootstrap } from '@nestjs/common';
import { ExecutionContextHost } from '@nestjs/core/helpers/execution-context-host.js';
import { HttpAdapterHost } from '@nestjs/core';
import type { NextFunction, Request, Response } from 'express';
import { ProblemFilter } from './problem.filter.js';

/**
 * Answers addresses that nobody serves. Nest does so only below the API prefix; this comes after everything else, when
 * all routes are registered.
 */
@Injectable()
export class UnknownAddress implements OnApplicationBootstrap {
  constructor(private readonly adapter: HttpAdapterHost) {}

  onApplicationBootstrap(): void {
    const filter = new ProblemFilter();
    this.adapter.httpAdapter.use((request: Request, response: Response, next: NextFunction) => {
      const error = new NotFoundException(`Cannot ${request.method} ${request.path}`);
      filter.catch(error, new ExecutionContextHost([request, response, next]));
    });
  }
}
