import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/**
 * A page whose script is loaded when it is first shown, so that the first page does not wait for all of them. One that cannot
 * be loaded (no line, or the service was renewed meanwhile and the old script is gone) says so and offers to read it all anew.
 */
export function lazy<P extends object>(load: () => Promise<ComponentType<P>>): ComponentType<P> {
  let ready: ComponentType<P> | null = null;
  return function Lazy(props: P) {
    const [state, setState] = useState<'waiting' | 'here' | 'failed'>(ready === null ? 'waiting' : 'here');
    const read = () => {
      setState('waiting');
      load().then(
        (page) => {
          ready = page;
          setState('here');
        },
        () => setState('failed'),
      );
    };
    useEffect(() => {
      if (ready === null) read();
    }, []);
    const Ready = ready;
    if (Ready !== null) return <Ready {...props} />;
    return (
      <main class="page">
        {state === 'failed' ? (
          <>
            <p class="problem" role="alert">
              This page could not be read. Check your connection, then read it again.
            </p>
            <button class="main" onClick={() => location.reload()}>
              Read it again
            </button>
          </>
        ) : (
          <p class="waiting" role="status">
            Opening…
          </p>
        )}
      </main>
    );
  };
}
