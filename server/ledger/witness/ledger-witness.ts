import { LedgerError } from "../error.ts";
import type { Ledger } from "../ledger.ts";
import { type NoteKey, readVerifierKey } from "../note.ts";
import { type Answer, addCheckpoint, type Witness } from "./add-checkpoint.ts";
import { witnessesOf } from "./keep-witnessed.ts";

/** A bench as a witness of other ledgers: what it saw stands in its own, where nothing is taken back. */
export function ledgerWitness(ledger: Ledger): (request: string) => Promise<Answer> {
  let last: Promise<unknown> = Promise.resolve();
  const witness: Witness = {
    async seen(origin) {
      const found = await ledger.entries({ kind: "witnessed", newestFirst: true, limit: 1000 });
      for (const entry of found)
        if (entry.kind === "witnessed" && !entry.origin && entry.body.origin === origin)
          return { size: entry.body.size, root: Buffer.from(entry.body.root, "base64") };
      return null;
    },
    async keep({ origin, size, root }) {
      const body = { origin, size, root: root.toString("base64") };
      await ledger.append("witnessed", `witness-of:${origin}`, body);
    },
    async cosign(text) {
      const line = await ledger.cosign(text);
      if (line === null)
        throw new LedgerError("ledger.record.unsigned", { subject: "", place: ledger.place }, "refused");
      return line;
    },
  };
  return (request) => {
    // check and keep are one step: two requests never see the same size
    const mine = last.then(async () => addCheckpoint(witness, await knownTo(ledger), request));
    last = mine.catch(() => {});
    return mine;
  };
}

async function knownTo(ledger: Ledger): Promise<NoteKey[]> {
  const { of } = await witnessesOf(ledger);
  return of.map(readVerifierKey).filter((key) => key !== null);
}
