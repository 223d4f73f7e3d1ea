/**
 * Words that people write above the columns of their own lists [common practice]; each is understood on a page in any
 * language. A word that leaves open what it means, such as "uncertainty", stands for no column.
 */
const spoken: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>> = {
  ticket: {
    en: ["ticket", "ticket no", "no"],
    de: ["etikett", "beleg", "schein", "ticketnummer", "nummer", "nr"],
    es: ["etiqueta", "resguardo", "número", "nº"],
  },
  description: {
    en: ["description", "piece", "item"],
    de: ["beschreibung", "bezeichnung", "stück", "artikel"],
    es: ["descripción", "pieza", "artículo"],
  },
  claim: {
    en: ["claim", "claimed as", "stamp", "hallmark"],
    de: ["angegeben als", "angabe", "stempel", "punze", "legierung"],
    es: ["declarado como", "declarada como", "punzón", "contraste", "ley"],
  },
  lot: { en: ["lot"], de: ["posten", "los"], es: ["lote"] },
  customer: {
    en: ["customer", "seller"],
    de: ["kunde", "kundin", "verkäufer"],
    es: ["cliente", "vendedor"],
  },
  measured_at: { en: ["measured at", "measured on"], de: ["gemessen am"], es: ["medido el"] },
  mass_g: {
    en: ["mass", "weight", "stated mass"],
    de: ["masse", "gewicht", "angegebene masse"],
    es: ["masa", "peso", "masa declarada"],
  },
  density_g_cm3: { en: ["density"], de: ["dichte"], es: ["densidad"] },
  u_g_cm3: { en: ["standard uncertainty"], de: ["standardunsicherheit"], es: ["incertidumbre típica"] },
  temperature_c: {
    en: ["temperature", "water temperature"],
    de: ["temperatur", "wassertemperatur"],
    es: ["temperatura", "temperatura del agua"],
  },
  name: { en: ["name"], de: ["name", "bezeichnung"], es: ["nombre"] },
  metal: { en: ["metal"], de: ["metall"], es: ["metal"] },
  fineness_permille: { en: ["fineness"], de: ["feingehalt"], es: ["ley", "fineza"] },
  fine_mass_g: { en: ["fine mass"], de: ["feinmasse", "feingewicht"], es: ["masa fina", "peso fino"] },
  diameter_mm: { en: ["diameter"], de: ["durchmesser"], es: ["diámetro"] },
  thickness_mm: { en: ["thickness"], de: ["dicke"], es: ["grosor", "espesor"] },
  source: { en: ["source"], de: ["quelle"], es: ["fuente"] },
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

/** Other headings that are understood for a column, in a language of this program; none where it has no words for it. */
export function alsoUnderstood(column: string, language: string): readonly string[] {
  const own = column.replaceAll("_", " ");
  return (spoken[column]?.[language] ?? []).filter((word) => word !== own);
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
    const column = columns.find(
      (one) =>
        !byName.includes(one) &&
        Object.values(spoken[one] ?? {})
          .flat()
          .includes(word),
    );
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
