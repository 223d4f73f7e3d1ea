import { Refusal } from "../../calibration/refusal.ts";
import type { Ledger } from "../ledger/ledger.ts";
import type { Library } from "../metals/library.ts";
import { missingFrom, refuseSilentChanges } from "../metals/own-changes.ts";
import {
  type OwnSpecifications,
  ownSpecificationsFormat,
  readOwnSpecifications,
  refuseOtherFineness,
  specificationsOf,
  writeOwnSpecifications,
} from "../metals/specifications/own-specifications.ts";
import type { Specification } from "../metals/specifications/specification.ts";
import { starterSet } from "../metals/specifications/starter-set.ts";

/** The starter set and the owner's own specifications, as the ledger keeps them. */
export interface CurrentSpecifications {
  all: readonly Specification[];
  own: OwnSpecifications;
}

const none: OwnSpecifications = {
  underhook_specifications: ownSpecificationsFormat,
  version: 1,
  specifications: [],
};

/** The specifications that count now. Own ones of a metal that left the library are passed over. */
export async function currentSpecifications(
  ledger: Ledger,
  library: Library,
): Promise<CurrentSpecifications> {
  const [entry] = await ledger.entries({ kind: "specifications", newestFirst: true, limit: 1 });
  const kept =
    entry?.kind === "specifications"
      ? readOwnSpecifications(JSON.stringify(entry.body.specifications), library)
      : none;
  return { all: [...specificationsOf(kept), ...starterSet], own: kept };
}

/**
 * Keeps own specifications as the next version. Refuses every fault (an unknown metal, a fine mass that is not mass ×
 * fineness, a fineness its metal does not have, an id or name given twice, a changed name, one that is gone); throws LedgerError when not stored.
 */
export async function keepSpecifications(
  ledger: Ledger,
  library: Library,
  next: OwnSpecifications,
  key?: string,
): Promise<void> {
  const checked = readOwnSpecifications(writeOwnSpecifications(next), library);
  const { own } = await currentSpecifications(ledger, library);
  refuseSilentChanges(own.specifications, checked.specifications);
  const held = new Set(own.specifications.map((one) => JSON.stringify(one)));
  refuseOtherFineness(
    checked.specifications.filter((one) => !held.has(JSON.stringify(one))),
    library,
  );
  const missing = missingFrom(checked.specifications, own.specifications);
  if (missing.length > 0)
    throw new Refusal("specification.missing", { names: missing.map(({ name }) => name) });
  await ledger.append(
    "specifications",
    "specifications",
    { version: checked.version, specifications: JSON.parse(writeOwnSpecifications(checked)) },
    key === undefined ? {} : { key },
  );
}
