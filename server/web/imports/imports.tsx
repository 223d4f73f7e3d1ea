import { createHash } from "node:crypto";
import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { ImportPage, type ImportView, PreviewPage } from "../../../views/imports/index.tsx";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { RunningPage } from "../../../views/running.tsx";
import type { Sentence } from "../../../views/sentence.tsx";
import { alsoUnderstood } from "../../ledger/imports/headings.ts";
import { type ListName, lists } from "../../ledger/imports/lists.ts";
import { type ImportPreview, previewImport } from "../../ledger/imports/preview.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import type { CurrentLibrary } from "../../station/current-library.ts";
import { type Entries, formIn } from "../forms/form.ts";
import { type Job, job, lookAgainSeconds, soon } from "../job.ts";
import { frameOf, ownMark } from "../look.ts";
import { html, queryOf } from "../page-request.ts";
import { nameIn } from "../records/record-view.ts";
import { refusalOf } from "../refused.ts";
import { fileOf } from "../uploads.ts";
import { rowCheck, takeOver } from "./import-lists.ts";

interface Parts {
  ledger: Ledger;
  library: CurrentLibrary;
  demo: boolean;
}

/** A list that is being taken over. */
interface ImportRun {
  list: ListName;
  job: Job<number>;
}

/** Lists that were looked at and are not taken over yet; an older one is chosen again. */
const mostHeld = 4;
const rowsShown = 20;
const refusedShown = 500;

/** The columns of each list, with the words that are understood for them in the language of the page. */
function headingsIn(locale: Locale): ImportView["headings"] {
  const of = (list: ListName) =>
    Object.entries(lists[list].columns).map(([name, { needed }]) => ({
      name,
      needed,
      also: alsoUnderstood(name, locale),
    }));
  return {
    weighings: of("weighings"),
    tickets: of("tickets"),
    specifications: of("specifications"),
    metals: of("metals"),
  };
}

const importForm = ({ typed, exact }: Entries) =>
  z.object({
    list: typed().transform((list) => (isList(list) ? list : "weighings")),
    text: exact(),
    from: typed(),
  });
const runForm = ({ typed }: Entries) => z.object({ run: typed() });
const heldForm = ({ typed }: Entries) => z.object({ held: typed() });

/** Lists from elsewhere: first shown with every refused cell, then taken over. */
export function importRoutes(app: FastifyInstance, { ledger, library, demo }: Parts): void {
  const runs = new Map<string, ImportRun>();
  const held = new Map<string, { preview: ImportPreview; from: string }>();
  const frame = (request: FastifyRequest, reply: FastifyReply) =>
    frameOf(request, reply, { path: "/settings", demo });

  function choose(
    request: FastifyRequest,
    reply: FastifyReply,
    { list = "weighings", text = "", from = "", problems = [], taken }: Partial<ImportView> = {},
  ) {
    const around = frame(request, reply);
    const headings = headingsIn(around.locale);
    const view = { headings, list, text, from, problems, taken, csrfToken: around.csrfToken };
    const title = tellerOf(around.locale)("imports.title");
    return html(
      reply,
      page({ ...around, title, main: <ImportPage {...view} /> }),
      problems.length > 0 ? 422 : 200,
    );
  }

  app.get("/imports", (request, reply) => {
    const { taken = "", list = "", of = "" } = queryOf(request);
    const isCount = (text: string) => /^\d+$/.test(text);
    const stoppedOf = isCount(of) ? { stoppedOf: Number(of) } : {};
    const isEnded = isCount(taken) && isList(list);
    return choose(
      request,
      reply,
      isEnded ? { list, taken: { list, count: Number(taken), ...stoppedOf } } : {},
    );
  });

  app.post("/imports", { preHandler: app.csrfProtection }, async (request, reply) => {
    const { list, text: pasted, from } = formIn(request, importForm);
    const file = fileOf(request, "file");
    const text = file ? textOf(file) : pasted;
    const again = (fieldId: string, error: Sentence) =>
      choose(request, reply, { list, from, text: pasted, problems: [{ fieldId, error }] });
    if (text.trim() === "") return again("file", message("imports.no-text"));
    if (from === "") return again("from", message("imports.no-from"));
    try {
      const preview = await previewImport(list, text, {
        mark: ownMark(request),
        asRow: rowCheck(list, library.now),
      });
      const key = createHash("sha256").update(`${list}\n${from}\n${text}`).digest("hex");
      held.delete(key);
      held.set(key, { preview, from });
      for (const oldest of [...held.keys()].slice(0, -mostHeld)) held.delete(oldest);
      return show(request, reply, preview, from, key);
    } catch (error) {
      return again("file", refusalOf(error).message);
    }
  });

  function show(
    request: FastifyRequest,
    reply: FastifyReply,
    { list, rows, refused, unknownColumns }: ImportPreview,
    from: string,
    key: string,
  ) {
    const around = frame(request, reply);
    const t = tellerOf(around.locale);
    const names = Object.keys(lists[list].columns);
    const main = (
      <PreviewPage
        list={list}
        from={from}
        headings={names}
        right={rows.length}
        rows={rows.slice(0, rowsShown).map(({ line, values }) => ({
          line,
          cells: names.map((name) => {
            const text = cellText(values[name]);
            return name === "claim" || name === "metal" ? nameIn(library.now, text, around.locale) : text;
          }),
        }))}
        refusedCount={refused.length}
        refused={refused.slice(0, refusedShown)}
        leftOut={unknownColumns}
        held={key}
        csrfToken={around.csrfToken}
      />
    );
    return html(
      reply,
      page({ ...around, title: t("imports.preview", { list: t(`imports.lists.${list}`) }), main }),
    );
  }

  app.post("/imports/taken", { preHandler: app.csrfProtection }, async (request, reply) => {
    const { held: key } = formIn(request, heldForm);
    const waiting = held.get(key);
    if (!waiting) {
      const error = message("imports.gone");
      return choose(request, reply, { problems: [{ fieldId: "file", error }] });
    }
    const { preview, from } = waiting;
    const run = runs.get(key) ?? {
      list: preview.list,
      job: job(preview.rows.length, (steps) => takeOver(preview, from, { ledger, library, ...steps })),
    };
    runs.set(key, run);
    await soon(run.job);
    return run.job.outcome
      ? ended(request, reply, key, run)
      : reply.redirect(`/imports/running?run=${key}`, 303);
  });

  app.get("/imports/running", (request, reply) => {
    const { run: key = "" } = queryOf(request);
    const run = runs.get(key);
    if (!run) return reply.redirect("/imports", 303);
    if (run.job.outcome) return ended(request, reply, key, run);
    const around = frame(request, reply);
    const { of, seen } = run.job;
    const view = {
      ...{ of, seen, run: key, stopAt: "/imports/stopped", csrfToken: around.csrfToken },
      soFar: message("imports.so-far", { seen, rows: of, list: { code: `imports.lists.${run.list}` } }),
    };
    const main = <RunningPage {...view} />;
    const title = tellerOf(around.locale)("imports.running");
    return html(reply.header("refresh", lookAgainSeconds), page({ ...around, title, main }));
  });

  app.post("/imports/stopped", { preHandler: app.csrfProtection }, async (request, reply) => {
    const { run: key } = formIn(request, runForm);
    const run = runs.get(key);
    if (!run) return reply.redirect("/imports", 303);
    run.job.stop();
    await run.job.ended;
    return ended(request, reply, key, run);
  });

  function ended(request: FastifyRequest, reply: FastifyReply, key: string, run: ImportRun) {
    runs.delete(key);
    const { list } = run;
    const { of, outcome } = run.job;
    if (outcome && "message" in outcome)
      return choose(request, reply, { list, problems: [{ fieldId: "file", error: outcome.message }] });
    const { done: count = 0, stopped = false } = outcome ?? {};
    if (!stopped) held.delete(key);
    return reply.redirect(`/imports?taken=${count}&list=${list}${stopped ? `&of=${of}` : ""}`, 303);
  }

  app.addHook("preClose", async () => {
    const jobs = [...runs.values()].map((run) => run.job);
    for (const running of jobs) running.stop();
    await Promise.all(jobs.map((running) => running.ended));
  });
}

function isList(name: string): name is ListName {
  return Object.hasOwn(lists, name);
}

/** Table programs write UTF-8, with a mark or without, UTF-16, or the older one-byte text of Western Europe. */
function textOf(bytes: Uint8Array): string {
  const wide = wideText(bytes);
  if (wide) return new TextDecoder(wide).decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

/** Two bytes a sign: told by the byte order mark, else by the empty half of the first heading. */
function wideText([first, second]: Uint8Array): "utf-16le" | "utf-16be" | undefined {
  if ((first === 0xff && second === 0xfe) || (first && second === 0)) return "utf-16le";
  if ((first === 0xfe && second === 0xff) || (first === 0 && second)) return "utf-16be";
  return undefined;
}

function cellText(value: unknown): string {
  if (value === undefined) return "";
  return typeof value === "object" ? JSON.stringify(value).replace(/[{}"]/g, "") : String(value);
}
