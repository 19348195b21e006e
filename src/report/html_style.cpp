#include "report/html_style.h"

namespace sudsmark::report {

const std::string_view page_style = R"css(
:root {
  --paper: #fbfcfb; --ink: #1c2325; --soft: #55605f; --line: #c6cfcc; --wash: #e3ece9;
  --kept: #1e5b51; --broken: #96281a; --maybe: #6f4d08; --link: #1b4f63;
  color-scheme: light dark;
}
@media screen and (prefers-color-scheme: dark) {
  :root {
    --paper: #15191a; --ink: #e5eae8; --soft: #a7b3b0; --line: #3c4748; --wash: #26393a;
    --kept: #87c9bb; --broken: #f3a192; --maybe: #e0bb75; --link: #9fcbdc;
  }
}
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; text-size-adjust: 100%; }
body {
  margin: 0; padding: 0 clamp(1rem, 4vw, 3rem) 3rem; background: var(--paper); color: var(--ink);
  font: 1.0625rem/1.5 Charter, "Bitstream Charter", "Sitka Text", Cambria, "Liberation Serif",
    "Noto Serif", serif;
  font-size-adjust: 0.45;  /* letters of one height, and lines of like length, in any font */
  font-variant-numeric: lining-nums; overflow-wrap: anywhere; hyphens: manual;
}
body > header, main, body > footer { max-width: 64rem; margin-inline: auto; }
a { color: var(--link); text-decoration-thickness: 1px; text-underline-offset: 0.15em; }
a:focus-visible { outline: 2px solid var(--link); outline-offset: 2px; }
code { font: 0.88em/1.4 "Liberation Mono", Menlo, Consolas, monospace; font-size-adjust: 0.53; }
h1, h2, h3, h4 { font-weight: 400; line-height: 1.2; text-wrap: balance; }
b { font-weight: 700; }
small { display: block; font-size: 0.84em; line-height: 1.35; color: var(--soft); }
.unseen { position: absolute; }

.masthead {
  display: flex; flex-wrap: wrap; justify-content: space-between; gap: 0 2rem;
  padding: 0.9rem 0 0.4rem;
  border-bottom: 3px double var(--ink); font-size: 0.9rem; letter-spacing: 0.04em;
}
.masthead p { margin: 0; }
.head { padding-top: 1.6rem; }
.head h1, .head h2, main > h1 { margin: 0; font-size: clamp(1.9rem, 1.2rem + 3vw, 2.9rem); }
main > h1 { padding-top: 1.6rem; }
.of { margin: 0.35rem 0 0; color: var(--soft); font-size: 0.92rem; }
.of time { white-space: nowrap; }
.card {
  display: grid; grid-template-columns: repeat(auto-fill, minmax(9.5rem, 1fr)); gap: 0 1.4rem;
  margin: 1.3rem 0 0;
}
.card > div { border-top: 1px solid var(--line); padding: 0.3rem 0 0.45rem; }
.card dt { font-size: 0.8rem; color: var(--soft); }
.card dd { margin: 0; }
.card dd small { display: inline; }
.verdict { margin: 1.6rem 0 0; max-width: 34em; font-size: 1.4rem; line-height: 1.36; }
.tally {
  display: flex; flex-wrap: wrap; gap: 0.2rem 1.5rem; margin: 0.9rem 0 0; padding: 0;
  list-style: none;
}

.mark {
  width: 0.85em; height: 0.85em; margin-right: 0.35em; vertical-align: -0.06em;
  overflow: visible;
}
.mark .ring { fill: none; stroke: currentColor; stroke-width: 1.5; }
.mark .solid { fill: currentColor; }
.mark .kept { fill: var(--kept); }
.mark .maybe { fill: var(--maybe); }
.mark .cross { stroke: var(--broken); stroke-width: 2.6; fill: none; }
.mark .edge { fill: none; stroke: currentColor; stroke-width: 1.4; }
.mark .bar { stroke: currentColor; stroke-width: 1.6; fill: none; }

.strip {
  display: grid; grid-template-columns: repeat(auto-fill, minmax(min(13rem, 100%), 1fr));
  gap: 0.9rem 2rem; margin: 0.2rem 0 0; padding: 0; list-style: none;
}
.strip p { margin: 0; }
.strip .name { font-size: 0.92rem; color: var(--soft); }
.strip .scale { margin: 0.15rem 0 0.1rem; }
.strip small { display: inline; }

section { margin-top: 2.6rem; border-top: 1px solid var(--ink); padding-top: 0.7rem; }
section h2, section h3 { margin: 0 0 0.55rem; }
section > h2, .sheet section > h3 { font-size: 1.2rem; font-style: italic; }
.body > h3, .body > h4 { margin: 1.5rem 0 0.3rem; font-size: 1.05rem; }
.body > ol { margin: 0; padding-left: 1.4rem; }
.body > p { max-width: 40rem; margin: 0.2rem 0 1rem; }
.problems ul { margin: 0.6rem 0 0; padding-left: 1.2rem; }
.findings { margin: 0; padding: 0; list-style: none; }
.finding { padding: 0.85rem 0; border-bottom: 1px solid var(--line); max-width: 46rem; }
.finding:first-child { padding-top: 0.2rem; }
.finding:last-child { border-bottom: 0; }
.finding p { margin: 0.3rem 0 0; }
.finding .what { margin: 0; font-size: 1.1rem; line-height: 1.42; }
.finding .why { color: var(--soft); }
.finding .where { font-size: 0.86rem; color: var(--soft); }
.finding .scale { margin: 0.5rem 0 0.2rem; }
.decides { margin: 0.3rem 0 0; padding-left: 1.3rem; }
.decides li { padding: 0.1rem 0; }
details { font-size: 0.92rem; color: var(--soft); }
details p { margin: 0.1rem 0 0.3rem; }
summary { width: fit-content; color: var(--link); cursor: pointer; }
summary:focus-visible { outline: 2px solid var(--link); outline-offset: 2px; }
.refs { font-size: 0.84em; white-space: normal; }
.fold { padding: 0.3rem 0; border-bottom: 1px solid var(--line); color: inherit; font-size: 1rem; }
.fold > table, .fold > ul { margin-top: 0.6rem; }
.on-this-page { margin: 1.3rem 0 0; font-size: 0.94rem; }
.on-this-page b { font-weight: 400; font-style: italic; }
.on-this-page ul {
  display: flex; flex-wrap: wrap; gap: 0.1rem 1.3rem; margin: 0.1rem 0 0; padding: 0;
  list-style: none;
}
.frame { margin: 1.4rem 0 0; border: 3px double var(--broken); padding: 0.6rem 1rem; }
.frame p, .frame ul { margin: 0.1rem 0; max-width: 46rem; }
.to-print {
  margin: 0.2rem 0 1rem; border: 1px solid var(--ink); padding: 0.9rem 1.1rem; max-width: 46rem;
  font-size: 1.15rem;
}
.plain { margin: 0.3rem 0 1rem; padding-left: 1.2rem; max-width: 46rem; }
.plain li { padding: 0.18rem 0; }
.answer { font-size: 1.2rem; }
pre {
  margin: 0.4rem 0; border-left: 3px solid var(--line); padding: 0.3rem 0 0.3rem 0.9rem;
  font: 0.88em/1.45 "Liberation Mono", Menlo, Consolas, monospace; white-space: pre-wrap;
  font-size-adjust: 0.53;
}
pre span { display: block; }
.swaps th[scope="row"] { width: 20%; }
.swaps td:nth-child(2) { width: 26%; }
.swaps p { margin: 0 0 0.35rem; }
.measures caption, .fold caption {
  position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%);
}
.run-in { margin: 0; padding: 0; list-style: none; font-size: 0.94rem; }
.run-in li { display: inline; }
.run-in li:not(:last-child)::after { content: "\A0\B7 "; color: var(--soft); }
.sources { margin: 0; padding-left: 2.2rem; }
.sources li { padding: 0.12rem 0; }
.sources li:target { background: var(--wash); }
.key { font-size: 0.94rem; color: var(--soft); }

table {
  width: 100%; border-collapse: collapse; font-variant-numeric: lining-nums tabular-nums;
  font-size: 0.95rem; line-height: 1.38;
}
table + table, .figures + table, .verdict + table { margin-top: 1.8rem; }
caption { padding: 0 0 0.4rem; text-align: left; font-style: italic; }
th, td {
  padding: 0.42rem 1rem 0.42rem 0; border-bottom: 1px solid var(--line); text-align: left;
  vertical-align: top; font-weight: 400;
}
th, td { overflow-wrap: break-word; }
th bdi, td bdi { overflow-wrap: anywhere; }
th:last-child, td:last-child { padding-right: 0; }
thead th { border-bottom: 1px solid var(--ink); color: var(--soft); font-size: 0.84rem; }
.stack .figure { white-space: nowrap; }
.stack .code { white-space: nowrap; }
.pairs th[scope="row"] { width: 44%; }
.contents { table-layout: fixed; }
.contents th:nth-child(1), .contents th:nth-child(2) { width: 22%; }
.contents th:nth-child(3) { width: 14%; }
.contents th:nth-child(4) { width: 20%; }
.contents th:nth-child(6) { width: 7%; }
.measures { table-layout: fixed; }
.measures th:first-child { width: 30%; }
.measures th:nth-child(2) { width: 18%; }
.measures .figure { white-space: normal; }
.scales th[scope="row"] { width: 34%; }
.scales td:nth-child(2) { width: 32%; }

.figures {
  display: grid; grid-template-columns: repeat(auto-fit, minmax(min(20rem, 100%), 1fr));
  gap: 1.6rem 2.4rem; margin-top: 0.6rem; align-items: start;
}
figure { margin: 0; max-width: 25rem; }
figcaption { margin-top: 0.35rem; font-size: 0.9rem; line-height: 1.4; color: var(--soft); }
svg text {
  font: 11px Charter, "Bitstream Charter", "Sitka Text", Cambria, "Liberation Serif", "Noto Serif",
    serif;
  font-variant-numeric: lining-nums tabular-nums; fill: var(--ink);
  font-size-adjust: 0.45;
}
.scale, .bars, .chart { display: block; width: 100%; height: auto; }
.scale { max-width: 22rem; overflow: visible; }
.scale .allowed { fill: var(--wash); }
.scale .axis, .chart .axis { stroke: var(--soft); stroke-width: 1; }
.scale .limit { stroke: var(--ink); stroke-width: 1.4; }
.scale .measured { fill: var(--kept); }
.scale .end { stroke: var(--ink); stroke-width: 1.2; }
.scale .point { fill: var(--kept); stroke: var(--paper); stroke-width: 1; }
.scale .point.outside { fill: var(--broken); }
.scale .outside:not(.point) { fill: url(#hatch-outside); stroke: var(--broken); stroke-width: 1; }
.maybe .point.outside { fill: var(--maybe); }
.maybe .outside:not(.point) { fill: url(#hatch-maybe); stroke: var(--maybe); }
.quiet .point.outside { fill: var(--paper); stroke: var(--ink); stroke-width: 1.4; }
.quiet .outside:not(.point) { fill: url(#hatch-quiet); stroke: var(--soft); }
.hatch-ground, .hatch-outside-ground, .hatch-maybe-ground, .hatch-quiet-ground {
  fill: var(--paper);
}
.hatch-stroke { stroke: var(--kept); stroke-width: 2; }
.hatch-outside-stroke { stroke: var(--broken); stroke-width: 2.4; }
.hatch-maybe-stroke { stroke: var(--maybe); stroke-width: 2.2; }
.hatch-quiet-stroke { stroke: var(--soft); stroke-width: 1.6; }
.bars .track { fill: var(--line); }
.bars .certain { fill: var(--kept); }
.bars .perhaps { fill: url(#hatch); stroke: var(--kept); stroke-width: 0.7; }
.chart .grid { stroke: var(--line); stroke-width: 0.7; }
.chart .tick { stroke: var(--soft); stroke-width: 1; }
.chart .axis-name { fill: var(--soft); }
.chart .now { fill: var(--wash); }
.chart .band { fill: var(--kept); fill-opacity: 0.16; }
.chart .curve { fill: none; stroke: var(--kept); stroke-width: 1.6; }
.chart .dashed { stroke-dasharray: 5 3; }
.chart .ring { fill: none; stroke: var(--ink); stroke-width: 1.2; }
.chart .limit { stroke: var(--broken); stroke-width: 1.2; }
.chart .aside { stroke: var(--soft); stroke-width: 1; stroke-dasharray: 1.5 3; }
.chart text {
  paint-order: stroke; stroke: var(--paper); stroke-width: 3px; stroke-linejoin: round;
}
.map { display: block; width: 100%; max-width: 34rem; height: auto; }
.map .sound { fill: var(--wash); }
.map .frame { fill: none; stroke: var(--soft); stroke-width: 1; }
.map .border { fill: none; stroke: var(--broken); stroke-width: 1.8; }
.map .full { stroke: var(--soft); stroke-dasharray: 4 3; }
.map .point { fill: var(--kept); stroke: var(--paper); stroke-width: 1; }
.map text {
  paint-order: stroke; stroke: var(--paper); stroke-width: 3px; stroke-linejoin: round;
}
.wide { max-width: 34rem; }

.sides {
  display: grid; grid-template-columns: repeat(auto-fit, minmax(min(17rem, 100%), 1fr));
  gap: 0.2rem 2rem;
}
.side p { font-size: 0.92rem; }
.bench h1, .bench h2 { margin: 1.6rem 0 0.4rem; }
.bench h1 { font-size: clamp(1.7rem, 1.2rem + 2vw, 2.4rem); }
.bench h2, .bench h3 {
  border-top: 1px solid var(--ink); padding-top: 0.6rem; font-size: 1.2rem; font-style: italic;
}
.bench p { max-width: 46rem; margin: 0.4rem 0; }
.entries {
  display: grid; grid-template-columns: minmax(5.5rem, 9rem) minmax(0, 1fr); gap: 0.25rem 1rem;
  margin: 0.6rem 0; max-width: 52rem;
}
.entries dt { grid-column: 1; color: var(--soft); }
.entries dd { grid-column: 2; margin: 0; }
.weighings { max-width: 52rem; table-layout: fixed; }
.weighings th:first-child { width: 2.2rem; }
.weighings thead th:nth-child(3) { width: 15%; text-align: right; }
.weighings thead th:nth-child(4) { width: 13%; }
.weighings thead th:nth-child(5), .weighings thead th:nth-child(6) { width: 19%; }
.blank {
  display: inline-block; width: 100%; height: 1.2em; border-bottom: 1px solid var(--soft);
  vertical-align: bottom;
}
.weighings .mass { text-align: right; white-space: nowrap; }
.weighings .total th, .weighings .total td { border-bottom: 1px solid var(--ink); }
.box {
  display: inline-block; width: 0.95em; height: 0.95em; border: 1.3px solid currentColor;
  vertical-align: -0.12em;
}
.dossier li { break-inside: avoid; margin-top: 0.6rem; }
.dossier li p { margin: 0.1rem 0; }
.dossier .answer { border-bottom: 1px solid var(--line); color: var(--soft); max-width: 34rem; }
.bench + .bench { margin-top: 4rem; border-top: 3px double var(--ink); }

.formulas { margin: 1.4rem 0 0; padding: 0; list-style: none; }
.formulas li { padding: 0.6rem 0; border-top: 1px solid var(--line); }
.formulas a { font-size: 1.15rem; }
.formulas p { margin: 0.1rem 0 0; }
.formulas .tally { margin: 0.15rem 0 0; font-size: 0.92rem; }
.formulas .tally li { padding: 0; border: 0; }
.sheet + .sheet, .formulas + .sheet, .problems + .sheet {
  margin-top: 4rem; border-top: 3px double var(--ink);
}
.signing { display: none; }
.foot {
  margin-top: 3rem; border-top: 3px double var(--ink); padding-top: 0.8rem; font-size: 0.92rem;
}
.foot p { margin: 0 0 0.4rem; max-width: 46rem; }
.foot .reminder { font-size: 1.05rem; }

@media screen and (min-width: 44.01rem) {
  .stack td { min-width: 5.6rem; }
  .stack th[scope="row"] { min-width: 7rem; }
}
@media screen and (min-width: 62rem) {
  .sheet > section { display: grid; grid-template-columns: 10.5rem minmax(0, 1fr); gap: 0 2rem; }
}
@media screen and (max-width: 44rem) {
  body { font-size: 1rem; }
  .verdict { font-size: 1.22rem; }
  table, tbody, tr, th, td, caption { display: block; }
  thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
  tr { padding: 0.55rem 0; border-bottom: 1px solid var(--line); }
  th, td { padding: 0.05rem 0; border: 0; }
  th[scope="row"] { font-weight: 700; }
  th[scope="row"] small { font-weight: 400; }
  .scales th[scope="row"], .scales td:nth-child(2), .measures th[scope="row"], .measures .figure,
  .swaps th[scope="row"], .swaps td:nth-child(2) {
    width: auto;
  }
  .entries { grid-template-columns: minmax(0, 1fr); gap: 0; }
  .entries dt { margin-top: 0.5rem; }
  .entries dd { grid-column: 1; }
  .weighings { display: table; table-layout: auto; }
  .weighings th:nth-child(n+5), .weighings td:nth-child(n+5) { display: none; }
  .weighings thead th:nth-child(n+3) { width: auto; }
  .weighings thead { display: table-header-group; position: static; clip-path: none; }
  .weighings tbody { display: table-row-group; }
  .weighings tr { display: table-row; }
  .weighings th, .weighings td {
    display: table-cell; padding: 0.4rem 0.5rem 0.4rem 0; border-bottom: 1px solid var(--line);
    font-weight: 400;
  }
  .stack td { display: grid; grid-template-columns: 7.5rem minmax(0, 1fr); gap: 0 0.6rem; }
  .stack td::before { content: attr(data-label); color: var(--soft); }
  .stack td:empty { display: none; }
  .stack .figure, .stack .code { white-space: normal; }
  .contents th[scope="row"] { width: auto; }
  .pairs tr { display: grid; grid-template-columns: 1fr 1fr; gap: 0 1rem; }
  .pairs th[scope="row"] { grid-column: 1 / -1; width: auto; }
  .pairs td { grid-template-columns: auto minmax(0, 1fr); }
}
@media print {
  @page {
    margin: 15mm 15mm 17mm;
    font: 8.5pt Charter, "Bitstream Charter", "Sitka Text", Cambria, "Liberation Serif",
      "Noto Serif", serif;
    @bottom-left { content: "Screening checks, not a safety assessment"; }
    @bottom-right { content: counter(page) " of " counter(pages); }
  }
  html { font-size: 9.5pt; }
  body { padding: 0; font-size: 1rem; line-height: 1.4; }
  body > header, main, body > footer { max-width: none; }
  a { color: inherit; text-decoration: none; }
  .masthead nav { display: none; }
  .masthead { padding-top: 0; }
  .head h1, .head h2, main > h1 { font-size: 22pt; }
  .verdict { font-size: 1.35rem; max-width: none; }
  .card { grid-template-columns: repeat(6, 1fr); gap: 0 1rem; margin-top: 0.8rem; }
  section { margin-top: 11pt; }
  section > h2, .sheet section > h3 { font-size: 12.5pt; }
  h1, h2, h3, h4, caption { break-after: avoid; }
  .strip { grid-template-columns: repeat(4, 1fr); gap: 2mm 5mm; }
  tr, .finding, figure, .card > div, .strip li, .formulas li, .sources li, .decides li { break-inside: avoid; }
  .finding.long:has(.decides > li:nth-child(4)) { break-inside: auto; }
  .finding.long .what, .key { break-after: avoid; }
  .finding .what { break-inside: avoid; }
  .key { break-inside: avoid; }
  thead { display: table-header-group; }
  thead, tbody > tr:first-child { break-before: avoid; }
  thead { break-after: avoid; }
  p { orphans: 3; widows: 3; }
  .body { break-before: avoid; }
  table { font-size: 0.9rem; line-height: 1.3; }
  th, td { padding-top: 0.25rem; padding-bottom: 0.25rem; }
  .run-in { font-size: 0.88rem; }
  .body > p, .bench p { max-width: none; }
  .on-this-page { display: none; }
  details:not(.fold) > summary { display: none; }
  details:not(.fold)::details-content {
    content-visibility: visible; display: block; height: auto;
  }
  .fold > summary { color: inherit; list-style: none; }
  .fold { padding: 0.15rem 0; }
  .fold:not([open]) { display: inline-block; border: 0; padding: 0 1.4rem 0 0; font-size: 0.9rem; }
  section[id$="-figures"]:not(:has([open])), section[id$="-rest"]:not(:has([open])) {
    display: none;
  }
  .behind { display: none; }
  figure:has(.bars) { display: none; }
  .chart { max-width: 66mm; }
  .finding { display: flow-root; padding: 0.5rem 0; }
  .finding > .scale { float: right; width: 62mm; margin: 0 0 1mm 6mm; }
  .sources { columns: 2; column-gap: 8mm; font-size: 0.82rem; line-height: 1.3; }
  .decides details p { margin: 0; }
  .weighings, .entries { max-width: none; }
  .entries { break-inside: avoid; }
  .figures { grid-template-columns: 1fr 1fr; }
  .stack .figure { white-space: normal; }
  .finding { max-width: none; }
  .entries dd { break-inside: avoid; }
  .entries:has(> dt:nth-of-type(9)) { break-inside: auto; }
  p:has(+ .entries) { break-after: avoid; }
  .bench h2, .bench h3 { font-size: 12pt; }
  .weighings { font-size: 1rem; }
  .weighings .total { break-before: avoid; }
  .new-page { break-before: page; }
  .bench + .bench { break-before: page; border-top: 0; margin-top: 0; }
  .sheet + .sheet, .formulas + .sheet, .problems + .sheet {
    break-before: page; border-top: 0; margin-top: 0;
  }
  .signing {
    display: grid; grid-template-columns: 3fr 1fr 3fr 1fr; gap: 0 6mm; margin-top: 11mm;
    break-inside: avoid;
  }
  .signing p {
    margin: 0; border-top: 0.6pt solid var(--ink); padding-top: 1.5mm; font-size: 8.5pt;
  }
  .foot { margin-top: 14pt; }
  .foot p { max-width: none; }
  .foot p:not(.reminder) { font-size: 0.84rem; }
  svg text { font-size: 10.5px; }
  .strip svg text { font-size: 15px; }  /* drawn at half its size */
}
)css";

}  // namespace sudsmark::report
