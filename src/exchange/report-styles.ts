/** How a report looks in any browser and on paper; its hash stands in the report's content security policy, so change both together. */

export const REPORT_STYLES = `
:root { color-scheme: light; }
body { margin: 0 auto; padding: 24px; max-width: 1000px; background: #fcfbf6; color: #17263a; font: 16px/1.45 system-ui, sans-serif; font-variant-numeric: tabular-nums; }
h1 { font-size: 28px; margin: 0 0 4px; }
h2 { font-size: 20px; margin: 32px 0 8px; border-bottom: 2px solid #17263a; }
h3 { font-size: 17px; margin: 20px 0 6px; }
p { margin: 6px 0; }
table { border-collapse: collapse; margin: 8px 0; }
caption { text-align: left; padding: 4px 0; color: #44546a; }
th, td { border: 1px solid #d7ded6; padding: 3px 8px; text-align: left; vertical-align: top; overflow-wrap: break-word; max-width: 36em; }
th { background: #eef1ea; font-weight: 600; }
th, td:first-child { overflow-wrap: normal; }
th[scope="row"], td.place { white-space: nowrap; }
td.number { text-align: right; white-space: nowrap; }
.scroll { overflow-x: auto; }
.quiet { color: #44546a; }
.caution { border-left: 4px solid #8a4b00; background: #fff1d6; padding: 4px 10px; margin: 6px 0; }
.error { border-left: 4px solid #9a1a1a; padding: 4px 10px; margin: 6px 0; }
.struck { text-decoration: line-through; }
figure { margin: 12px 0; }
figure svg { max-width: 100%; height: auto; }
img { max-width: 100%; height: auto; }
math { font-size: 18px; }
@media print { body { background: #fff; padding: 0; } h2, h3 { break-after: avoid; } tr, figure { break-inside: avoid; } }
`;

/** SHA-256 of the text above, as the policy wants it; the test computes it anew. */
export const REPORT_STYLES_HASH = 'sha256-jSaUqcC58r19FYRKtRcs/jz7SRnrC7fHdnjpYVDRCH8=';
