import type { Ledger } from "../ledger/ledger.ts";
import type { Library } from "../metals/library.ts";
import { libraryWith, type OwnMetals, readOwnMetals, writeOwnMetals } from "../metals/own-metals.ts";

/** The library that findings are made with: the built-in one and the owner's metals, as the ledger keeps them. */
export interface CurrentLibrary {
  readonly now: Library;
  /** undefined until the owner has added a metal */
  readonly own: OwnMetals | undefined;
  /** Takes own metals over under their version. Throws RangeError for an id given twice, LedgerError when not stored. */
  keep(own: OwnMetals): Promise<void>;
}

/** Finds the newest own metals in the ledger. */
export async function currentLibrary(ledger: Ledger): Promise<CurrentLibrary> {
  const [entry] = await ledger.entries({ kind: "library-version", newestFirst: true, limit: 1 });
  let own =
    entry?.kind === "library-version" && entry.body.metals !== undefined
      ? readOwnMetals(JSON.stringify(entry.body.metals))
      : undefined;
  let now = libraryWith(own);
  return {
    get now() {
      return now;
    },
    get own() {
      return own;
    },
    async keep(next) {
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
