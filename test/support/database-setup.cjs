// jest globalSetup. Starts no server; the first spec that needs one does.
module.exports = async () => (await import('./database-run.mjs')).startRun();
