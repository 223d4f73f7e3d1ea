import { dirname } from "node:path";
import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { RunningPage } from "../../../views/running.tsx";
import { LedgerPage, type LedgerView } from "../../../views/settings/ledger.tsx";
import { type OutsideHead, readOutside, writtenCheckpoint } from "../../ledger/checkpoint.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { verifierKey } from "../../ledger/note.ts";
import { pinnedKey, pinnedKeyFile } from "../../ledger/pinned-key.ts";
import type { ReplicationState } from "../../ledger/replication.ts";
import type { Steps } from "../../ledger/turns.ts";
import { type WitnessState, witnessesOf } from "../../ledger/witness/keep-witnessed.ts";
import { type Entries, formIn } from "../forms/form.ts";
import { type Job, job, lookAgainSeconds, soon } from "../job.ts";
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

type Checked = NonNullable<LedgerView["checked"]>;
type Shown = Partial<Pick<LedgerView, "checkpoint" | "checked" | "kept" | "problems">>;

const stopCheckAt = "/settings/ledger/checking/stopped";

/** Checkpoints that somebody kept elsewhere, one a line. */
const keptForm = ({ lines }: Entries) => z.object({ kept: lines() });

/** The ledger itself: checked whole, signed for somebody to keep elsewhere, handed over. */
export function ledgerRoutes(app: FastifyInstance, { ledger, demo, replication, witnesses }: Parts): void {
  const folder = dirname(ledger.place);
  const frame = (request: FastifyRequest, reply: FastifyReply) =>
    frameOf(request, reply, { path: "/settings", demo });
  /** one check at a time: whoever asks for another meanwhile is shown this one */
  let checking: { kept: string; job: Job<Checked> } | undefined;

  async function show(request: FastifyRequest, reply: FastifyReply, shown: Shown = {}) {
    const around = frame(request, reply);
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
      csrfToken: around.csrfToken,
      ...rest,
    };
    const title = tellerOf(around.locale)("ledger-page.title");
    return html(
      reply,
      page({ ...around, title, main: <LedgerPage {...view} /> }),
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
    const of = (await ledger.head())?.seq ?? 0;
    checking ??= { kept, job: job(of, (steps) => checkedWhole(ledger, checkpoints, steps)) };
    await soon(checking.job);
    return checking.job.outcome ? ended(request, reply) : reply.redirect("/settings/ledger/checking", 303);
  });

  app.get("/settings/ledger/checking", (request, reply) => {
    if (!checking) return reply.redirect("/settings/ledger", 303);
    const { of, seen, outcome } = checking.job;
    if (outcome) return ended(request, reply);
    const around = frame(request, reply);
    const soFar = message("ledger-page.check.so-far", { seen, entries: of });
    const { csrfToken } = around;
    const main = <RunningPage {...{ of, seen, soFar, csrfToken }} run="check" stopAt={stopCheckAt} />;
    const title = tellerOf(around.locale)("ledger-page.check.running");
    return html(reply.header("refresh", lookAgainSeconds), page({ ...around, title, main }));
  });

  app.post(stopCheckAt, { preHandler: app.csrfProtection }, async (request, reply) => {
    checking?.job.stop();
    await checking?.job.ended;
    return checking ? ended(request, reply) : reply.redirect("/settings/ledger", 303);
  });

  /** What a check came to is told once. */
  function ended(request: FastifyRequest, reply: FastifyReply) {
    const { kept = "", job: { outcome } = {} } = checking ?? {};
    checking = undefined;
    if (outcome && "done" in outcome && outcome.done)
      return show(request, reply, { kept, checked: outcome.done });
    const error = outcome && "message" in outcome ? outcome.message : message("ledger-page.check.stopped");
    return show(request, reply, { kept, problems: [{ fieldId: "kept", error }] });
  }

  app.addHook("preClose", async () => {
    checking?.job.stop();
    await checking?.job.ended;
  });
}

/** The whole chain and the list made from it, by the key that is trusted for this ledger and by what was kept elsewhere. */
async function checkedWhole(
  ledger: Ledger,
  checkpoints: readonly OutsideHead[],
  steps: Steps,
): Promise<Checked> {
  // the last entries get their signature first, so that the key vouches for all of them
  await ledger.checkpoint().catch(() => null);
  const keyId = pinnedKey(dirname(ledger.place)) ?? ledger.key?.keyId;
  const found = await ledger.verify({ checkpoints, ...(keyId === undefined ? {} : { keyId }) }, steps);
  if (!found.good) return found;
  return { ...found, fitting: checkpoints.length, list: await ledger.verifyList(steps) };
}
