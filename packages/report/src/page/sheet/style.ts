import { darkPalette, lightPalette, paletteRules } from './palette.js';

/** Screens below this many pixels get the narrow drawings. */
const wideFromPx = 720;

/** The whole style sheet of a report: one column of text, light or dark as the reader's screen is set, light on paper. */
export const styleSheet: string = `
:root{color-scheme:light dark;${paletteRules(lightPalette)}}
@media screen and (prefers-color-scheme:dark){:root{${paletteRules(darkPalette)}}}
*{box-sizing:border-box}
body{margin:0;background:var(--paper);color:var(--ink);font:1rem/1.55 system-ui,sans-serif;overflow-wrap:anywhere}
header,main,footer{max-width:54rem;margin:0 auto;padding:0 1.1rem}
header{padding-top:1.6rem}
h1,h2,h3{line-height:1.25;font-family:Georgia,'Times New Roman',serif;font-weight:600;text-wrap:balance}
h1{font-size:1.7rem;margin:0}
h2{font-size:1.3rem;margin:2.6rem 0 .6rem;padding-top:1rem;border-top:2px solid var(--ink)}
h3{font-size:1.05rem;margin:1.4rem 0 .3rem}
p{margin:.5rem 0;max-width:44rem}
.place{color:var(--quiet);margin:.2rem 0 0;max-width:none}
.answer{font-size:1.2rem;line-height:1.45;margin:1.2rem 0}
a{color:var(--link)}
.facts{display:grid;grid-template-columns:repeat(auto-fill,minmax(9.2rem,1fr));gap:.6rem;margin:1.2rem 0}
.facts div{background:var(--panel);padding:.6rem .8rem;border-radius:3px}
.facts dt{color:var(--quiet);font-size:.85rem}
.facts dd{margin:0;font-size:1.25rem;font-weight:600;font-variant-numeric:tabular-nums;line-height:1.3}
.facts dd.long{font-size:1rem;font-weight:400}
.facts dd small{display:block;font-size:.85rem;font-weight:400}
.cautions{list-style:none;margin:.8rem 0;padding:0}
.cautions li{border-left:5px solid var(--alarm);background:var(--panel);padding:.5rem .8rem;margin:.5rem 0;max-width:44rem}
.cautions strong{color:var(--alarm)}
.safety{border:2px solid var(--ink);padding:.8rem 1rem;margin:.8rem 0;max-width:44rem}
figure{margin:1rem 0 1.6rem}
figcaption{color:var(--quiet);font-size:.92rem;max-width:44rem;margin-top:.3rem}
.chart{display:block;width:100%;height:auto;overflow:hidden;font-family:system-ui,sans-serif;font-variant-numeric:tabular-nums}
.chart text{white-space:pre}
.wide{display:none}
.narrow .chart{max-width:34rem}
.key{list-style:none;display:flex;flex-wrap:wrap;gap:.2rem 1.2rem;margin:0 0 .4rem;padding:0;font-size:.9rem}
.swatch{vertical-align:-1px}
.designs{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(100%,15rem),1fr));gap:0 1.4rem}
.designs figure{margin:0}
.designs figcaption{margin:0}
.scroll{overflow-x:auto;margin:.6rem 0;background:linear-gradient(to right,var(--paper) 40%,transparent) 0 0/2.4rem 100% no-repeat local,linear-gradient(to left,var(--paper) 40%,transparent) 100% 0/2.4rem 100% no-repeat local,linear-gradient(to left,color-mix(in srgb,var(--quiet) 55%,transparent),transparent) 100% 0/1rem 100% no-repeat scroll,var(--paper)}
.more{display:none}
table{border-collapse:collapse;font-variant-numeric:tabular-nums;font-size:.92rem;overflow-wrap:normal}
caption{text-align:left;color:var(--quiet);padding-bottom:.3rem}
th,td{padding:.22rem .5rem;text-align:right;white-space:nowrap;border-bottom:1px solid var(--rule)}
th:first-child{text-align:left;padding-left:0}
tbody th{font-weight:400;white-space:normal;min-width:3.2rem;max-width:14rem;overflow-wrap:break-word}
th:first-child{position:sticky;left:0;background:var(--paper)}
thead th{vertical-align:bottom;white-space:normal;max-width:6.2rem;border-bottom:2px solid var(--ink)}
.unit{display:block;color:var(--quiet);font-weight:400;font-size:.9em}
.sum th,.sum td{font-weight:600;border-top:2px solid var(--ink)}
thead th.words{text-align:left}
tbody th,tbody td{vertical-align:top}
td.words{text-align:left;white-space:normal;min-width:9rem;max-width:26rem}
.changes{list-style:none;margin:0;padding:0}
details{margin:.5rem 0}
summary{cursor:pointer;color:var(--link);font-size:.92rem;width:fit-content}
:focus-visible{outline:3px solid var(--link);outline-offset:2px}
footer{margin-top:2.6rem;padding-bottom:2rem;color:var(--quiet);font-size:.9rem}
.patterns{position:absolute;width:0;height:0;overflow:hidden}
@media print,(min-width:${wideFromPx}px){.wide{display:block}.narrow{display:none}}
@media (min-width:${wideFromPx}px){h1{font-size:2.1rem}.answer{font-size:1.35rem}}
@media print{
@page{margin:15mm}
:root{font-size:9.5pt;--paper:#fff;--panel:#f4f3ee}
body{line-height:1.4}
header,main,footer{max-width:none;padding:0}
h1{font-size:1.9rem}h2{font-size:1.35rem;margin-top:1.3rem;padding-top:.6rem;break-after:avoid}
.answer{font-size:1.25rem}
.facts{margin:.8rem 0}
figure{margin:.6rem 0 .9rem}
figure,.scroll,.facts div,.cautions li,.safety{break-inside:avoid}
.scroll{overflow:visible;background:none}
details{display:none}
.chart,.facts div,.cautions li{print-color-adjust:exact;-webkit-print-color-adjust:exact}
}
`;
