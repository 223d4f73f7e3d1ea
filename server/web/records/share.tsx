import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { Refusal } from "../../../calibration/refusal.ts";
import { isTooCoarse } from "../../../calibration/too-coarse.ts";
import { tellerOf, tellValue } from "../../../views/messages/tell.ts";
import { fixed, fromTo, inLocale, plusMinus } from "../../../views/numbers.ts";
import { page } from "../../../views/page.tsx";
import { SharePage } from "../../../views/records/share.tsx";
import { sharePicture } from "../../../views/records/share-picture.tsx";
import type { ShareSheet } from "../../../views/records/share-sheet.ts";
import { shareText } from "../../../views/records/share-text.ts";
import { sentenceText } from "../../../views/sentence.tsx";
import type { Evaluate } from "../../compute/evaluation.ts";
import type { Entry } from "../../ledger/entry.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { calledById } from "../../metals/composites/composite-by-id.ts";
import type { Library } from "../../metals/library.ts";
import { measured } from "../../reports/stated.ts";
import { frameOf, lookOf } from "../look.ts";
import { html } from "../page-request.ts";
import type { Manner } from "../when.ts";
import { noRecordPage } from "./no-record.tsx";
import { judgedBy, type RecordRead, readRecord } from "./record-read.ts";
import { recordView } from "./record-view.ts";

interface ShareParts {
  ledger: Ledger;
  evaluate: Evaluate;
  demo: boolean;
  library: () => Library;
}

/** What may be added to the sheet; all of it stays out until it is ticked. */
const tickable = ["ticket", "piece", "day"] as const;
type Ticked = ReadonlySet<(typeof tickable)[number]>;

type ShareRequest = FastifyRequest<{
  Params: { piece: string };
  Querystring: Record<string, string | undefined>;
}>;

/** One page to share of a record: the page that shows it, its picture, its text. The address keeps what is ticked. */
export function shareRoutes(app: FastifyInstance, { ledger, evaluate, demo, library }: ShareParts): void {
  async function sheetFor(request: ShareRequest): Promise<ShareSheet | undefined> {
    const entries = await ledger.entriesOf(request.params.piece);
    const read = await readRecord(entries, evaluate);
    return (
      read &&
      sheetOf(read, entries, {
        ticked: tickedIn(request),
        ...lookOf(request),
        library: library(),
        judgedBy: await judgedBy(ledger, read.stated, library()),
      })
    );
  }
  const missing = (request: ShareRequest, reply: FastifyReply) =>
    noRecordPage(reply, frameOf(request, reply, { path: "/records", demo }), request.params.piece);

  app.get("/records/:piece/share", async (request: ShareRequest, reply) => {
    const sheet = await sheetFor(request);
    if (!sheet) return missing(request, reply);
    const frame = frameOf(request, reply, { path: "/records", demo });
    const query = new URLSearchParams([...tickedIn(request)].map((name) => [name, "1"]));
    return html(
      reply,
      page({
        ...frame,
        title: tellerOf(frame.locale)("share.page-title"),
        scripts: ["share.js"],
        main: (
          <SharePage
            id={request.params.piece}
            ticked={tickedIn(request)}
            query={query.toString()}
            text={shareText(sheet, frame.locale)}
          />
        ),
      }),
    );
  });

  app.get("/records/:piece/share.svg", async (request: ShareRequest, reply) => {
    const sheet = await sheetFor(request);
    if (!sheet) return missing(request, reply);
    return reply.type("image/svg+xml; charset=utf-8").send(sharePicture(sheet, lookOf(request).locale));
  });

  app.get("/records/:piece/share.txt", async (request: ShareRequest, reply) => {
    const sheet = await sheetFor(request);
    if (!sheet) return missing(request, reply);
    return reply.type("text/plain; charset=utf-8").send(shareText(sheet, lookOf(request).locale));
  });
}

function tickedIn({ query }: ShareRequest): Ticked {
  return new Set(tickable.filter((name) => query[name] === "1"));
}

function sheetOf(
  read: RecordRead,
  entries: readonly Entry[],
  { ticked, ...around }: Manner & { ticked: Ticked; library: Library; judgedBy: Library },
): ShareSheet {
  const { item, stated, curve } = read;
  const { locale, judgedBy: library } = around;
  const view = recordView(item, entries, stated, curve, { csrfToken: "", ...around });
  const { statement } = measured(stated);
  if (!view.measured) throw new Refusal("record.no-density");
  const { density, plot } = view.measured;
  const t = tellerOf(locale);
  const standing = item.captures.filter(({ excluded }) => !excluded);
  const { confidence } = plot.measured ?? { confidence: 0 };
  const sheet: ShareSheet = {
    simulated: entries.some((entry) => entry.kind === "capture" && entry.body.source === "simulated"),
    voided: view.voided !== undefined,
    closed: view.closed && sentenceText(view.closed.message, locale),
    ...(ticked.has("ticket") ? { ticket: stated.piece.ticket ?? item.ticket } : {}),
    ...(ticked.has("piece") ? { piece: stated.piece.description ?? item.description } : {}),
    ...(ticked.has("day") ? { day: view.when.slice(0, 10) } : {}),
    method: view.method,
    liquid: String(view.conditions[0]?.[1] ?? ""),
    readings: standing.map(({ role, text, unit, takenBy }) => ({
      role: t(`bench.roles.${role}`),
      shown: `${inLocale(text, locale)} ${unit}`,
      typed: takenBy === "typed",
    })),
    excluded: item.captures.length - standing.length,
    density,
    expanded: isTooCoarse(statement.density_g_cm3, statement.expanded_g_cm3)
      ? undefined
      : plusMinus(statement.density_g_cm3, statement.expanded_g_cm3, locale).split(" ± ")[1],
    k: fixed(statement.k, 2, locale),
    percent: inLocale(String(+(confidence * 100).toFixed(4)), locale),
    interval: fromTo(Math.max(0, statement.interval_g_cm3[0]), statement.interval_g_cm3[1], locale),
    claimName: view.result.claim === undefined ? undefined : tellValue(view.result.claim, locale),
    state: view.result.state,
    answer: view.result.answer,
    notExcluded: statement.not_excluded.map(({ id }) => tellValue(calledById(id, library), locale)),
    plot,
  };
  // Typed words may promise what only others may promise; they go out to strangers here.
  return sheet;
}
