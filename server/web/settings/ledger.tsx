import { dirname } from "node:path";
import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { LedgerPage, type LedgerView } from "../../../views/settings/ledger.tsx";
import { readOutside, writtenCheckpoint } from "../../ledger/checkpoint.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { verifierKey } from "../../ledger/note.ts";
import { pinnedKey, pinnedKeyFile } from "../../ledger/pinned-key.ts";
import type { ReplicationState } from "../../ledger/replication.ts";
import { type WitnessState, witnessesOf } from "../../ledger/witness/keep-witnessed.ts";
import { type Entries, formIn } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { html } from "../page-request.ts";
import { problemsOf, refusalOf } from "../refused.ts";
import { witnessesForm } from "./witness.ts";

interface Parts {
  ledger: Ledger;
  demo: boolean;
  /** undefined on a bench that shares no ledger */
  replication: (() => ReplicationState) | undefined;
  /** how it stands with each witness that was chosen */
  witnesses: () => readonly WitnessState[];
}

type Shown = Partial<Pick<LedgerView, "checkpoint" | "checked" | "kept" | "problems">>;

/** Checkpoints that somebody kept elsewhere, one a line. */
const keptForm = ({ lines }: Entries) => z.object({ kept: lines() });

/** The ledger itself: checked whole, signed for somebody to keep elsewhere, handed over. */
export function ledgerRoutes(app: FastifyInstance, { ledger, demo, replication, witnesses }: Parts): void {
  const folder = dirname(ledger.place);

  async function show(request: FastifyRequest, reply: FastifyReply, shown: Shown = {}) {
    const frame = frameOf(request, reply, { path: "/settings", demo });
    const { problems = [], kept = "", ...rest } = shown;
    const view: LedgerView = {
      place: ledger.place,
      entries: (await ledger.head())?.seq ?? 0,
      keyId: ledger.key?.keyId ?? null,
      pin: { file: pinnedKeyFile(folder), keyId: pinnedKey(folder) },
      found: ledger.found,
      replication: replication?.(),
      witnesses: await witnessesShown(),
      kept,
      problems,
      csrfToken: frame.csrfToken,
      ...rest,
    };
    const title = tellerOf(frame.locale)("ledger-page.title");
    return html(
      reply,
      page({ ...frame, title, main: <LedgerPage {...view} /> }),
      problems.length > 0 ? 422 : 200,
    );
  }

  async function witnessesShown(): Promise<LedgerView["witnesses"]> {
    const { folders, benches, of } = await witnessesOf(ledger);
    const raw = ledger.key && Buffer.from(ledger.key.publicKey, "base64").subarray(-32);
    const key = raw && { name: await ledger.name(), raw };
    return {
      ...{ folders: folders.join("\n"), of: of.join("\n") },
      benches: benches.map((one) => `${one.url} ${one.key}`).join("\n"),
      signs: key && verifierKey(key, "note"),
      cosigns: key && verifierKey(key, "cosignature"),
      states: witnesses(),
    };
  }

  app.post("/settings/ledger/witnesses", { preHandler: app.csrfProtection }, async (request, reply) => {
    try {
      await ledger.append("witnesses", "witnesses", formIn(request, witnessesForm));
      return reply.redirect("/settings/ledger", 303);
    } catch (error) {
      return show(request, reply, { problems: problemsOf(error, "folders") });
    }
  });

  app.get("/settings/ledger", (request, reply) => show(request, reply));

  app.post("/settings/ledger/checkpoint", { preHandler: app.csrfProtection }, async (request, reply) => {
    try {
      const made = await ledger.checkpoint();
      return show(
        request,
        reply,
        made ? { checkpoint: { line: writtenCheckpoint(made), row: made.seq } } : {},
      );
    } catch (error) {
      const { message: sentence } = refusalOf(error);
      return show(request, reply, { problems: [{ fieldId: "checkpoint-heading", error: sentence }] });
    }
  });

  app.post("/settings/ledger/check", { preHandler: app.csrfProtection }, async (request, reply) => {
    const { kept: lines } = formIn(request, keptForm);
    const kept = lines.join("\n");
    const read = lines.map(readOutside);
    const wrong = lines.find((_, place) => read[place] === null);
    if (wrong !== undefined) {
      const error = message("ledger-page.check.no-line", {
        line: wrong.slice(0, 80),
      });
      return show(request, reply, { kept, problems: [{ fieldId: "kept", error }] });
    }
    const checkpoints = read.flatMap((one) => (one ? [one] : []));
    // the last entries get their signature first, so that the key vouches for all of them
    await ledger.checkpoint().catch(() => null);
    const keyId = pinnedKey(folder) ?? ledger.key?.keyId;
    const found = await ledger.verify({ checkpoints, ...(keyId === undefined ? {} : { keyId }) });
    if (!found.good) return show(request, reply, { kept, checked: found });
    const list = await ledger.verifyList();
    return show(request, reply, { kept, checked: { ...found, fitting: checkpoints.length, list } });
  });
}
