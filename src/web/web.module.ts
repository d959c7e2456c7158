import { Module, type MiddlewareConsumer, type NestModule } from '@nestjs/common';
import { PagesMiddleware } from './pages.middleware.js';

/** Serves the built pages. Everything below /api, /health and /problems belongs to controllers. */
@Module({})
export class WebModule implements NestModule {
  configure(consumer: MiddlewareConsumer): void {
    consumer.apply(PagesMiddleware).forRoutes('*path');
  }
}
