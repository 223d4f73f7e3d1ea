import type { FastifyInstance } from "fastify";
import { Refusal } from "../../../calibration/refusal.ts";
import type { BodyOf } from "../../ledger/kinds.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { readVerifierKey } from "../../ledger/note.ts";
import { ledgerWitness } from "../../ledger/witness/ledger-witness.ts";

/** What other benches ask of this one: to cosign their checkpoints (C2SP tlog-witness). No form, no cookie, no page. */
export function witnessRoute(app: FastifyInstance, ledger: Ledger): void {
  const answer = ledgerWitness(ledger);
  app.post("/witness/add-checkpoint", async (request, reply) => {
    const { status, body } = await answer(typeof request.body === "string" ? request.body : "");
    const type = status === 409 ? "text/x.tlog.size" : "text/plain; charset=utf-8";
    return reply.code(status).type(type).send(body);
  });
}

/** The witnesses as they were typed, one a line. Throws Refusal naming the line that is none. */
export function witnessesTyped(fields: Record<string, string>): BodyOf<"witnesses"> {
  const lines = (name: string) =>
    (fields[name] ?? "")
      .split(/\r?\n/)
      .map((line) => line.trim())
      .filter((line) => line !== "");
  const of = lines("of");
  for (const typed of of)
    if (readVerifierKey(typed)?.type !== "note")
      throw new Refusal("ledger.witness.no-key", { typed: typed.slice(0, 80) }, "of");
  const benches = lines("benches").map((typed) => {
    const [url = "", key = ""] = typed.split(/\s+/);
    if (!/^https?:\/\/[^\s]{1,200}$/.test(url) || readVerifierKey(key)?.type !== "cosignature")
      throw new Refusal("ledger.witness.no-address", { typed: typed.slice(0, 80) }, "benches");
    return { url, key };
  });
  return { folders: lines("folders").slice(0, 8), benches: benches.slice(0, 8), of: of.slice(0, 32) };
}
