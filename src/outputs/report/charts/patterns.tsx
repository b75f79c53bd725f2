/** What is told apart in charts; `plain` is a count of anything else. */
export type Kind = "fail" | "warn" | "undecided" | "pass" | "plain";

/** A pattern for each kind, so that it is known without colour; said once per page, used by all its charts. */
export function Patterns() {
  return (
    <svg class="patterns" width="0" height="0" aria-hidden="true" focusable="false">
      <defs>
        <Pattern kind="fail">
          <path class="ink-fail" d="M0 8L8 0M0 0L8 8" stroke-width="1.2" />
        </Pattern>
        <Pattern kind="warn">
          <path class="ink-warn" d="M-2 2L2 -2M0 8L8 0M6 10L10 6" stroke-width="1.6" />
        </Pattern>
        <Pattern kind="undecided">
          <circle class="dot-undecided" cx="4" cy="4" r="1.4" />
        </Pattern>
        <Pattern kind="pass">{null}</Pattern>
        <Pattern kind="plain">{null}</Pattern>
      </defs>
    </svg>
  );
}

function Pattern({ kind, children }: { readonly kind: Kind; readonly children: preact.ComponentChildren }) {
  return (
    <pattern id={`of-${kind}`} width="8" height="8" patternUnits="userSpaceOnUse">
      <rect class={`ground-${kind}`} width="8" height="8" />
      {children}
    </pattern>
  );
}

/** The paint of a kind. */
export function paintOf(kind: Kind): string {
  return `url(#of-${kind})`;
}
