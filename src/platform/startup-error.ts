/**
 * Something that stops the service from starting and that the person starting it can put right. Its message is shown
 * as it is, without a stack trace, so it says what is wrong and what to do.
 */
export class StartupError extends Error {
  constructor(message: string, options?: { cause?: unknown }) {
    super(message, options);
    this.name = 'StartupError';
  }
}

/** Text for the console: a StartupError's message alone, anything else with its stack. */
export function describeStartFailure(error: unknown): string {
  if (error instanceof StartupError) return `Bellcrank cannot start: ${error.message}`;
  return `Bellcrank stopped on an unexpected error: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`;
}
