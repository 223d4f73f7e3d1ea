/**
 * One spelling for one value: keys sorted by UTF-16 code unit, no spaces, strings and numbers as JSON.stringify
 * writes them. This is the JSON Canonicalization Scheme of RFC 8785, whose number rule is ECMAScript's own.
 * Keys whose value is undefined are left out, as JSON does.
 * Throws TypeError for what JSON cannot say: NaN, infinity, functions, dates, undefined inside a list.
 */
export function canonicalJson(value: unknown): string {
  if (value === null || typeof value === "boolean") return String(value);
  if (typeof value === "string") return JSON.stringify(value);
  if (typeof value === "number") {
    if (!Number.isFinite(value)) throw new TypeError(`${value} is no number that can be written down.`);
    return JSON.stringify(value);
  }
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(",")}]`;
  if (typeof value === "object" && isPlain(value)) {
    const keys = Object.keys(value).sort();
    const written: string[] = [];
    for (const key of keys) {
      const inner = (value as Record<string, unknown>)[key];
      if (inner !== undefined) written.push(`${JSON.stringify(key)}:${canonicalJson(inner)}`);
    }
    return `{${written.join(",")}}`;
  }
  throw new TypeError(`A value of type ${typeof value} cannot be written down as JSON.`);
}

function isPlain(value: object): boolean {
  const prototype = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
}
