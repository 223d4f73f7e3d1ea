import type { FastifyInstance } from "fastify";
import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { readVerifierKey } from "../../ledger/note.ts";
import { ledgerWitness } from "../../ledger/witness/ledger-witness.ts";
import { type Entries, refuse } from "../forms/form.ts";

/** What other benches ask of this one: to cosign their checkpoints (C2SP tlog-witness). No form, no cookie, no page. */
export function witnessRoute(app: FastifyInstance, ledger: Ledger): void {
  const answer = ledgerWitness(ledger);
  app.post("/witness/add-checkpoint", async (request, reply) => {
    const { status, body } = await answer(typeof request.body === "string" ? request.body : "");
    const type = status === 409 ? "text/x.tlog.size" : "text/plain; charset=utf-8";
    return reply.code(status).type(type).send(body);
  });
}

/** The witnesses as they were typed, one a line; a line that names none is refused. */
export const witnessesForm = ({ lines }: Entries) =>
  z.object({
    folders: lines().transform((folders) => folders.slice(0, 8)),
    of: lines().transform((keys, context) => {
      const wrong = keys.find((typed) => readVerifierKey(typed)?.type !== "note");
      if (wrong !== undefined)
        refuse(context, message("ledger.witness.no-key", { typed: wrong.slice(0, 80) }));
      return keys.slice(0, 32);
    }),
    benches: lines().transform((addresses, context) =>
      addresses.slice(0, 8).map((typed) => {
        const [url = "", key = ""] = typed.split(/\s+/);
        if (!/^https?:\/\/[^\s]{1,200}$/.test(url) || readVerifierKey(key)?.type !== "cosignature")
          refuse(context, message("ledger.witness.no-address", { typed: typed.slice(0, 80) }));
        return { url, key };
      }),
    ),
  });
