//! Owns the style sheet: black on white, print first.

use super::escape;
use crate::render::{Paper, sheet::Head};

/// Everything that does not depend on the sheet.
const RULES: &str = "
*{box-sizing:border-box}
html{-webkit-print-color-adjust:exact;print-color-adjust:exact}
body{margin:0;color:#000;background:#fff;font:9.5pt/1.34 \"DejaVu Sans\",Verdana,\"Noto Sans\",Arial,sans-serif}
.leaf{max-width:184mm;margin:0 auto;padding:6mm 4mm}
.run{display:flex;flex-wrap:wrap;justify-content:space-between;gap:0 6mm;margin:0 0 4mm;padding:0 0 1mm;border-bottom:.5pt solid #000;font-size:9pt}
h1,h2,h3,p,ul,dl,table,figure{margin:0 0 2.2mm}
h1,.client .title{font-size:17pt;line-height:1.2;margin:0 0 3mm}
h2,h3{font-size:12pt;line-height:1.25;margin:4.2mm 0 1.4mm;break-after:avoid}
.lead{font-size:12pt;font-weight:bold}
.strong{font-weight:bold;break-after:avoid}
.small{font-size:9pt}
ul{padding:0 0 0 5mm}
li{margin:0 0 .8mm}
dl{display:grid;grid-template-columns:max-content 1fr;gap:.4mm 4mm}
dt{font-weight:bold;overflow-wrap:anywhere;max-width:60mm}
dd{margin:0;overflow-wrap:anywhere}
p,li,td,th{overflow-wrap:break-word}
table{width:100%;border-collapse:collapse;table-layout:fixed;font-size:8.5pt;line-height:1.28}
caption{text-align:left;padding:0 0 1mm;font-size:9pt}
th,td{text-align:left;vertical-align:top;padding:.6mm 1mm;border-bottom:.4pt solid #000}
thead th{vertical-align:bottom;border-bottom:1.2pt solid #000;border-top:1.2pt solid #000}
tbody th{font-weight:normal}
.n{text-align:right;font-variant-numeric:tabular-nums}
.room td,.room th{padding-bottom:2.4mm}
.room thead th{padding-bottom:.6mm}
.room td{border-left:.4pt solid #000}
tr,li,.blanks,.tick,figure{break-inside:avoid}
.blanks+:not(.blanks){margin-top:3.4mm}
tbody tr:first-child,tbody tr:nth-last-child(2),li:nth-last-child(2){break-after:avoid}
thead{display:table-header-group}
.frame{border:.8pt solid #000;padding:2.6mm 3.4mm 1mm;margin:0 0 3.4mm;break-inside:avoid}
.thick{border-width:2.6pt}
.frame>h2,.frame>h3{margin:0 0 1.4mm}
.black>h2,.black>h3{background:#000;color:#fff;margin:-2.6mm -3.4mm 2.2mm;padding:1.8mm 3.4mm}
.ticks{list-style:none;padding:0}
.tick{display:flex;gap:3mm;padding:.6mm 0;margin:0}
.tick .boxes{flex:none;white-space:nowrap}
.blanks{display:flex;gap:6mm;margin:0 0 1mm}
.blank{flex:1 1 0;display:flex;gap:2mm;align-items:flex-end;min-height:8mm}
.blank::after{content:\"\";flex:1 1 15mm;border-bottom:.6pt solid #000}
svg{display:block;max-width:100%;height:auto}
.client{font-size:14pt;line-height:1.36}
.client .title{font-size:21pt}
.client h3{font-size:15pt;margin:4.5mm 0 1.4mm}
.client .frame>h3{margin:0 0 1.4mm}
.client .black>h3{margin:-2.6mm -3.4mm 2.2mm}
.client .lead{font-size:15pt}
.client .run{font-size:9pt}
.client .blank{min-height:9mm}
@media screen{.leaf+.leaf{border-top:1pt dashed #000}}
@media print{.leaf{max-width:none;padding:0}.leaf+.leaf{break-before:page}.run{display:none}}
";

/// The style sheet of a sheet: the head of each page is set by the printing browser.
pub(super) fn style(head: &Head, paper: Paper) -> String {
    let size = match paper {
        Paper::A4 => "A4",
        Paper::Letter => "letter",
    };
    let edge = "vertical-align:bottom;padding-bottom:1mm;margin-bottom:3mm;border-bottom:.5pt solid #000;font-size:8.5pt;font-family:\"DejaVu Sans\",Verdana,\"Noto Sans\",Arial,sans-serif";
    let shares: Vec<String> = (3..=70).map(|share| format!(".w{share}{{width:{share}%}}")).collect();
    format!(
        "{RULES}{}\n@page{{size:{size};margin:21mm 15mm 13mm;\
         @top-left{{content:{};font-weight:bold;width:46%;text-align:left;{edge}}}\
         @top-center{{content:none;width:0}}\
         @top-right{{content:{} \" \\b7  page \" counter(page) \" of \" counter(pages);width:54%;text-align:right;white-space:nowrap;{edge}}}}}\n",
        shares.join(""),
        escape::css(&head.bold),
        escape::css(&head.plain),
    )
}
