/** The command line: `serve` (default), `demo`, `migrate up|down|show`, `create-club`. */
import 'reflect-metadata';
import { loadConfig } from './platform/config.js';
import { migrate } from './platform/database/migrate.js';
import { serve } from './platform/serve.js';
import { describeStartFailure, StartupError } from './platform/startup-error.js';

const USAGE = 'usage: node dist/src/main.js [serve | demo | migrate [up | down | show] | create-club ...]';

async function main([command = 'serve', ...rest]: string[]): Promise<void> {
  switch (command) {
    case 'serve': {
      const { AppModule } = await import('./app.module.js');
      return serve(loadConfig(), (config, database) => AppModule.register(config, database));
    }
    case 'demo': {
      const { runDemo } = await import('./demo/index.js');
      // What to try stays on the screen: requests are not logged unless asked for.
      return runDemo(loadConfig({ LOG_LEVEL: 'warn', ...process.env }));
    }
    case 'migrate':
      for (const line of await migrate(loadConfig(), rest[0], { notice: console.log })) console.log(line);
      return;
    case 'create-club': {
      const { createClub } = await import('./cli/create-club.js');
      for (const line of await createClub(loadConfig(), rest, { notice: console.log })) console.log(line);
      return;
    }
    case 'help':
    case '--help':
      console.log(USAGE);
      return;
    default:
      throw new StartupError(`"${command}" is not a command. ${USAGE}`);
  }
}

main(process.argv.slice(2)).catch((error: unknown) => {
  console.error(describeStartFailure(error));
  process.exit(1);
});
