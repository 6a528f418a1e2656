/** What a sheet's address asks of the API; nothing is checked here, the method does that. */
export type SheetCall = Readonly<{ method: 'renderSheet' | 'renderPracticeSheet'; input: unknown }>;

/**
 * The call behind the query of a sheet's address: of a plan `planId`, `form`, `length`, `speed` and, comma between them, `holes`;
 * of a practice round `practiceId`, `courseId`, `length`, `speed`.
 */
export function sheetCall(query: URLSearchParams): SheetCall {
  const { holes, ...rest } = Object.fromEntries(query);
  if (query.has('practiceId')) return { method: 'renderPracticeSheet', input: rest };
  return { method: 'renderSheet', input: holes === undefined ? rest : { ...rest, holes: holes.split(',') } };
}
