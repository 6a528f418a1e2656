import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { escaped, shortened } from '../../../core/sheet/markup.ts';

describe('text on the sheet', () => {
  it('cannot become markup, and cannot turn or hide what stands beside it', () => {
    expect(escaped(`<b a="1" c='2'>&`)).toBe('&lt;b a=&quot;1&quot; c=&#39;2&#39;&gt;&amp;');
    expect(escaped('a\u202eb\u0000c\u2028d\u200ee')).toBe('a b c d e');
    expect(escaped('a\ud800b')).toBe('a\ufffdb');
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 60 }), text => {
        const safe = escaped(text);
        expect(safe).not.toMatch(/[<>"'\p{Cc}\u202a-\u202e\u2066-\u2069]/u);
        expect(safe.replace(/&(?:amp|lt|gt|quot|#39);/g, '')).not.toContain('&');
      }),
      { seed: 4 },
    );
  });

  it('keeps both ends of a name that is too long', () => {
    expect(shortened('Red one number 17', 30)).toBe('Red one number 17');
    expect(shortened('A very long name of a disc, number 17', 20)).toBe('A very long n…ber 17');
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 80 }), fc.integer({ min: 5, max: 40 }), (text, most) => {
        expect(Array.from(shortened(text, most)).length).toBeLessThanOrEqual(most);
        expect(shortened(text, most).isWellFormed()).toBe(true);
      }),
      { seed: 5 },
    );
  });
});
