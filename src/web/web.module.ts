import { Module, type OnModuleInit } from '@nestjs/common';
import { HttpAdapterHost } from '@nestjs/core';
import { pages } from './pages.js';

/**
 * Serves the built pages for every address that no controller answers. Hung in when the module starts, which is after
 * the routes and before the 404: a middleware of a module would get the API's prefix.
 */
@Module({})
export class WebModule implements OnModuleInit {
  constructor(private readonly host: HttpAdapterHost) {}

  onModuleInit(): void {
    this.host.httpAdapter.use(pages());
  }
}
