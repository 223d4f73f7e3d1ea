/** The keys of a record whose keys are known, in their order; never none. */
export function keysOf<K extends string>(record: Readonly<Record<K, unknown>>): [K, ...K[]] {
  return Object.keys(record) as [K, ...K[]];
}

/** Its entries, in their order; those of a partial one are the entries that are there. */
export function entriesOf<K extends string, V>(record: Readonly<Partial<Record<K, V>>>): [K, V][] {
  return Object.entries(record) as [K, V][];
}

/** The record with these keys and what each is given. */
export function keyed<K extends string, V>(keys: readonly K[], of: (key: K) => V): Record<K, V> {
  return Object.fromEntries(keys.map((key) => [key, of(key)])) as Record<K, V>;
}
