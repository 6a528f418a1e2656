import type { HoleReport } from '../../core/geometry/hole-report.ts';
import { escaped } from '../../core/sheet/markup.ts';
import { formatLength } from '../../core/units/length.ts';
import type { UnitsChoice } from '../../core/units/units-choice.ts';

type CoursePage = Readonly<{
  name: string;
  holes: readonly HoleReport[];
  notes: readonly Readonly<{ ref: string; text: string }>[];
  units: Pick<UnitsChoice, 'length'>;
}>;

const STYLE = `
  body { max-width: 46rem; margin: 2rem auto; padding: 0 1rem; color: #0c2022; background: #fff; font: 16px/1.4 sans-serif; }
  table { width: 100%; border-collapse: collapse; }
  th, td { padding: 0.3rem 0.5rem; border-bottom: 1px solid #b9c7c2; text-align: left; vertical-align: top; }
  caption { padding-bottom: 0.3rem; text-align: left; font-weight: 700; }`;

/** A course as a page of its own, where there is no plan whose sheet could be shown: its holes, and what was noted of them. */
export function coursePage({ name, holes, notes, units }: CoursePage): string {
  const par = holes.reduce((sum, hole) => sum + hole.par, 0);
  const length_m = holes.reduce((sum, hole) => sum + hole.playLength_m, 0);
  const rows = holes.map(hole => {
    const note = notes.find(({ ref }) => ref === hole.ref)?.text ?? '';
    const rise = hole.rise_m === null ? 'not known' : formatLength(hole.rise_m, units);
    const label = [hole.ref, hole.name].filter(part => part !== undefined && part !== '').join(' ');
    return `<tr><th scope="row"><bdi>${escaped(label)}</bdi></th><td>${hole.par}</td><td>${formatLength(hole.playLength_m, units, 0)}</td><td>${rise}</td><td>${escaped(note)}</td></tr>`;
  });
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(name)}</title>
<style>${STYLE}</style>
</head>
<body>
<h1><bdi>${escaped(name)}</bdi></h1>
<p>${holes.length} holes, par ${par}, ${formatLength(length_m, units, 0)} along the lines of play.</p>
<table><caption>Holes</caption>
<thead><tr><th scope="col">Hole</th><th scope="col">Par</th><th scope="col">Line of play</th><th scope="col">Rise</th><th scope="col">Note</th></tr></thead>
<tbody>${rows.join('')}</tbody></table>
<p>Look before you throw: people may walk where no path is drawn. The course's own rules and staff come first.</p>
</body>
</html>
`;
}
