/** `npm run replay -- --club SLUG`: holds all stored decisions of a club against the rules they were made with. */
import 'reflect-metadata';
import { loadConfig } from '../../platform/config.js';
import { describeStartFailure } from '../../platform/startup-error.js';
import { replayClub } from './command.js';

replayClub(loadConfig(), process.argv.slice(2), console.log, { notice: console.error })
  .then((same) => {
    process.exitCode = same ? 0 : 1;
  })
  .catch((error: unknown) => {
    console.error(describeStartFailure(error));
    process.exitCode = 2;
  });
