/**
 * The same question answered once for each thing it is asked of, and kept as long as that thing: for answers that hang on
 * nothing else. Not for things made anew for each asking.
 */
export function remembered<K extends object, V>(answer: (of: K) => V): (of: K) => V {
  const known = new WeakMap<K, V>();
  return (of) => {
    const before = known.get(of);
    if (before !== undefined) return before;
    const found = answer(of);
    known.set(of, found);
    return found;
  };
}
