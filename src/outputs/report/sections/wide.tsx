import type { ComponentChildren } from "preact";

/** A part that is scrolled sideways where the page is narrow, by keyboard too. */
export function Wide({ label, children }: { readonly label: string; readonly children: ComponentChildren }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
    <section class="wide" aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}
