// jest globalTeardown.
module.exports = async () => (await import('./database-run.mjs')).endRun();
