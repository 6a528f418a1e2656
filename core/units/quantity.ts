declare const unit: unique symbol;

/** A number that carries its unit in the type. Used only where two units of one kind meet in a signature; elsewhere the name shows the unit. */
export type Quantity<U extends string> = number & { readonly [unit]: U };

/**
 * The number itself, once it is known to be finite.
 * @throws {RangeError} naming the value, for NaN and infinities
 */
export function finite(name: string, value: number): number {
  if (Number.isFinite(value)) return value;
  throw new RangeError(`${name} must be a finite number, got ${value}`);
}
