/** The look of an HTML file: one column that fits a phone, light or dark as the device is, plain on paper. */
export const pageStyle = `
:root{color-scheme:light dark;--ink:#111;--paper:#fff;--soft:#444;--line:#888}
@media (prefers-color-scheme:dark){:root{--ink:#e8e8e8;--paper:#16181b;--soft:#b8b8b8;--line:#777}}
*{box-sizing:border-box}
body{font:16px/1.45 system-ui,sans-serif;max-width:46rem;margin:1rem auto;padding:0 1rem;color:var(--ink);background:var(--paper);overflow-wrap:anywhere}
h1{font-size:1.45rem}h2{font-size:1.2rem;margin-top:2rem;border-bottom:2px solid var(--line)}h3{font-size:1.02rem}
h1,h2,h3{break-after:avoid}
a{color:inherit}
ul.tasks{list-style:none;padding-left:0}ul.tasks>li{margin:.6rem 0;padding-left:2.2rem;position:relative;break-inside:avoid}
ul.tasks>li>input{position:absolute;left:0;top:.1rem;width:1.4rem;height:1.4rem;margin:0}
ul.tasks ul{padding-left:1rem;color:var(--soft);font-size:.93em}
ol,ul{padding-left:1.4rem}
details.stage>summary,details.lookup>summary{padding:.5rem 0;cursor:pointer;font-weight:bold}
figure{margin:1rem 0;break-inside:avoid;overflow-x:auto}figure svg{max-width:100%;height:auto;background:#fff}code{font-size:.9em}
.small{font-size:.9em}[hidden]{display:none}
#tools{position:sticky;top:0;z-index:1;padding:.5rem 0;background:var(--paper);border-bottom:1px solid var(--line)}
#tools select{font:inherit;max-width:100%;margin:0 .5rem .3rem 0;min-height:2.2rem}#tools p{margin:.2rem 0;font-size:.85em;color:var(--soft)}
nav ul{columns:2 12rem}
@media print{
@page{margin:12mm}
:root{color-scheme:light;--ink:#000;--paper:#fff;--soft:#222;--line:#444}
#tools,nav{display:none}
body{font-size:9.5pt;line-height:1.35;margin:0;padding:0;max-width:none}
h1{font-size:15pt;margin:0 0 2mm}h2{font-size:12pt;margin:5mm 0 2mm}h3{font-size:10.5pt;margin:3mm 0 1mm}
p,ul,ol{margin:1.5mm 0}ul.tasks>li{margin:1.5mm 0;padding-left:6mm}ul.tasks>li>input{width:4mm;height:4mm}li{orphans:2;widows:2}
.first{break-after:page}
.small{font-size:8.5pt;line-height:1.25;columns:2;column-gap:6mm;padding-left:4mm}
.card{break-inside:avoid}.page{break-before:page}figure{margin:2mm 0}figure svg{width:125mm}
details.lookup:not([open]){display:none}
}`.trim();
