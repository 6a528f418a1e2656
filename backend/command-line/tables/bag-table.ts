import { anhyzerText } from '../../../core/player/anhyzer-sign.ts';
import { layoutRule, layoutSentences } from '../../../core/player/layout-words.ts';
import { readinessText } from '../../../core/player/readiness.ts';
import type { ThrowsReport } from '../../../core/player/throws-report.ts';
import { bullets, wrapped } from '../paragraphs.ts';
import { CHOSEN, type Units } from '../show-units.ts';
import type { Terminal } from '../terminal.ts';

/** What the bag lacks and has twice, which discs are too fast, and which have changed. */
export function bagTable(report: ThrowsReport, units: Units, terminal: Terminal): string {
  const chosen = CHOSEN[units];
  const { gaps, doubles } = layoutSentences(report.layout, chosen);
  const throwing = report.throws.filter(t => t.role === 'throwing');
  const early = throwing.filter(t => t.readiness.verdict === 'too fast for now');
  const readiness = early.map(t => {
    const sign = t.anhyzer?.isShown ? ` ${capital(anhyzerText(t.anhyzer, t.readiness.verdict, chosen))}.` : '';
    return `${capital(t.hand)}: ${readinessText(t.readiness, chosen)}.${sign}`;
  });
  const known = report.throws.filter(t => t.drift !== null);
  const moved = known.filter(t => t.drift?.verdict !== 'no change shown');
  const drift = moved.map(t => `${t.disc} ${t.hand}: ${t.drift?.text}.`);
  const part = (title: string, items: readonly string[], none: string, rule: string) =>
    [
      `\n${title}\n`,
      items.length === 0 ? wrapped(none, terminal.columns) : bullets(items, terminal.columns, ''),
      rule === '' ? '' : wrapped(rule, terminal.columns),
    ].join('');
  return [
    part(
      'The bag by distance and finish',
      [...gaps, ...doubles],
      'No gaps and no doubles.',
      layoutRule(report.layout, chosen),
    ),
    part('Too fast for now', readiness, 'No disc is too fast for your arm (common practice).', ''),
    part(
      'Wear',
      drift,
      known.length === 0
        ? 'Not known yet: it takes dated sessions at least a week apart with the sideways finish written down.'
        : 'No disc shows a change of stability that its sessions can tell from chance.',
      '',
    ),
  ].join('');
}

const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
