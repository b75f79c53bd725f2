/** Rules of style of work packs beside those that all pages share. */
export const PACK_STYLE = `
.steps th:first-child{width:2.2rem}
.steps th:last-child{width:3.2rem}
.steps td.done{text-align:center}
.steps .values{width:50%}
.values ul{margin:0;padding:0;list-style:none}
.steps .values li{display:inline-block;margin-right:.8rem;vertical-align:top}
.source{color:var(--quiet);font-size:.85em}
.done .blank{min-width:3rem}
.blank{display:inline-block;min-width:7rem;border-bottom:1px solid var(--ink);height:1.1em;vertical-align:bottom}
td.box{border:1px solid var(--ink);height:2.1rem}
.records{display:grid;grid-template-columns:minmax(0,8fr) minmax(0,5fr);gap:0 1rem;align-items:start}
td.short{white-space:nowrap}
.records th.box{width:6rem}
.box .unit{float:right;color:var(--quiet)}
.sign{width:13rem}
.tick{font-size:1.3em;line-height:1}
tr.part td{background:var(--raised);font-weight:600}
tr.hold td{border-left:4px solid var(--ink)}
tr.hold td~td{border-left:0}
.facts{display:grid;grid-template-columns:max-content 1fr;gap:.15rem 1rem;margin:.8rem 0}
.facts dt{font-weight:600}.facts dd{margin:0;overflow-wrap:anywhere}
.narrow{width:auto;min-width:50%}
.notice{border-left:4px solid var(--ink);padding:.2rem .9rem;margin:.8rem 0}
@page{margin:12mm 12mm 15mm;@bottom-right{content:"page " counter(page) " of " counter(pages);font:8pt system-ui,"DejaVu Sans",sans-serif}
@bottom-left{content:"a screening, not a permission";font:8pt system-ui,"DejaVu Sans",sans-serif}}
@media print{.point{break-before:page}.point h2{margin-top:0;margin-bottom:.4rem}.point>p{margin:.3rem 0}td,th{padding:.16rem .4rem}
.facts,.notice,.cautions li{break-inside:avoid}body{font-size:9pt;line-height:1.32}td.box{height:1.5rem}.sign{width:11rem}tr.part{break-after:avoid}}
`.trim();
