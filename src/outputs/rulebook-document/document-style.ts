/**
 * Style of the document beside what all pages share. On paper folded parts stand open, and each page has the book and
 * its number.
 *
 * @param runningHead - text on top of every printed page
 */
export function documentStyle(runningHead: string): string {
  return `
main,header,nav{max-width:52rem;margin:0 auto}
h4{font-size:1.02rem;margin:2rem 0 .2rem;border-top:2px solid var(--line);padding-top:.7rem}h4+p{margin-top:0}
h2{border-bottom:2px solid var(--ink);padding-bottom:.2rem}
nav ul{list-style:none;padding-left:0;margin:.2rem 0}nav ul ul{padding-left:1.4rem;columns:2;column-gap:2rem}
dl{margin:.4rem 0}dl>div{display:grid;grid-template-columns:8.5rem minmax(0,1fr);gap:0 1rem;padding:.25rem 0}
dt{font-weight:600;color:var(--quiet)}dd{margin:0}dd>p,dd>ul{margin:0 0 .3rem}dd>ul{padding-left:1.1rem}
td,th{overflow-wrap:break-word}tbody th{font-weight:400;background:none}thead th{vertical-align:bottom}
table.cases{font-size:.88em}table.cases td,table.cases th{padding:.2rem .5rem}
table.cases caption{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
code{overflow-wrap:anywhere}th code{overflow-wrap:break-word}
.rules th:nth-child(1){width:23%}.rules th:nth-child(3){width:11%}.rules th:nth-child(4){width:16%}.rules th:nth-child(5){width:12%}
.cases th:nth-child(1){width:27%}.cases th:nth-child(3){width:28%}
.facts th:nth-child(1){width:45%}.facts th:nth-child(3){width:21%}
.computed th:nth-child(1){width:25%}.computed th:nth-child(2){width:16%}.computed th:nth-child(4){width:21%}
.index th:nth-child(1){width:29%}.index th:nth-child(3){width:33%}
details{margin:.4rem 0 .4rem 9.5rem;position:relative}summary{cursor:pointer;font-weight:600;color:var(--quiet)}
figure{margin:.4rem 0;overflow-x:auto}figcaption{color:var(--quiet)}figure p{margin:.1rem 0}
.hatchings{position:absolute}
.bands{display:block;width:100%;min-width:28rem;max-width:41rem;height:auto}
.bands text{font-size:12px;fill:var(--ink)}.bands .zone{font-weight:600;font-size:13px}
.bands .place{fill:var(--quiet)}
.bands .zone.fail{fill:var(--fail)}.bands .zone.warn{fill:var(--warn)}.bands .zone.pass{fill:var(--pass)}
.stroke-fail{stroke:var(--fail);fill:none}.stroke-warn{stroke:var(--warn);fill:none}
.axis,.border{stroke:var(--ink);fill:none;stroke-width:1.2}
.choices{list-style:none;padding-left:0;margin:.2rem 0}
@media (max-width:40rem){dl>div{grid-template-columns:1fr}details{margin-left:0}nav ul ul{columns:1}}
@page{margin:18mm 15mm 17mm;@top-left{content:${cssText(runningHead)};font:8pt sans-serif}
@bottom-right{content:"page " counter(page) " of " counter(pages);font:8pt sans-serif}}
@media print{main,header,nav{max-width:none}body{font-size:9.2pt;line-height:1.34}
a{text-decoration:none}p{margin:.45em 0}h2{margin-top:1.4em}h3{margin:1.2em 0 .4em}h4{margin:1em 0 .1em;padding-top:.5em}
#rules,#annex-facts,#annex-index{break-before:page}.cautions{break-inside:avoid}
details{margin:.2rem 0 0}details::details-content{content-visibility:visible;block-size:auto}summary{list-style:none}
nav{font-size:8.6pt}.wide,figure{overflow:visible}table{font-size:8.6pt;margin:.3rem 0 .6rem}td,th{padding:.12rem .4rem}
table.cases{font-size:7.8pt;line-height:1.25}table.cases td,table.cases th{padding:.06rem .4rem}
dl>div{grid-template-columns:7rem minmax(0,1fr);padding:.05rem 0}dd>p,dd>ul{margin:0 0 .15rem}
.bands{min-width:0;max-width:150mm}dl>div,summary{break-inside:avoid}details>p{break-after:avoid}h4,h4+p,summary,dl>div:nth-child(-n+2){break-after:avoid}
p,li{orphans:2;widows:2}}
`.trim();
}

/** A text as a string of CSS: all but letters and digits by their numbers, so that no text ends string or element. */
function cssText(text: string): string {
  const signs = [...text].map((sign) =>
    /[A-Za-z0-9]/.test(sign) ? sign : `\\${(sign.codePointAt(0) ?? 0xfffd).toString(16).padStart(6, "0")}`,
  );
  return `"${signs.join("")}"`;
}
