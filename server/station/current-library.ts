import { Refusal } from "../../calibration/refusal.ts";
import type { Entry } from "../ledger/entry.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { builtIn, type Library } from "../metals/library.ts";
import { missingFrom } from "../metals/own-changes.ts";
import {
  libraryWith,
  type OwnMetals,
  readOwnMetals,
  refuseOwnMetals,
  writeOwnMetals,
} from "../metals/own-metals.ts";

/** The library that findings are made with: the built-in one and the owner's metals, as the ledger keeps them. */
export interface CurrentLibrary {
  readonly now: Library;
  /** undefined until the owner has added a metal */
  readonly own: OwnMetals | undefined;
  /**
   * Takes own metals over under their version. Refuses an id or a name given twice, a changed name, a band without width,
   * and the loss of a metal in use; throws LedgerError when not stored.
   */
  keep(own: OwnMetals): Promise<void>;
}

/**
 * The library as of a version that a record names: this program's metals with the owner's as they were then. The one in
 * force where the record names none, or its version is not in this ledger.
 */
export async function libraryAt(ledger: Ledger, version: string | undefined, now: Library): Promise<Library> {
  if (version === undefined || version === now.version) return now;
  const own = ownPart(version);
  if (own === undefined) return builtIn;
  const entries = await ledger.entries({ kind: "library-version", newestFirst: true });
  const entry = entries.find((one) => one.kind === "library-version" && ownPart(one.body.version) === own);
  const metals = ownMetalsIn(entry);
  return metals ? libraryWith(metals) : now;
}

function ownMetalsIn(entry: Entry | undefined): OwnMetals | undefined {
  return entry?.kind === "library-version" && entry.body.metals !== undefined
    ? readOwnMetals(JSON.stringify(entry.body.metals))
    : undefined;
}

/** The owner's part of a library version, such as own.3 of 5+own.3. */
const ownPart = (version: string) => /\bown\.\d+$/.exec(version)?.[0];

/** Finds the newest own metals in the ledger. */
export async function currentLibrary(ledger: Ledger): Promise<CurrentLibrary> {
  const [entry] = await ledger.entries({ kind: "library-version", newestFirst: true, limit: 1 });
  let own = ownMetalsIn(entry);
  let now = libraryWith(own);
  return {
    get now() {
      return now;
    },
    get own() {
      return own;
    },
    async keep(next) {
      refuseOwnMetals(own, next);
      await refuseMissing(ledger, next, own?.metals ?? []);
      const library = libraryWith(next);
      await ledger.append("library-version", "library", {
        version: library.version,
        metals: JSON.parse(writeOwnMetals(next)),
      });
      own = next;
      now = library;
    },
  };
}

/** Records and specifications go on naming a metal, so one that they name stays. */
async function refuseMissing(ledger: Ledger, next: OwnMetals, held: OwnMetals["metals"]): Promise<void> {
  for (const { id, name } of missingFrom(next.metals, held)) {
    const { count } = await ledger.records({ filters: { claim: id }, page: { size: 1 } });
    if (count > 0) throw new Refusal("metal.own.in-records", { name, records: count });
    const [entry] = await ledger.entries({ kind: "specifications", newestFirst: true, limit: 1 });
    if (entry?.kind === "specifications" && JSON.stringify(entry.body).includes(`"${id}"`))
      throw new Refusal("metal.own.in-specifications", { name });
  }
}
