/** Ends a run with one plain line that any reader of the log can count on. */
class ClosingLine {
  onRunComplete(_contexts, results) {
    const failedToRun = results.numRuntimeErrorTestSuites;
    const skipped = results.numPendingTests + results.numTodoTests;
    process.stderr.write('');
    process.stdout.write(
      `\n${results.numPassedTests} passed, ${results.numFailedTests + failedToRun} failed${skipped ? `, ${skipped} skipped` : ''}\n`,
    );
  }
}
module.exports = ClosingLine;
