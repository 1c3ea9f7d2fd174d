//! Owns the style sheet: black on white, print first, a telephone beside it.

use super::escape::{self, add};
use crate::document::Sheet;
use crate::render::Paper;

/// Everything that does not depend on the sheet.
const RULES: &str = "
*{box-sizing:border-box}
html{-webkit-print-color-adjust:exact;print-color-adjust:exact}
body{margin:0;color:#000;background:#fff;font:9.5pt/1.32 \"DejaVu Sans\",Verdana,\"Noto Sans\",Arial,sans-serif}
.leaf{max-width:188mm;margin:0 auto;padding:6mm 4mm}
.run{display:flex;flex-wrap:wrap;justify-content:space-between;gap:0 6mm;margin:0 0 3mm;padding:0 0 1mm;border-bottom:.5pt solid #000;font-size:9pt}
h1,h2,h3,h4,p,ul,dl,table,figure,pre,.columns{margin:0 0 1.8mm}
.title{font-size:15pt;line-height:1.2;margin:0 0 2.2mm}
h2,h3,h4{font-size:11.5pt;line-height:1.25;margin:3.2mm 0 1.2mm;break-after:avoid}
.lead{font-size:11.5pt;font-weight:bold}
p.strong{font-weight:bold;break-after:avoid}
.small{font-size:8.5pt}
ul{padding:0 0 0 5mm}
li{margin:0 0 .7mm}
dl>div{break-inside:avoid}
.keys{display:grid;grid-template-columns:minmax(0,max-content) minmax(0,1fr);gap:.5mm 4mm}
.keys>div{display:contents}
.keys dd{grid-column:2}
.entries{list-style:none;padding:0}
.entries li{overflow-wrap:anywhere}
dt{font-weight:bold;overflow-wrap:anywhere;max-width:60mm}
dd{margin:0;overflow-wrap:anywhere}
p,li,td,th,h1,h2,h3,h4{overflow-wrap:break-word}
pre{font:8.5pt/1.3 monospace;white-space:pre-wrap}
table{width:100%;border-collapse:collapse;font-size:8.5pt;line-height:1.26}
caption{text-align:left;padding:0 0 .8mm;font-size:8.5pt}
th,td{text-align:left;vertical-align:top;padding:.5mm 1.8mm;border-bottom:.4pt solid #000}
thead th,thead td{vertical-align:bottom;border-bottom:1.1pt solid #000;border-top:1.1pt solid #000}
tbody th{font-weight:normal}
tr.strong th{font-weight:bold}
.n{text-align:right;font-variant-numeric:tabular-nums}
tbody .n{white-space:nowrap}
.room td,.room th{padding-bottom:4mm}
.room thead th,.room thead td{padding-bottom:.5mm}
.room td{border-left:.4pt solid #000}
tr,li,.blanks,.tick,figure,.square,.together{break-inside:avoid}
.blanks+:not(.blanks){margin-top:2.6mm}
tbody tr:first-child,tbody tr:nth-last-child(2),li:nth-last-child(2){break-after:avoid}
thead{display:table-header-group}
.frame{border:.8pt solid #000;padding:2mm 3mm .6mm;margin:0 0 2.6mm;break-inside:avoid}
.thick{border-width:2.4pt}
.frame>h2,.frame>h3,.frame>h4{margin:0 0 1.2mm}
.black>h2,.black>h3,.black>h4{background:#000;color:#fff;margin:-2mm -3mm 2mm;padding:1.6mm 3mm}
.square{border:.8pt dashed #000;padding:1mm 2mm;font-size:8pt}
.columns{display:flex;gap:0 5mm}
.columns>*{min-width:0}
.ticks{list-style:none;padding:0}
.tick{display:flex;gap:2.4mm;padding:.4mm 0;margin:0}
.tick .boxes{flex:none;white-space:nowrap}
.blanks{display:flex;gap:5mm;margin:0 0 .6mm}
.blank{display:flex;gap:1.6mm;align-items:flex-end;min-height:7mm;min-width:0}
.line{flex:1 1 10mm;border-bottom:.6pt solid #000;min-width:10mm}
svg{display:block;max-width:100%;height:auto}
.client{font-size:14pt;line-height:1.34}
.client .title{font-size:21pt}
.client h2,.client h3,.client h4{font-size:15pt;margin:3.6mm 0 1.2mm}
.client .frame>h3,.client .frame>h4{margin:0 0 1.2mm}
.client .black>h3,.client .black>h4{margin:-2mm -3mm 2mm}
.client .lead{font-size:16pt}
.client .run{font-size:9pt}
.client .small{font-size:11pt}
.client .blank{min-height:9mm}
@media screen{.leaf+.leaf{border-top:1pt dashed #000}}
@media screen and (max-width:520px){
.columns,.blanks{display:block}.blank{min-height:9mm}
.keys{display:block}.keys dd{margin:0 0 1mm}
.wide thead{display:none}
.wide,.wide caption,.wide tbody,.wide tr,.wide th,.wide td{display:block;text-align:left}
.wide tr{padding:1mm 0;border-bottom:.8pt solid #000}
.wide th,.wide td{border:0;padding:.2mm 0}
.wide tbody th{font-weight:bold}
.wide td::before{content:attr(data-of) \": \"}
}
@media print{.leaf{max-width:none;padding:0;font-size:9pt;line-height:1.28}.client{font-size:14pt;line-height:1.3}table{font-size:8.2pt}.leaf+.leaf{break-before:page}.leaf+.apart{break-before:right}.run{display:none}}
";

/// The style sheet of a sheet: the head of each page is set by the printing browser.
pub(super) fn style(sheet: &Sheet, paper: Paper) -> String {
    let size = match paper {
        Paper::A4 => "A4",
        Paper::Letter => "letter",
    };
    let edge = "vertical-align:bottom;padding-bottom:1mm;margin-bottom:3mm;border-bottom:.5pt solid #000;font-size:8.5pt;font-family:\"DejaVu Sans\",Verdana,\"Noto Sans\",Arial,sans-serif";
    let mut out = RULES.to_owned();
    for share in 1..=12 {
        add(&mut out, format_args!(".c{share}{{flex:{share} 1 0}}"));
    }
    for share in (5..=60).step_by(5) {
        add(&mut out, format_args!(".w{share}{{width:{share}%}}"));
    }
    for lines in 2..=12 {
        add(&mut out, format_args!(".h{lines}{{min-height:{}pt}}", lines * 14));
    }
    add(&mut out, format_args!("\n@page{{size:{size};margin:17mm 14mm 9mm}}\n"));
    let runs = sheet.numbered();
    let leaves = runs.iter().enumerate().flat_map(|(run, leaves)| leaves.iter().map(move |leaf| (run, leaf)));
    for (place, (run, leaf)) in leaves.enumerate() {
        let (before, after) = number(&leaf.numbered);
        add(
            &mut out,
            format_args!(
                ".p{place}{{page:p{place}}}@page p{place}{{counter-increment:run{run};\
                 @top-left{{content:{};font-weight:bold;width:42%;text-align:left;{edge}}}\
                 @top-center{{content:none;width:0}}\
                 @top-right{{content:{} counter(run{run}) {};width:58%;text-align:right;white-space:nowrap;{edge}}}}}\n",
                escape::css(&leaf.head.bold),
                escape::css(&format!("{} \u{b7} {before}", leaf.head.plain)),
                escape::css(&after),
            ),
        );
    }
    out
}

/// The words before and after a page's number; a browser does not know the number of pages of a part.
fn number(words: &str) -> (String, String) {
    let (before, after) = words.split_once("{page}").unwrap_or((words, ""));
    let after = if after.contains("{pages}") { "" } else { after };
    (before.to_owned(), after.to_owned())
}
