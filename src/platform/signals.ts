/** Stops a service in order on the first SIGINT or SIGTERM, and at once on the second. */
export function stopOnSignal(service: { stop(): Promise<void> }): void {
  let asked = false;
  const onSignal = () => {
    if (asked) process.exit(1);
    asked = true;
    service.stop().then(
      () => process.exit(0),
      (error: unknown) => {
        process.stderr.write(`Stopping failed: ${(error as Error).message}\n`);
        process.exit(1);
      },
    );
  };
  process.on('SIGINT', onSignal);
  process.on('SIGTERM', onSignal);
}
