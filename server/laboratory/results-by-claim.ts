import type { ComputeRequest } from "../compute/contract.ts";
import type { Entry } from "../ledger/entry.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { preciousElement } from "../metals/fineness/precious-element.ts";
import type { Library } from "../metals/library.ts";
import { isPrecious } from "../metals/precious-metal.ts";
import { shareOf } from "../metals/share-of.ts";
import { measured, standingBy } from "../reports/stated.ts";
import { isMeasured } from "../weighing/recorded-statement.ts";
import { standingAssay, uPermille } from "./assay.ts";

/** Laboratory results as a request to `compute` gives them. */
type LaboratoryResults = NonNullable<ComputeRequest["laboratory_results"]>;

/** More say hardly more, and a record keeps every one it rests on. */
const mostOfClaim = 20;
const mostLookedAt = 500;

/** Kinds that change which results there are. */
const changing: ReadonlySet<Entry["kind"]> = new Set<Entry["kind"]>([
  "laboratory-assay",
  "voiding",
  "amendment",
]);

/** What was read of a ledger, and up to where. */
interface Known {
  seq: number;
  byClaim: Map<string, LaboratoryResults>;
}

const known = new WeakMap<Ledger, Known>();

/**
 * What laboratories found in recorded pieces of a claim, newest first: pieces that were weighed here, whose density does
 * not exclude the claim and whose assay is the stamp's fineness within its uncertainty. Anything else is no piece of that
 * claim, whatever is stamped on it. Read anew only after an entry that changes it.
 */
export async function resultsByClaim(
  ledger: Ledger,
  claim: string,
  library: Library,
): Promise<LaboratoryResults> {
  const before = known.get(ledger);
  const since = before ? await ledger.entries({ after: before.seq }) : [];
  const seq = since.at(-1)?.seq ?? before?.seq ?? (await ledger.head())?.seq ?? 0;
  const isCurrent = before !== undefined && !since.some(({ kind }) => changing.has(kind));
  const byClaim = isCurrent ? before.byClaim : await readAll(ledger, library);
  known.set(ledger, { seq, byClaim });
  return byClaim.get(claim) ?? [];
}

async function readAll(ledger: Ledger, library: Library): Promise<Map<string, LaboratoryResults>> {
  const assays = await ledger.entries({ kind: "laboratory-assay", newestFirst: true, limit: mostLookedAt });
  const byClaim = new Map<string, LaboratoryResults>();
  for (const subject of new Set(assays.map((assay) => assay.subject))) {
    const found = resultOf(await ledger.entriesOf(subject), library);
    if (!found) continue;
    const of = byClaim.get(found.claim) ?? [];
    if (of.length < mostOfClaim) byClaim.set(found.claim, [...of, found.result]);
  }
  return byClaim;
}

function resultOf(about: readonly Entry[], library: Library) {
  if (!about.some(({ kind }) => kind === "result")) return undefined;
  const standing = standingBy(about);
  const { conformity } = standing.statement;
  if (standing.voided || !isMeasured(standing.statement) || conformity.state === "excluded") return undefined;
  const { piece, statement } = measured(standing);
  const { claim } = piece;
  const metal = claim && library.has(claim) ? library.metal(claim) : undefined;
  const element = metal && preciousElement(metal);
  if (!claim || !metal || !element || !isPrecious(metal.family)) return undefined;
  const assay = standingAssay(about, metal.family);
  const permille = Number(assay?.body.permille);
  if (!assay || !(permille > 0 && permille < 1000)) return undefined;
  const [least, most] = shareOf(metal, element);
  const beyond = 2 * uPermille(assay);
  if (permille + beyond < 1000 * least || permille - beyond > 1000 * most) return undefined;
  return {
    claim,
    result: {
      // the entry of the assay: a record that is handed on names nobody else's ticket
      of: assay.id,
      permille,
      u_permille: uPermille(assay),
      density_20_g_cm3: statement.density_20_g_cm3,
      u_density_g_cm3: statement.u_g_cm3,
    },
  };
}
