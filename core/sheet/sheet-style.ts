import type { PageLayout } from './page-layout.ts';

/** Black on white throughout: nothing is lost on a printer without colour. */
export function sheetStyle(layout: PageLayout): string {
  const { page, card, gap_mm, columns, cardsAPage } = layout;
  const isFolded = cardsAPage > 4;
  return `
@page { size: ${page.width_mm}mm ${page.height_mm}mm; margin: 0; }
* { box-sizing: border-box; margin: 0; padding: 0; }
html { background: #fff; color: #000; -webkit-text-size-adjust: 100%; }
body { font: 8pt/1.2 Arial, "Helvetica Neue", Helvetica, "Liberation Sans", "DejaVu Sans Condensed", "Open Sans", sans-serif; line-height: 1.2; }
p, h1, h2, li { overflow-wrap: anywhere; }
.page { width: ${page.width_mm}mm; min-height: ${(page.height_mm - 0.3).toFixed(2)}mm; padding: ${isFolded ? 0 : page.margin_mm}mm; display: flex; flex-direction: ${isFolded ? 'row' : 'column'}; ${isFolded ? 'flex-wrap: wrap; align-content: flex-start; ' : ''}break-after: page; }
.panel { width: ${(page.width_mm / columns).toFixed(3)}mm; height: ${(((page.height_mm - 0.3) * columns) / cardsAPage).toFixed(3)}mm; padding: ${page.margin_mm}mm; }
.turned { transform: rotate(180deg); }
.page:last-child { break-after: auto; }
.cards { display: grid; grid-template-columns: repeat(${columns}, ${card.width_mm.toFixed(2)}mm); gap: ${gap_mm}mm; flex: 1; align-content: start; }
.card { width: ${card.width_mm.toFixed(2)}mm; min-height: ${card.height_mm.toFixed(2)}mm; display: flex; flex-direction: column; }
${cardsAPage === 4 ? '.card { outline: 0.2mm solid #000; outline-offset: 1.6mm; }' : ''}
header { display: flex; align-items: center; gap: 2mm; border-bottom: 0.35mm solid #000; padding-bottom: 0.5mm; margin-bottom: 0.9mm; }
.ref { border: 0.5mm solid #000; border-radius: 0.8mm; min-width: 9mm; padding: 0 1mm; text-align: center; font-weight: bold; line-height: 1.1; white-space: nowrap; flex: none; }
.unseen { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
.name, .disc, .title, .row.aim, .own { font-weight: bold; }
.disc { line-height: 1.2; letter-spacing: -0.01em; }
.title { padding-bottom: 0.6mm; }
.middle { display: flex; gap: 2mm; align-items: flex-start; }
.how { flex: 1; min-width: 0; }
.row, .sure { padding-bottom: 0.3mm; }
.drawing { display: block; flex: none; border: 0.2mm solid #000; background: #fff; }
.side { margin-top: 1mm; }
.section { margin-top: 1mm; }
.notes { flex: 1; margin-top: 1mm; background: repeating-linear-gradient(to bottom, transparent 0 4.4mm, #999 4.4mm 4.55mm); }
.cautions { border: 0.5mm solid #000; padding: 0.2mm 0.7mm; margin-top: 1mm; }
.legend { list-style: none; display: flex; flex-wrap: wrap; gap: 0.5mm 2.4mm; font-size: 6.4pt; }
.legend li { display: flex; align-items: center; gap: 0.8mm; }
.legend .drawing { border: 0; }
.head { display: flex; justify-content: space-between; align-items: baseline; gap: 4mm; }
.head h1 { font-size: 12pt; flex: none; max-width: 45%; }
.head p { text-align: right; }
.list { width: 100%; table-layout: fixed; border-collapse: collapse; font-size: 6.6pt; }
.list td, .list th { text-align: left; vertical-align: top; padding: 0.25mm 0.6mm; border-bottom: 0.1mm solid #000; white-space: nowrap; overflow: hidden; text-overflow: ellipsis; }
.list td:first-child { font-weight: bold; }
.cover > * + * { margin-top: 1.2mm; }
svg path, svg circle, svg rect { fill: none; stroke: #000; stroke-width: 0.2; vector-effect: none; }
svg .halo { stroke: #fff; stroke-width: 1; }
svg .aim { stroke-width: 0.45; }
svg .flight { stroke-width: 0.5; stroke-dasharray: 1.1 0.6; }
svg .half { stroke-width: 0.4; }
svg .most { stroke-width: 0.35; stroke-dasharray: 0.7 0.5; }
svg .middle { fill: #000; stroke: none; }
svg .play { stroke-width: 0.25; stroke-dasharray: 0.25 0.7; stroke-linecap: round; }
svg .head { fill: #000; stroke: #fff; stroke-width: 0.15; }
svg .plate { fill: #fff; stroke: none; }
svg .edge { stroke-width: 0.28; }
svg .thin { stroke-width: 0.14; }
svg .none { stroke: none; }
svg .hatch { stroke-width: 0.2; }
svg .inside { fill: #fff; stroke-width: 0.3; }
svg .fairway { stroke: #888; stroke-width: 0.15; }
svg .hatch.wood { stroke-width: 0.3; stroke-linecap: round; }
svg .hatch.solid { stroke-width: 0.17; }
svg .lost { stroke-width: 0.35; stroke-linecap: round; stroke-dasharray: 0.05 1; }
svg .ceiling { stroke-width: 0.3; stroke-dasharray: 1 0.4 0.2 0.4; }
svg .crown { stroke-width: 0.13; }
svg .trunk, svg .pole { fill: #000; }
svg .people { stroke-width: 0.6; stroke-dasharray: 0.6 0.6; }
svg .mando, svg .mandoPost { stroke-width: 0.6; }
svg .drop { stroke-width: 0.3; }
svg .tee { fill: #fff; stroke-width: 0.4; }
svg .ring { fill: #fff; stroke-width: 0.4; }
svg .ground { stroke-width: 0.4; }
svg .top { stroke-width: 0.4; stroke-dasharray: 1.1 0.6; }
svg .tight { stroke-width: 0.45; }
svg .tick { stroke-width: 0.2; }
svg .scale { stroke-width: 0.35; }
svg .north { stroke-width: 0.3; }
svg .wind { stroke-width: 0.6; }
svg .word { font-size: 2.1px; fill: #000; stroke: #fff; stroke-width: 0.5; paint-order: stroke; }
@media screen {
  html { background: #ddd; }
  .page { background: #fff; margin: 6mm auto; box-shadow: 0 0 2mm #888; }
}
`;
}
