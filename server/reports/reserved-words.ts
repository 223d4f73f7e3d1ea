/**
 * Words that a house without accreditation must not print: they promise what only an accredited laboratory or an
 * assay office may promise (hallmarking statutes and accreditation rules; common practice).
 */
const reserved = /(certif|zertifi|assay)\p{L}*/giu;

/** The same value with something else in the place of every reserved word in every text, and how many there were. */
export function withoutReservedWords<T>(value: T, inTheirPlace: string): { value: T; count: number } {
  let count = 0;
  const clean = (inner: unknown): unknown => {
    if (typeof inner === "string")
      return inner.replace(reserved, () => {
        count += 1;
        return inTheirPlace;
      });
    if (Array.isArray(inner)) return inner.map(clean);
    if (typeof inner === "object" && inner !== null)
      return Object.fromEntries(Object.entries(inner).map(([key, each]) => [key, clean(each)]));
    return inner;
  };
  return { value: clean(value) as T, count };
}
