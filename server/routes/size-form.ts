import type { Locale } from "../../views/words/index.ts";
import type { Library } from "../alloys/library.ts";
import { computeResponse } from "../compute/contract.ts";
import { checkSize } from "../evidence/size-check.ts";
import type { Stated } from "../reports/stated.ts";
import type { Specification } from "../specifications/specification.ts";
import { type FieldProblem, NumberEntries } from "./evidence-form.ts";

const millimetres = { from: 0.05, to: 1000, unit: "mm" } as const;

interface Known {
  specifications: readonly Specification[];
  stated: Stated;
  library: Library;
}

/**
 * Mean of the dry readings that count, g. A coin's law states its weight against weights of brass or steel in air, so
 * the reading is compared as it stands, not the mass freed of the air's lift: that would be 0.6 mg less on a sovereign.
 */
function dryGrams({ captures }: Stated): number {
  const dry = captures.flatMap(({ entry: { body }, voided }) =>
    voided === null && body.what === "dry" && "reading" in body ? [Number(body.reading.grams)] : [],
  );
  return Number((dry.reduce((sum, grams) => sum + grams, 0) / dry.length).toPrecision(8));
}

/** The comparison that the size form asks for, as the body of its entry; or what was refused. */
export function typedSize(
  fields: Readonly<Record<string, string>>,
  locale: Locale,
  { specifications, stated, library }: Known,
) {
  const numbers = new NumberEntries(fields, locale);
  const specification = specifications.find(({ id }) => id === fields["size-specification"]);
  if (!specification) numbers.refuse("size-specification", "Choose what the piece is meant to be.");
  const diameterMm = numbers.optional("size-diameter", "The diameter", millimetres);
  const thicknessMm = numbers.optional("size-thickness", "The thickness", millimetres);
  const u = numbers.within("size-within", "Give or take", "mm");
  const problems: readonly FieldProblem[] = numbers.problems;
  if (!specification || problems.length > 0) return { problems };
  const { u_mass_g: uMassG } = computeResponse.parse(stated.result.response);
  const massG = dryGrams(stated);
  const check = checkSize(
    specification,
    {
      massG,
      uMassG,
      ...(diameterMm === undefined ? {} : { diameterMm, uDiameterMm: u }),
      ...(thicknessMm === undefined ? {} : { thicknessMm, uThicknessMm: u }),
    },
    library,
  );
  const lines = check.comparisons.map(({ says }) => says);
  return {
    body: {
      test: "size",
      outcome: lines.join("; "),
      lines,
      specification: specification.name,
      source: specification.source,
      size: { ...check.measured, specification: { ...specification } },
      ...(check.outline ? { evidence: check.outline } : {}),
    },
  };
}
