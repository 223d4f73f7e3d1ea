/**
 * Words that people write above the columns of their own lists, in English, German and Spanish [common practice]. A word
 * that leaves open what it means, such as "uncertainty", stands for no column.
 */
const spoken: Readonly<Record<string, readonly string[]>> = {
  ticket: [
    "ticket",
    "ticket no",
    "ticketnummer",
    "etikett",
    "beleg",
    "schein",
    "nr",
    "nummer",
    "no",
    "etiqueta",
    "resguardo",
    "número",
    "nº",
  ],
  description: [
    ...["description", "piece", "item", "beschreibung", "bezeichnung", "stück", "artikel"],
    ...["descripción", "pieza", "artículo"],
  ],
  claim: [
    ...[
      "claim",
      "claimed as",
      "stamp",
      "hallmark",
      "angegeben als",
      "angabe",
      "stempel",
      "punze",
      "legierung",
    ],
    ...["declarado como", "declarada como", "punzón", "contraste", "ley"],
  ],
  lot: ["lot", "posten", "los", "lote"],
  customer: ["customer", "seller", "kunde", "kundin", "verkäufer", "cliente", "vendedor"],
  measured_at: ["measured at", "measured on", "gemessen am", "medido el"],
  mass_g: [
    ...["mass", "weight", "stated mass", "masse", "gewicht", "angegebene masse"],
    ...["masa", "peso", "masa declarada"],
  ],
  density_g_cm3: ["density", "dichte", "densidad"],
  u_g_cm3: ["standard uncertainty", "standardunsicherheit", "incertidumbre típica"],
  temperature_c: [
    ...["temperature", "water temperature", "temperatur", "wassertemperatur"],
    ...["temperatura", "temperatura del agua"],
  ],
  name: ["name", "bezeichnung", "nombre"],
  metal: ["metal", "metall"],
  fineness_permille: ["fineness", "feingehalt", "ley", "fineza"],
  fine_mass_g: ["fine mass", "feinmasse", "feingewicht", "masa fina", "peso fino"],
  diameter_mm: ["diameter", "durchmesser", "diámetro"],
  thickness_mm: ["thickness", "dicke", "grosor", "espesor"],
  source: ["source", "quelle", "fuente"],
};

/** The unit that a column is asked in, as it may stand behind its word: "Masse (g)", "Dichte in g/cm³". */
const units: Readonly<Record<string, readonly string[]>> = {
  mass_g: ["g"],
  fine_mass_g: ["g"],
  density_g_cm3: ["g/cm³", "g/cm3"],
  u_g_cm3: ["g/cm³", "g/cm3"],
  temperature_c: ["°c", "c"],
  fineness_permille: ["‰", "1/1000"],
  diameter_mm: ["mm"],
  thickness_mm: ["mm"],
};

const knownUnits: ReadonlySet<string> = new Set(Object.values(units).flat());

/** Other headings that are understood for a column, as people write them. */
export function alsoUnderstood(column: string): readonly string[] {
  const own = column.replaceAll("_", " ");
  return (spoken[column] ?? []).filter((word) => word !== own);
}

/** What a heading was understood to be. */
export interface Heading {
  /** the column asked for; the heading itself where none is meant */
  column: string;
  /** a unit that stands in the heading and is not the one asked for */
  otherUnit?: string;
  /** the column is a mass and neither its name nor its heading tells the unit */
  unitOpen?: true;
}

/** The columns of the list that its first line names: by their own name before any word for them. Pure. */
export function headingsOf(first: readonly string[], columns: readonly string[]): Heading[] {
  const written = first.map((cell) => cell.trim().toLowerCase().replace(/\s+/g, " "));
  const byName = written.map((heading) => heading.replaceAll(" ", "_"));
  return byName.map((name, index) => {
    if (columns.includes(name)) return { column: name };
    const { word, unit } = split(written[index] ?? "");
    const column = columns.find((one) => !byName.includes(one) && spoken[one]?.includes(word));
    if (column === undefined) return { column: name };
    if (unit === undefined) return column === "mass_g" ? { column, unitOpen: true } : { column };
    return units[column]?.includes(unit) ? { column } : { column, otherUnit: unit };
  });
}

/** "masse (g)", "masse [g]", "masse in g", "masse, g" and "masse_g" in their two parts. */
function split(heading: string): { word: string; unit?: string } {
  const [, word, bracketed, , plain] =
    /^(.*?)\s*(?:[([]\s*([^)\]]+?)\s*[)\]]|(,|\bin\b|\ben\b)\s*(\S+))\.?$/u.exec(heading) ?? [];
  const [, before, behind = ""] = /^(.+)_([^_]+)$/.exec(heading) ?? [];
  if (before !== undefined && knownUnits.has(behind))
    return { word: before.replaceAll("_", " "), unit: behind };
  const unit = bracketed ?? plain;
  const said = (word ?? heading).replace(/[_-]/g, " ").replace(/\.$/, "").trim();
  return unit === undefined ? { word: said } : { word: said, unit };
}
