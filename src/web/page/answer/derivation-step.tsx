import type { ComponentChildren } from 'preact';

/** One step of the derivation. */
export function Step({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <section class="step">
      <h4>{title}</h4>
      <div>{children}</div>
    </section>
  );
}
