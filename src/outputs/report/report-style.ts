/** Grounds of patterns, light and dark; ink is that of the words beside them. */
const GROUNDS = {
  light: { fail: "#f0b3ad", warn: "#ffe2ad", undecided: "#dfe4ee", pass: "#d9efe2", plain: "#9fb4c7" },
  dark: { fail: "#6e231d", warn: "#5c3c0a", undecided: "#333d54", pass: "#1d4634", plain: "#4d6478" },
} as const;

function grounds(page: keyof typeof GROUNDS): string {
  return Object.entries(GROUNDS[page])
    .map(([kind, colour]) => `--ground-${kind}:${colour}`)
    .join(";");
}

/** What the report has beside the style of all pages. */
export const REPORT_STYLE = `
:root{${grounds("light")}}
@media (prefers-color-scheme:dark){:root{${grounds("dark")}}}
h1{margin:.2rem 0 .6rem}h2{border-bottom:2px solid var(--ink);padding-bottom:.2rem}
header .cautions{font-weight:600}
nav ol{columns:18rem;padding-left:1.6rem;margin:.6rem 0}
.patterns{position:absolute}
figure{margin:.8rem 0}
.chart{max-width:100%;height:auto;display:block}.chart.large{max-width:46rem;width:100%;min-width:34rem}
.wide .chart{max-width:none}figure{overflow-x:auto}
.wide th[scope=row]{min-width:13rem}
.chart text{font:13px system-ui,"Segoe UI","DejaVu Sans",sans-serif;fill:var(--ink)}.chart .quiet{fill:var(--quiet)}
.chart path{fill:none}.grid{stroke:var(--line)}.axis{stroke:var(--quiet)}.force{stroke:var(--ink);stroke-width:2}
.edge{stroke:var(--quiet);stroke-width:1}.ground-plain{fill:var(--ground-plain)}
.ground-fail{fill:var(--ground-fail)}.ground-warn{fill:var(--ground-warn)}.ground-undecided{fill:var(--ground-undecided)}
.ground-pass{fill:var(--ground-pass)}
.ink-fail{stroke:var(--fail)}.ink-warn{stroke:var(--warn)}.dot-undecided{fill:var(--open)}
table.narrow{width:auto;min-width:min(24rem,100%);max-width:100%}
tbody th{font-weight:400;background:none}
.drawn{min-width:11rem}
.ends{display:flex;justify-content:space-between;width:300px;font-weight:400}
.rule{font-family:ui-monospace,"DejaVu Sans Mono",monospace;font-size:.85em;font-weight:400}
.cell{font-family:ui-monospace,"DejaVu Sans Mono",monospace;font-size:.88em;overflow-wrap:anywhere}
.line{display:block}.lines{white-space:pre-line}
.notes>div{display:grid;grid-template-columns:minmax(8rem,14rem) 1fr;column-gap:1rem}
.notes dt,.finding dt{color:var(--quiet)}.notes dd,.finding dd{margin:0;grid-column:2;overflow-wrap:anywhere}
summary{cursor:pointer;padding:.15rem 0}
.controls{display:flex;flex-wrap:wrap;gap:.8rem 1.2rem;align-items:end;border:1px solid var(--line);padding:.8rem 1rem;
background:var(--raised)}
.controls fieldset{border:0;padding:0;margin:0;flex-basis:100%;display:flex;flex-wrap:wrap;gap:.2rem 1.2rem}
.controls legend,.field{color:var(--quiet);font-size:.92rem}
.field{display:flex;flex-direction:column;gap:.15rem;flex:1 1 14rem;min-width:0}
.controls input[type=search],.controls select,button{font:inherit;color:var(--ink);background:var(--paper);
border:1px solid var(--quiet);border-radius:3px;padding:.3rem .5rem;min-width:0;max-width:100%}
button{cursor:pointer;padding:.35rem .8rem}
input[type=checkbox]{accent-color:var(--ink);width:1.05rem;height:1.05rem;vertical-align:-.15rem}
.status{font-weight:600;position:sticky;top:0;background:var(--paper);padding:.4rem 0;margin:.6rem 0;z-index:1}
.status:empty{display:none}
.machine{margin:1rem 0}.machine h3{margin:0 0 .2rem;border-bottom:1px solid var(--line)}
@media screen{#list .machine{content-visibility:auto;contain-intrinsic-size:auto 9rem}}
.entries{list-style:none;margin:0;padding:0}
.entries>li{margin:0;padding:.1rem 0}
.verdict{display:inline-block;min-width:7.2rem}
.where{font-weight:600}
.leading{display:block;margin-left:8.5rem;color:var(--quiet)}
.opened{border-left:3px solid var(--line);margin:.3rem 0 1rem .3rem;padding:.1rem 0 .1rem 1rem}
.finding{margin:.6rem 0 1rem}.finding h3,.finding h4{font-size:1rem;margin:.2rem 0}
.finding dl,.opened .notes{margin:.2rem 0}
.finding dl>div,.opened .notes>div{display:grid;grid-template-columns:8rem 1fr;column-gap:1rem}
@media (max-width:40rem){body{padding:1rem}.notes>div,.opened .notes>div,.finding dl>div{display:block;margin-bottom:.3rem}
.leading{margin-left:0}.verdict{min-width:0}}
@media print{.status{position:static}.opened{border-color:#999}details>summary{list-style:none}
.entries>li{border-bottom:1px solid #ccc;padding:.2rem 0}.finding dl>div,.notes>div{break-inside:avoid}
h4,summary{break-after:avoid}body{font-size:9pt}.wide .chart.margins,.ends{width:13rem}.wide .chart.bar{width:8rem}
.drawn{min-width:8.5rem}th,td{padding:.25rem .4rem}details:not([open]):not(.printed){display:none}
.wide{overflow:visible}details.printed::details-content{content-visibility:visible;block-size:auto}
nav,.controls,button{display:none}
.machine,.rules-told{font-size:7.5pt;line-height:1.25}
#list,#group-list,.rules-told{columns:2;column-gap:6mm}
.machine{margin:.5rem 0}.machine h3,.rules-told h3{font-size:9pt}.verdict{min-width:0}.verdict::after{content:":"}.leading{display:none}
.entries>li{padding:.12rem 0}.opened{margin:0 0 .2rem;padding:0 0 0 .5rem;border-left-width:1px}.opened p,.opened .notes{margin:0}
.machine .finding,.rules-told .finding{margin:.15rem 0 .25rem}.finding ul{margin:0;padding-left:1rem}
.machine .finding>*{display:inline;font-size:inherit;margin:0}.machine .finding h4::after{content:": "}
:is(.machine .finding dl,.opened .notes)>div{display:inline;break-inside:auto}
:is(.machine .finding dl,.opened .notes)>div>*{display:inline;white-space:normal}
.machine dt{color:var(--ink);font-style:italic}.machine dt::after{content:": "}.machine dd::after{content:". "}
.machine .finding dl>.to-do{display:block}.machine .finding .said dt{display:none}
#list .of-group dl>:is(.read,.limit,.source,.unknown,.to-do){display:none!important}
th,td{padding:.12rem .35rem;font-size:8pt;line-height:1.25}#reading :is(th,td){padding:.06rem .3rem;font-size:7pt}
@page{margin:12mm 12mm 14mm;@bottom-left{content:"A verdict is a screening, not a permission.";font:8pt sans-serif}
@bottom-right{content:"page " counter(page) " of " counter(pages);font:8pt sans-serif}}
}
`.trim();
