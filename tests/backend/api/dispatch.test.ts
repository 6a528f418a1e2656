import { expect, it } from 'vitest';
import { dispatcher, type Handlers } from '../../../backend/api/dispatch.ts';

const only = (handlers: Partial<Record<keyof Handlers, unknown>>) => {
  const faults: unknown[] = [];
  const call = dispatcher(handlers as Handlers, (method, fault) => faults.push([method, fault]));
  return { call, faults };
};

it.each([
  {
    name: 'throws',
    handler: () => {
      throw new Error('no disk');
    },
  },
  { name: 'rejects', handler: () => Promise.reject(new Error('no disk')) },
])('a handler that $name is one problem and is told of', async ({ handler }) => {
  const { call, faults } = only({ listCourses: handler });
  expect(await call('listCourses', {})).toEqual({
    ok: false,
    problems: [{ path: 'listCourses', message: expect.stringContaining('no disk') }],
  });
  expect(faults).toEqual([['listCourses', expect.any(Error)]]);
});

it('does not let an answer out that breaks the contract', async () => {
  const { call, faults } = only({ listChanges: () => ({ ok: true, value: [{ changeId: 'x' }] }) });
  expect(await call('listChanges', {})).toMatchObject({ ok: false, problems: [{ path: 'listChanges' }] });
  expect(faults).toHaveLength(1);
});
