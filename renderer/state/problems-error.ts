import type { Problem } from '../../core/units/result.ts';

/** Carries a list of problems through code that only knows errors. */
export class ProblemsError extends Error {
  readonly problems: readonly Problem[];
  constructor(problems: readonly Problem[]) {
    super(problems.map(problem => `${problem.path}: ${problem.message}`).join('\n'));
    this.problems = problems;
  }
}

export const problemsOf = (error: unknown): readonly Problem[] =>
  error instanceof ProblemsError ? error.problems : [{ path: 'app', message: String(error) }];
