import { describe, expect, it } from 'vitest';
import { bullets, wrapped } from '../../../backend/command-line/paragraphs.ts';
import { sideIn } from '../../../backend/command-line/show-units.ts';
import { table } from '../../../backend/command-line/table.ts';
import { plain, type Terminal } from '../../../backend/command-line/terminal.ts';
import { percent } from '../../../core/units/percent.ts';

const terminal = (columns: number, colours = false): Terminal => ({
  out() {},
  err() {},
  columns,
  colours,
  progress: null,
});
const heads = [
  { head: 'n', align: 'right' },
  { head: 'what', flexible: true },
] as const;

describe('table', () => {
  it('lines up columns without lines, and leaves no blanks at the ends', () => {
    expect(
      table(
        heads,
        [
          ['1', 'one'],
          ['22', 'b'],
        ],
        terminal(80),
      ),
    ).toBe(' n  what\n 1  one\n22  b\n');
  });

  it('wraps what is flexible and never passes the width', () => {
    const text = table(heads, [['1', 'a long story about a throw that went into the pond']], terminal(24));
    expect(Math.max(...text.split('\n').map(line => line.length))).toBeLessThanOrEqual(24);
    expect(text.replace(/\s+/g, ' ')).toContain('a long story about a throw that went into the pond');
  });

  it('takes control characters out of what a file says', () => {
    const text = table(heads, [['1', 'red\u001b[31m\u0007\n']], terminal(80));
    for (const control of ['\u001b', '\u0007']) expect(text).not.toContain(control);
    expect(plain('a\u001b[2Jb\u202e')).toBe('a [2Jb ');
  });

  it('colours the head only where colours are wanted', () => {
    expect(table(heads, [['1', 'x']], terminal(80, true))).toContain('\u001b[1m');
  });
});

describe('paragraphs', () => {
  it('wraps at spaces and hangs under its first word', () => {
    expect(wrapped('one two three', 9, '- ')).toBe('- one two\n  three\n');
    expect(bullets(['a', 'b'], 20)).toBe('  - a\n  - b\n');
  });
});

describe('numbers for reading', () => {
  it.each([
    { chance: 0, want: '0 %' },
    { chance: 0.004, want: '<1 %' },
    { chance: 0.414, want: '41 %' },
    { chance: 0.997, want: '>99 %' },
    { chance: 1, want: '100 %' },
  ])('$chance reads $want (own choice: nothing sampled is rounded to never or always)', ({ chance, want }) => {
    expect(percent(chance)).toBe(want);
  });

  it('says the side in words', () => {
    expect([sideIn('metric', 3.4), sideIn('metric', -3.4), sideIn('metric', 0.2), sideIn('feet', 3.048)]).toEqual([
      '3 right',
      '3 left',
      'straight',
      '10 right',
    ]);
  });
});
