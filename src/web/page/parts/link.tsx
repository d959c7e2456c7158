import type { ComponentChildren } from 'preact';
import { go, place } from './route.js';

/** A link inside the pages; opened in another tab it is an ordinary one. */
export function Link({
  to,
  children,
  class: of,
}: {
  to: string;
  children: ComponentChildren;
  class?: string;
}) {
  return (
    <a
      href={to}
      class={of}
      aria-current={place.value.path === to ? 'page' : undefined}
      onClick={(event) => {
        if (event.metaKey || event.ctrlKey || event.shiftKey || event.button !== 0) return;
        event.preventDefault();
        go(to);
      }}
    >
      {children}
    </a>
  );
}
