type WithoutUndefined<T> = { [K in keyof T as undefined extends T[K] ? never : K]: T[K] } & {
  [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>;
};

/** Drops the keys that are undefined: an absent key and an undefined one mean the same in JSON. */
export function omitUndefined<T extends object>(value: T): WithoutUndefined<T> {
  return Object.fromEntries(Object.entries(value).filter(([, v]) => v !== undefined)) as WithoutUndefined<T>;
}
