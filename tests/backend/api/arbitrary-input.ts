import fc from 'fast-check';
import { z } from 'zod';
import { api, type Method } from '../../../backend/api/contract/api.ts';

type Json = Readonly<Record<string, unknown>>;
/** Values that exist in the library, so that random input also gets past the first checks. */
export type Known = Readonly<{
  /** By the name of the property that holds them. */
  words: Readonly<Record<string, readonly string[]>>;
  objects: Readonly<Record<string, readonly object[]>>;
  texts: readonly string[];
}>;

/** Input for one method: as the contract asks for it, the same with something wrong in it, or anything at all. */
export function arbitraryInput(method: Method, known: Known): fc.Arbitrary<unknown> {
  const schema = z.toJSONSchema(api[method].input, { io: 'input', unrepresentable: 'any' }) as Json;
  const fitting = ofSchema(schema, known);
  return fc.oneof(
    { weight: 6, arbitrary: fitting },
    {
      weight: 3,
      arbitrary: fc.tuple(fitting, fc.nat(), fc.anything()).map(([input, at, other]) => spoiled(input, at, other)),
    },
    { weight: 1, arbitrary: fc.anything({ withBigInt: true, withDate: true, withMap: true, withNullPrototype: true }) },
  );
}

function ofSchema(schema: Json, known: Known, name = ''): fc.Arbitrary<unknown> {
  if ('const' in schema) return fc.constant(schema.const);
  if (Array.isArray(schema.enum)) return fc.constantFrom(...(schema.enum as unknown[]));
  const choices = (schema.anyOf ?? schema.oneOf) as Json[] | undefined;
  if (choices !== undefined) return fc.oneof(...choices.map(choice => ofSchema(choice, known, name)));
  switch (schema.type) {
    case 'object': {
      const fitting = Object.hasOwn(known.objects, name) ? known.objects[name]! : [];
      const any = ofObject(schema, known);
      return fitting.length === 0 ? any : fc.oneof({ weight: 2, arbitrary: fc.constantFrom(...fitting) }, any);
    }
    case 'array':
      if (Array.isArray(schema.prefixItems))
        return fc.tuple(...(schema.prefixItems as Json[]).map(item => ofSchema(item, known, name)));
      return fc.array(schema.items === undefined ? fc.anything() : ofSchema(schema.items as Json, known, name), {
        minLength: (schema.minItems as number | undefined) ?? 0,
        maxLength: 4,
      });
    case 'string':
      return ofString(schema, known, name);
    case 'integer':
    case 'number':
      return ofNumber(schema);
    case 'boolean':
      return fc.boolean();
    case 'null':
      return fc.constant(null);
    default:
      return fc.anything();
  }
}

function ofObject(schema: Json, known: Known): fc.Arbitrary<unknown> {
  const properties = Object.entries((schema.properties ?? {}) as Record<string, Json>);
  const required = (schema.required ?? []) as string[];
  return fc.record(Object.fromEntries(properties.map(([name, property]) => [name, ofSchema(property, known, name)])), {
    requiredKeys: required.filter(name => properties.some(([known_]) => known_ === name)),
  });
}

function ofString(schema: Json, { words, texts }: Known, name: string): fc.Arbitrary<string> {
  const fitting = Object.hasOwn(words, name) ? words[name]! : Object.values(words).flat();
  if (fitting.length === 0) return fc.uuid();
  const known = { weight: 9, arbitrary: fc.constantFrom(...fitting) };
  if (schema.format === 'uuid') return fc.oneof(known, fc.uuid());
  const longest = (schema.maxLength as number | undefined) ?? 0;
  return fc.oneof(
    known,
    { weight: longest > 1e6 ? 60 : 0, arbitrary: fc.constantFrom(...texts).chain(damagedText) },
    { weight: 2, arbitrary: fc.string({ unit: 'binary', maxLength: 60 }) },
    { weight: 1, arbitrary: fc.json() },
  );
}

function ofNumber(schema: Json): fc.Arbitrary<number> {
  const within = {
    min: Math.max(-1e6, Number(schema.minimum ?? -1e6)),
    max: Math.min(1e6, Number(schema.maximum ?? 1e6)),
  };
  const inside = schema.type === 'integer' ? fc.integer(within) : fc.double({ ...within, noNaN: true });
  return fc.oneof({ weight: 6, arbitrary: inside }, fc.double(), fc.maxSafeInteger());
}

/** A file as it is, cut off, or with a piece of it replaced. */
function damagedText(text: string): fc.Arbitrary<string> {
  return fc.oneof(
    { weight: 1, arbitrary: fc.constant(text) },
    { weight: 4, arbitrary: fc.nat(text.length).map(at => text.slice(0, at)) },
    {
      weight: 8,
      arbitrary: fc
        .tuple(
          fc.nat(text.length),
          fc.nat(30),
          fc.oneof(fc.string(), fc.json(), fc.constantFrom('1e999', '-1', 'null', '[]')),
        )
        .map(([at, length, other]) => text.slice(0, at) + other + text.slice(at + length)),
    },
  );
}

/** One property left out, replaced or added. */
function spoiled(input: unknown, at: number, other: unknown): unknown {
  if (typeof input !== 'object' || input === null || Array.isArray(input)) return other;
  const names = Object.keys(input);
  if (names.length === 0) return { more: other };
  const name = names[at % names.length]!;
  const { [name]: _, ...rest } = input as Json;
  return at % 3 === 0 ? rest : at % 3 === 1 ? { ...input, [name]: other } : { ...input, more: other };
}
