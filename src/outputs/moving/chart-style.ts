/** What is told apart in the areas of the chart. */
export type Kind = "fail" | "undecided" | "warn" | "pass";

/** Ink and ground of each kind, on a light and on a dark page. */
const COLOURS: Readonly<
  Record<Kind, { readonly light: readonly [string, string]; readonly dark: readonly [string, string] }>
> = {
  fail: { light: ["#7a1410", "#c8453b"], dark: ["#ffd9d4", "#b83a31"] },
  undecided: { light: ["#3c4a68", "#dfe4ee"], dark: ["#c3cde4", "#333d54"] },
  warn: { light: ["#8a5200", "#ffe2ad"], dark: ["#ffd08a", "#5c3c0a"] },
  pass: { light: ["#1f6b4a", "#d9efe2"], dark: ["#8fd6b3", "#1d4634"] },
};

/** Each kind has a pattern of its own, so that it is known without colour. */
const PATTERNS: Readonly<Record<Kind, string>> = {
  fail: '<path class="ink-fail" d="M0 8L8 0M0 0L8 8" stroke-width="1.2"/>',
  undecided: '<circle class="dot-undecided" cx="4" cy="4" r="1.4"/>',
  warn: '<path class="ink-warn" d="M-2 2L2 -2M0 8L8 0M6 10L10 6" stroke-width="1.6"/>',
  pass: "",
};

const KINDS = Object.keys(PATTERNS) as readonly Kind[];

function colours(page: "light" | "dark"): string {
  return KINDS.map((kind) => {
    const [ink, ground] = COLOURS[kind][page];
    return `.ground-${kind}{fill:${ground}}.ink-${kind}{stroke:${ink}}.dot-${kind}{fill:${ink}}`;
  }).join("");
}

const LIGHT = `.page{fill:#ffffff}.halo{stroke:#ffffff}text{fill:#1b1f24}.quiet{fill:#57606a}.grid{stroke:#d0d7de}.axis,.edge{stroke:#57606a}.force{stroke:#1b1f24}${colours("light")}`;
const DARK = `.page{fill:#14181d}.halo{stroke:#14181d}text{fill:#e6edf3}.quiet{fill:#9aa5b1}.grid{stroke:#30363d}.axis,.edge{stroke:#9aa5b1}.force{stroke:#e6edf3}${colours("dark")}`;

/** Styles and patterns; the page of the reader decides between light and dark. */
export function chartStyle(): string {
  const patterns = KINDS.map(
    (kind) =>
      `<pattern id="of-${kind}" width="8" height="8" patternUnits="userSpaceOnUse">` +
      `<rect class="ground-${kind}" width="8" height="8"/>${PATTERNS[kind]}</pattern>`,
  );
  const shared =
    "text{font:13px system-ui,'Segoe UI','DejaVu Sans',sans-serif}.title{font-size:17px;font-weight:600}" +
    ".heading{font-weight:600}.small{font-size:11.5px}.edge,.axis,.grid,.force,.halo{fill:none}.halo{stroke-width:5}" +
    ".force{stroke-width:2;stroke-dasharray:7 4}";
  return `<style>${shared}${LIGHT}@media(prefers-color-scheme:dark){${DARK}}</style>\n<defs>${patterns.join("")}</defs>\n`;
}
