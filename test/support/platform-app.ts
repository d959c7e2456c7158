import type { DynamicModule, Provider, Type } from '@nestjs/common';
import type { NestExpressApplication } from '@nestjs/platform-express';
import { createApp } from '../../src/platform/bootstrap.js';
import { PlatformModule } from '../../src/platform/platform.module.js';
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';

class PlatformTestModule {}

/** The platform with controllers of a test's own, on a real database. */
export async function startPlatform(
  controllers: Type[],
  providers: Provider[] = [],
): Promise<{ app: NestExpressApplication; db: TestDatabase; stop(): Promise<void> }> {
  const db = await createTestDatabase();
  const root: DynamicModule = {
    module: PlatformTestModule,
    imports: [PlatformModule.register(db.config, db.database, [])],
    controllers,
    providers,
  };
  const app = await createApp(root, db.config);
  await app.init();
  return {
    ...{ app, db },
    async stop() {
      await app.close();
      await db.drop();
    },
  };
}
