import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';

/**
 * A button that shows and hides links: disclosure, not a menu of commands, so Tab goes through the links as it does anywhere
 * (WAI-ARIA Authoring Practices, disclosure navigation). Arrow keys go through them too. Escape, a press elsewhere and
 * leaving it with the keyboard close it.
 */
export function Menu({
  id,
  label,
  here,
  open,
  set,
  children,
}: {
  id: string;
  label: string;
  /** Is the page that is read one of these? */
  here: boolean;
  open: boolean;
  set: (open: boolean) => void;
  children: ComponentChildren;
}) {
  const root = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);

  useLayoutEffect(() => {
    if (!open) return;
    const elsewhere = (event: PointerEvent) => {
      if (!root.current?.contains(event.target as Node)) set(false);
    };
    document.addEventListener('pointerdown', elsewhere);
    return () => document.removeEventListener('pointerdown', elsewhere);
  }, [open]);

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Escape' && open) {
      set(false);
      button.current?.focus();
    }
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (step === undefined || (!open && step < 0)) return;
    event.preventDefault();
    set(true);
    // Once they are shown: what is hidden takes no focus.
    setTimeout(() => {
      const ways = [...root.current!.querySelectorAll<HTMLElement>('a, button')];
      ways[ways.indexOf(document.activeElement as HTMLElement) + step]?.focus();
    });
  };

  return (
    <div
      ref={root}
      class="menu"
      onKeyDown={onKeyDown}
      onFocusOut={({ relatedTarget }) => {
        if (relatedTarget !== null && !root.current?.contains(relatedTarget as Node)) set(false);
      }}
    >
      <button
        ref={button}
        class={here ? 'here' : undefined}
        aria-expanded={open}
        aria-controls={`menu-${id}`}
        aria-current={here ? 'true' : undefined}
        onClick={() => set(!open)}
      >
        <span class="menu-words">{label}</span>
        <svg class="turn" viewBox="0 0 12 8" aria-hidden="true">
          <path d="M1.5 1.5 6 6l4.5-4.5" />
        </svg>
      </button>
      <div id={`menu-${id}`} class="panel" hidden={!open}>
        {children}
      </div>
    </div>
  );
}
