/** One figure of the data files with where it comes from; null where nothing says so. */
export interface ListedFigure {
  file: string;
  place: string;
  value: string;
  kind: "seen" | "computed" | "from-memory" | null;
  /** the sources or the rule */
  from: string;
}

/** Keys whose numbers are no figures: an order of trying. */
const noFigures: ReadonlySet<string> = new Set(["as_skin"]);

/** Every figure of a data file: each number, and each value that carries a provenance. */
export function figuresOf(file: string, json: unknown): ListedFigure[] {
  return found(json, [], file);
}

function found(value: unknown, path: readonly string[], file: string): ListedFigure[] {
  if (typeof value === "number")
    return noFigures.has(path.at(-1) ?? "")
      ? []
      : [{ file, place: path.join("."), value: `${value}`, kind: null, from: "" }];
  if (typeof value !== "object" || value === null) return [];
  const from = fromOf(value);
  if (from) {
    const { seen: _, computed: __, from_memory: ___, ...held } = value as Record<string, unknown>;
    const only = Object.keys(held).join() === "value" ? held.value : held;
    return [{ file, place: path.join("."), value: JSON.stringify(only), ...from }];
  }
  return Object.entries(value).flatMap(([key, one]) => found(one, [...path, nameOf(one) ?? key], file));
}

function fromOf(value: object): Pick<ListedFigure, "kind" | "from"> | undefined {
  if ("seen" in value && Array.isArray(value.seen)) return { kind: "seen", from: value.seen.join(", ") };
  if ("computed" in value) return { kind: "computed", from: String(value.computed) };
  return "from_memory" in value ? { kind: "from-memory", from: "" } : undefined;
}

/** A row goes by what names it, any other value by its key. */
function nameOf(value: unknown): string | undefined {
  if (typeof value !== "object" || value === null) return undefined;
  const { id, symbol, called, pair } = value as Record<string, unknown>;
  return Array.isArray(pair)
    ? pair.join("-")
    : ([id, symbol, called].find((name) => typeof name === "string") as string | undefined);
}
