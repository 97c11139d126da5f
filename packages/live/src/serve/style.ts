import { darkPalette, lightPalette, paletteRules } from '@wintergap/report/in-page';

/** The style sheet: controls and answer side by side on a desk, one under the other on a phone, the answer on paper. */
export const pageStyle: string = `
:root{color-scheme:light dark;${paletteRules(lightPalette)}}
@media screen and (prefers-color-scheme:dark){:root{${paletteRules(darkPalette)}}}
*{box-sizing:border-box}
html{scroll-padding-top:9rem}
body{margin:0;background:var(--paper);color:var(--ink);font:1rem/1.5 system-ui,sans-serif;overflow-wrap:anywhere}
.patterns{position:absolute;width:0;height:0;overflow:hidden}
h1,h2,h3,legend{font-family:Georgia,'Times New Roman',serif;font-weight:600;line-height:1.25;text-wrap:balance}
h1{font-size:1.35rem;margin:0}
h2{font-size:1.2rem;margin:0 0 .5rem}
h3{font-size:1.05rem;margin:0}
.top,main,footer{max-width:86rem;margin:0 auto;padding:0 1.1rem}
.top{padding-top:1.1rem;display:flex;flex-wrap:wrap;gap:0 1rem;align-items:baseline}
.place{margin:0;color:var(--quiet);font-size:.9rem}
main{display:grid;gap:1.4rem;grid-template-columns:minmax(0,1fr)}
.heard{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap;margin:0}
.waiting{padding:3rem 0;color:var(--quiet)}

.side{display:contents}
.answer{position:sticky;top:0;z-index:2;background:var(--paper);border-bottom:2px solid var(--ink);padding:.7rem 0 .6rem}
.big{display:flex;gap:0 2.2rem;flex-wrap:wrap}
.big p{margin:0}
.name{display:block;color:var(--quiet);font-size:.85rem}
.number{font:600 2rem/1.1 Georgia,'Times New Roman',serif;font-variant-numeric:tabular-nums lining-nums}
.number .unit{font:400 .95rem/1 system-ui,sans-serif;color:var(--quiet)}
.settling .number data,.not-run .number data{color:var(--quiet)}
.progress{display:flex;align-items:center;gap:.6rem;font-size:.85rem;color:var(--quiet);margin:.35rem 0 0}
progress{appearance:none;width:7rem;height:.3rem;border:0;background:var(--rule);border-radius:2px;overflow:hidden}
progress::-webkit-progress-bar{background:var(--rule)}
progress::-webkit-progress-value{background:var(--charge)}
progress::-moz-progress-bar{background:var(--charge)}
.facts{display:grid;margin:0;gap:.7rem 1.6rem;grid-template-columns:repeat(auto-fill,minmax(8.4rem,1fr))}
.fact dt,.day-facts dt{color:var(--quiet);font-size:.85rem}
.fact dd,.day-facts dd{margin:0;font-weight:600;font-variant-numeric:tabular-nums}
.fact dd{font-size:1.1rem;line-height:1.3}
.fact .unit{font-weight:400;font-size:.9rem;color:var(--quiet)}
.fact small{display:block;font-weight:400;font-size:.85rem;color:var(--quiet)}
.wide{grid-column:span 2}

.controls{background:var(--panel);border-radius:6px;padding:.4rem 1rem 1rem}
fieldset{border:0;margin:0;padding:.8rem 0 .5rem;min-width:0}
fieldset+fieldset{border-top:1px solid var(--rule)}
legend{float:left;width:100%;padding:0;margin-bottom:.35rem;font-size:1rem}
legend+*{clear:both}
.row{display:grid;grid-template-columns:minmax(0,1fr) auto;gap:0 .8rem;align-items:baseline;padding:.15rem 0}
.row label{font-size:.92rem}
.row output{font-variant-numeric:tabular-nums;font-weight:600;font-size:.92rem;text-align:right}
.row input[type=range]{grid-column:1/-1}
.row .file{grid-column:1/-1;color:var(--quiet);font-size:.82rem;padding-left:.6rem;border-left:3px solid var(--charge)}
.switch label{display:flex;gap:.55rem;align-items:center;min-height:1.75rem;grid-column:1/-1}
input[type=range]{width:100%;height:1.75rem;margin:0;accent-color:var(--charge);cursor:pointer;touch-action:pan-y}
input[type=checkbox]{width:1.15rem;height:1.15rem;margin:0;accent-color:var(--charge);flex:none}
select,input:not([type]),button{font:inherit;font-size:.92rem;color:inherit;background:var(--paper);border:1px solid var(--quiet);border-radius:4px;min-height:2rem;padding:.15rem .5rem;max-width:100%}
button{cursor:pointer;background:none;border-color:var(--quiet)}
button:hover:not(:disabled){border-color:var(--ink);background:var(--panel)}
button:disabled{color:var(--quiet);border-color:var(--rule);cursor:default}
.reset{width:100%;margin-top:.4rem}
:focus-visible{outline:3px solid var(--link);outline-offset:2px}

.results{min-width:0;display:grid;gap:2.2rem;align-content:start}
.sentences{margin:0;font-size:1.05rem;line-height:1.5;max-width:46rem}
.refused{border-left:5px solid var(--alarm);background:var(--panel);padding:.6rem .8rem;margin:0;max-width:46rem;white-space:pre-line}
.refused strong{color:var(--alarm)}
section{min-width:0}
.results>section{border-top:1px solid var(--rule);padding-top:1rem}
.chart{display:block;width:100%;height:auto;overflow:hidden;font-family:system-ui,sans-serif;font-variant-numeric:tabular-nums}
.chart text{white-space:pre}
.pointed{position:relative;cursor:crosshair;touch-action:pan-y}
.hair{position:absolute;top:0;bottom:0;width:0;border-left:1.5px solid var(--ink);opacity:.55;pointer-events:none}
.band{position:absolute;top:0;bottom:0;background:var(--engine);opacity:.13;pointer-events:none}
.caption{color:var(--quiet);font-size:.88rem;margin:.2rem 0 .6rem}
.day-choice{display:flex;align-items:center;gap:.7rem;flex-wrap:wrap}
.day-choice input{flex:1 1 12rem}
.day{background:var(--panel);border-radius:6px;padding:.8rem 1rem;margin-top:.6rem}
.day-facts{display:grid;grid-template-columns:repeat(auto-fill,minmax(7.5rem,1fr));gap:.4rem 1rem;margin:.5rem 0 .8rem}
figure{margin:0;min-width:0}
figcaption{color:var(--quiet);font-size:.88rem;margin-bottom:.3rem}
.pair{display:grid;gap:1.4rem}
.pair>:only-child{grid-column:1/-1;max-width:34rem}
.key{list-style:none;display:flex;flex-wrap:wrap;gap:.1rem 1.1rem;margin:.2rem 0 0;padding:0}
.key svg{vertical-align:-1px}
.scroll{overflow-x:auto;position:relative}
table{border-collapse:collapse;font-variant-numeric:tabular-nums;font-size:.92rem;overflow-wrap:normal}
th,td{padding:.25rem .6rem;text-align:right;white-space:nowrap;border-bottom:1px solid var(--rule)}
th:first-child{text-align:left;padding-left:0}
thead th{vertical-align:bottom;white-space:normal;max-width:8rem;border-bottom:2px solid var(--ink)}
thead th:first-child{white-space:nowrap}
thead td{border-bottom:2px solid var(--ink)}
tbody th{font-weight:400;white-space:normal}
th .unit{display:block;color:var(--quiet);font-weight:400;font-size:.85rem}
.pins .present th,.pins .present td{font-weight:600}
.pins th small{color:var(--quiet);font-weight:400}
td.words{text-align:left;white-space:normal;min-width:11rem;font-weight:400}
td.deeds{text-align:left}
.deeds button{margin-right:.35rem;min-height:1.75rem;font-size:.85rem}
.deeds-row{display:flex;flex-wrap:wrap;gap:.9rem 2rem;margin-top:1rem}
.pin{display:flex;flex-wrap:wrap;gap:.4rem .5rem;align-items:center;margin:0}
.pin label{font-size:.92rem}
.said{margin:0;flex-basis:100%;color:var(--quiet);font-size:.88rem}
.chain{width:100%}
.bar-cell{position:relative;width:50%;min-width:7rem}
.bar{position:absolute;top:.45rem;bottom:.45rem;border-radius:1px}
.bar.whole{background:var(--noon)}
.bar.lost{background:var(--thrown)}
.bar.used{background:var(--used)}
.cautions{margin:0;padding-left:1.2rem;max-width:46rem}
summary{cursor:pointer;color:var(--link);font-size:.92rem;width:fit-content}
footer{color:var(--quiet);font-size:.85rem;padding-top:1.4rem;padding-bottom:2rem}

@media (min-width:46rem){
.pair{grid-template-columns:minmax(0,2fr) minmax(0,3fr)}
.number{font-size:3rem}
}
@media (min-width:64rem){
.top{padding-top:1.4rem}
main{grid-template-columns:21rem minmax(0,1fr);gap:0 2.4rem;align-items:start;margin-top:.6rem}
.side{display:flex;flex-direction:column;position:sticky;top:0;max-height:100vh}
.answer{position:static;border:0;padding:.4rem 0 .8rem}
.controls{overflow-y:auto;min-height:0;margin-bottom:1rem}
.results{padding-top:.5rem}
}
@media (prefers-reduced-motion:no-preference){.bar{transition:left .12s,width .12s}}
@media print{
@page{margin:14mm}
body{font-size:9.5pt}
.side{display:block;max-height:none}
.side,.answer,.controls{position:static;overflow:visible}
.controls{columns:3;background:none;padding:0}
fieldset{break-inside:avoid}
.row input[type=range],.reset,.deeds-row,.deeds,.day-choice,.caption,details{display:none}
main{display:block}
section,figure,table{break-inside:avoid}
.results{gap:1rem;margin-top:1rem}
.bar{print-color-adjust:exact;-webkit-print-color-adjust:exact}
}
`;
