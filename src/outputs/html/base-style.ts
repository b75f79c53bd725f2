/**
 * What all pages share: ink and paper for a light and a dark screen, tables, marks, and paper of either size. Colour is
 * never the only sign: each outcome has a mark and a word of its own.
 */
export const BASE_STYLE = `
:root{color-scheme:light dark;--ink:#1b1f24;--quiet:#57606a;--paper:#fff;--raised:#f4f6f8;--line:#c9d1d9;--link:#0b4f8a;
--fail:#7a1410;--warn:#7a4a00;--pass:#1f5b40;--open:#3c4a68;--focus:#0b4f8a}
@media (prefers-color-scheme:dark){:root{--ink:#e6edf3;--quiet:#a3adb8;--paper:#14181d;--raised:#1d232a;--line:#3a424c;
--link:#8cc3f5;--fail:#ffb4ab;--warn:#ffd08a;--pass:#8fd6b3;--open:#c3cde4;--focus:#8cc3f5}}
*{box-sizing:border-box}
body{margin:0 auto;max-width:76rem;padding:1.5rem;background:var(--paper);color:var(--ink);
font:1rem/1.5 system-ui,"Segoe UI","DejaVu Sans",sans-serif;overflow-wrap:break-word}
h1{font-size:1.7rem;line-height:1.25}h2{font-size:1.3rem;margin-top:2.2rem}h3{font-size:1.08rem}
a{color:var(--link)}
:focus-visible{outline:3px solid var(--focus);outline-offset:2px}
.skip{position:absolute;left:-99rem}.skip:focus{position:static}
.quiet{color:var(--quiet)}
.fail{color:var(--fail)}.warn{color:var(--warn)}.pass{color:var(--pass)}.undecided{color:var(--open)}
.mark{white-space:nowrap;font-weight:600}
table{border-collapse:collapse;width:100%;margin:.8rem 0}
caption{text-align:left;font-weight:600;padding:.3rem 0}
th,td{border-bottom:1px solid var(--line);padding:.35rem .6rem;text-align:left;vertical-align:top}
th{background:var(--raised)}
td.number,th.number{text-align:right;font-variant-numeric:tabular-nums}
.wide{overflow-x:auto}
.cautions{border:2px solid var(--ink);padding:.4rem 1.2rem;margin:1.2rem 0}
pre,code{font-family:ui-monospace,"DejaVu Sans Mono",monospace;font-size:.92em}
pre{white-space:pre-wrap;background:var(--raised);padding:.6rem}
.paper-only{display:none}
@page{margin:16mm 14mm 18mm}
@media print{:root{--ink:#000;--quiet:#333;--paper:#fff;--raised:#fff;--line:#777;--link:#000;--fail:#000;--warn:#000;
--pass:#000;--open:#000}
body{max-width:none;padding:0;font-size:10pt}.skip,.screen-only{display:none!important}.paper-only{display:revert}
tr,figure,.together{break-inside:avoid}thead{display:table-header-group}h1,h2,h3,caption{break-after:avoid}}
`.trim();
