/** Ends a run with one plain line that any reader of the log can count on. */
class ClosingLine {
  onRunComplete(_contexts, results) {
    const failed = results.numFailedTests + results.numRuntimeErrorTestSuites;
    const skipped = results.numPendingTests + results.numTodoTests;
    const line = `${results.numPassedTests} passed, ${failed} failed${skipped ? `, ${skipped} skipped` : ''}`;
    // Jest's own summary comes after the reporters; the line comes after that.
    process.once('exit', () => process.stdout.write(`\n${line}\n`));
  }
}
module.exports = ClosingLine;
