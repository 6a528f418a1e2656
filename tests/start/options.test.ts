import { describe, expect, it } from 'vitest';
import { openerOf } from '../../start/open-address.ts';
import { startOptions } from '../../start/options.ts';

describe('npm start’s options', () => {
  it.each([
    { words: [], want: { browser: false, port: undefined, opensBrowser: true, data: undefined, help: false } },
    { words: ['--browser', '--port', '4000', '--no-open'], want: { browser: true, port: 4000, opensBrowser: false } },
    { words: ['--port=0', '--data', 'here'], want: { port: 0, data: 'here' } },
    { words: ['-h'], want: { help: true } },
  ])('$words', ({ words, want }) => expect(startOptions(words)).toMatchObject({ ok: true, value: want }));

  it.each([
    { words: ['--port', 'x'], path: '--port' },
    { words: ['--port', '65536'], path: '--port' },
    { words: ['--port', '-1'], path: 'options' },
    { words: ['--data', ''], path: '--data' },
    { words: ['--fast'], path: 'options' },
    { words: ['course.geojson'], path: 'options' },
  ])('$words is refused', ({ words, path }) =>
    expect(startOptions(words)).toMatchObject({ ok: false, problems: [{ path }] }),
  );
});

describe('opening the address', () => {
  const address = 'http://127.0.0.1:4000/?token=a&b';
  it.each([
    { platform: 'darwin', env: {}, want: ['open', address] },
    { platform: 'win32', env: {}, want: ['rundll32', 'url.dll,FileProtocolHandler', address] },
    { platform: 'linux', env: { DISPLAY: ':0' }, want: ['xdg-open', address] },
    { platform: 'linux', env: {}, want: null },
  ] as const)('on $platform with $env', ({ platform, env, want }) =>
    expect(openerOf({ platform, env, uid: 1000 }, address)).toEqual(want),
  );
});
