import { problemPath } from '../../core/course/problem-path.ts';
import type { Problem, Result } from '../../core/units/result.ts';
import { storeTrouble } from '../store/store-trouble.ts';
import { api, type Checked, type Method, type Output } from './contract/api.ts';

/** What answers each method; input is checked, defaults filled in. */
export type Handlers = {
  readonly [K in Method]: (input: Checked<K>) => Result<Output<K>> | Promise<Result<Output<K>>>;
};

/** The one way in: for the desktop shell, the browser host and the tests alike. Never rejects. */
export type Dispatch = (method: string, input: unknown) => Promise<Result<unknown>>;

/**
 * @param onFault - told of what should not happen: a handler that threw, an answer that breaks the contract
 */
export function dispatcher(handlers: Handlers, onFault: (method: string, fault: unknown) => void): Dispatch {
  return async (method, input) => {
    if (!isMethod(method)) return failed([{ path: 'method', message: `there is no method "${shown(method)}"` }]);
    try {
      const parsed = api[method].input.safeParse(input);
      if (!parsed.success) return failed(problemsOf(parsed.error.issues));
      const handler = handlers[method] as (input: unknown) => Result<unknown> | Promise<Result<unknown>>;
      const answer = await handler(parsed.data);
      if (!answer.ok) return failed(answer.problems);
      const output = api[method].output.safeParse(answer.value);
      if (output.success) return answer;
      throw new TypeError(
        `its answer breaks the contract: ${problemsOf(output.error.issues)
          .slice(0, 3)
          .map(({ path, message }) => `${path} ${message}`)
          .join('; ')}`,
      );
    } catch (fault) {
      onFault(method, fault);
      const trouble = storeTrouble(fault);
      if (trouble !== undefined) return failed([{ path: 'library', message: `${trouble}. Nothing was changed` }]);
      const why = fault instanceof Error ? fault.message : String(fault);
      return failed([{ path: method, message: `went wrong inside the app (${why}). Nothing was changed` }]);
    }
  };
}

function isMethod(method: unknown): method is Method {
  return typeof method === 'string' && Object.hasOwn(api, method);
}

function shown(method: unknown): string {
  return String(method).slice(0, 60);
}

function failed(problems: readonly Problem[]): Result<never> {
  return { ok: false, problems };
}

function problemsOf(issues: readonly { path: PropertyKey[]; message: string }[]): Problem[] {
  return issues.map(({ path, message }) => ({ path: problemPath(path) || 'input', message }));
}
