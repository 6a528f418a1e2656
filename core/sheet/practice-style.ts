/** What the practice sheet adds to the sheet's own style; black on white too. */
export function practiceStyle(): string {
  return `
.practice .head { border-bottom: 0.35mm solid #000; padding-bottom: 1mm; }
.practice .head h1 { max-width: 60%; font-size: 13pt; }
.limit { font-weight: bold; font-size: 10pt; padding: 1.4mm 0; }
.box { display: inline-block; width: 9mm; height: 6mm; border: 0.3mm solid #000; vertical-align: middle; }
.target { display: flex; align-items: center; gap: 5mm; border: 0.5mm solid #000; padding: 1.6mm 2.4mm; margin-bottom: 2.4mm; font-size: 9pt; }
.target .big { font-size: 17pt; flex: none; }
.target .written { margin-left: auto; flex: none; }
.written { font-size: 8.4pt; }
.round { width: 100%; border-collapse: collapse; font-size: 8pt; }
.round th, .round td { text-align: left; vertical-align: middle; padding: 1mm 1mm; border-bottom: 0.15mm solid #000; }
.round thead th { border-bottom: 0.35mm solid #000; vertical-align: bottom; }
.round th:nth-child(n+3):nth-child(-n+4), .round td:nth-child(n+3):nth-child(-n+4), .round th:nth-child(8), .round td:nth-child(8) { white-space: nowrap; }
.round tbody td:first-child { font-size: 12pt; }
.round tfoot td { font-weight: bold; border-bottom: 0; }
.part { font-size: 11pt; padding: 1mm 0; }
.drills { padding-left: 6mm; font-size: 9pt; }
.drills li { padding-bottom: 3mm; break-inside: avoid; }
.drills h2 { font-size: 9.6pt; }
.drills .why { font-style: italic; }
.practice .cautions { font-size: 8.6pt; padding: 1.6mm 2.4mm; }
.practice .cautions h2 { font-size: 10pt; }
.practice .cautions ul { padding-left: 4mm; }
.practice .cautions li { padding-top: 0.6mm; }
.practice .rules { font-size: 8.6pt; padding-top: 2.4mm; }
.views { display: grid; grid-template-columns: repeat(3, 58mm); gap: 4mm 9mm; padding-bottom: 3mm; }
.views figure { margin: 0; break-inside: avoid; }
.views figcaption { font-size: 8pt; padding-bottom: 0.6mm; }
`;
}
