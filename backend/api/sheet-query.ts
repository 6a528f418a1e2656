/**
 * The input of `renderSheet` from the query of a sheet's address: `planId`, `form`, `length`, `speed` and, comma between
 * them, `holes`. Nothing is checked here; the method does that.
 */
export function sheetQuery(query: URLSearchParams): unknown {
  const { holes, ...rest } = Object.fromEntries(query);
  return holes === undefined ? rest : { ...rest, holes: holes.split(',') };
}
