import type { Problem } from '../../core/units/result.ts';

/** Shown instead of the app when the backend does not answer at the start. */
export function StartTrouble({ problems, onRetry }: Readonly<{ problems: readonly Problem[]; onRetry: () => void }>) {
  return (
    <main className="first-steps" role="alert">
      <h1>Roundwright cannot start</h1>
      {problems.map(problem => (
        <p key={problem.path + problem.message}>{problem.message}</p>
      ))}
      <button type="button" className="button" onClick={onRetry}>
        Try again
      </button>
    </main>
  );
}
