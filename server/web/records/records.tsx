import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page, render } from "../../../views/page.tsx";
import { Problem } from "../../../views/problem.tsx";
import type { RefusedRecordForm } from "../../../views/records/amendments.tsx";
import { ImportedRecord, type ImportedView } from "../../../views/records/imported.tsx";
import { FoundRecords, RecordsIndex } from "../../../views/records/index.tsx";
import { RecordPage } from "../../../views/records/show.tsx";
import type { Evaluate } from "../../compute/evaluation.ts";
import type { EntryOf } from "../../ledger/entry.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import type { Library } from "../../metals/library.ts";
import { amendableReadings } from "../../station/amendment-known.ts";
import type { Station } from "../../station/station.ts";
import { type Seen, seenOf } from "../about.ts";
import { formIn } from "../forms/form.ts";
import { assayView } from "../laboratory/assay-view.ts";
import { frameOf, lookOf } from "../look.ts";
import { named } from "../names.ts";
import { asTyped, html, paramOf, queryOf, wantsPart } from "../page-request.ts";
import { excludeForm, photoIn } from "../photos/photo-forms.ts";
import { photoForm, photoView } from "../photos/photo-view.ts";
import { refusalOf } from "../refused.ts";
import { type Manner, whenOf } from "../when.ts";
import { amendmentForm, answerForm, voidForm } from "./amendment-form.ts";
import { noRecord } from "./no-record.tsx";
import { listOf } from "./record-list.ts";
import { judgedBy, readRecord } from "./record-read.ts";
import { nameIn, recordView } from "./record-view.ts";

type ItemRequest = FastifyRequest<{ Params: { piece: string } }>;

interface RecordParts {
  station: Station;
  ledger: Ledger;
  evaluate: Evaluate;
  demo: boolean;
  library: () => Library;
  /** where the photos lie */
  photos: string;
}

/** The list of records, one record with everything it rests on, and what may be added to it. */
export function recordRoutes(
  app: FastifyInstance,
  { station, ledger, evaluate, demo, library, photos }: RecordParts,
): void {
  const frame = (request: FastifyRequest, reply: FastifyReply) =>
    frameOf(request, reply, { path: "/records", demo });

  app.get("/records", async (request, reply) => {
    const asked = queryOf(request);
    const list = await listOf(ledger, asked, library(), lookOf(request));
    if (wantsPart(request)) return html(reply, render(<FoundRecords {...list} />, lookOf(request).locale));
    const around = frame(request, reply);
    return html(
      reply,
      page({ ...around, title: tellerOf(around.locale)("records.title"), main: <RecordsIndex {...list} /> }),
    );
  });

  /** One record; with a form of it that was sent back, and everything typed still in its field. */
  async function show(request: ItemRequest, reply: FastifyReply, refused?: RefusedRecordForm) {
    const entries = named(ledger, await ledger.entriesOf(request.params.piece), lookOf(request).locale);
    const imported = entries.find((entry) => entry.kind === "imported-weighing");
    if (imported?.kind === "imported-weighing") {
      const around = frame(request, reply);
      const title = tellerOf(around.locale)("records.record-of", { ticket: imported.body.ticket });
      return html(
        reply,
        page({
          ...around,
          title,
          main: <ImportedRecord {...importedView(imported, library(), around)} />,
        }),
      );
    }
    const read = await readRecord(entries, evaluate);
    if (!read)
      return html(
        reply,
        page({
          ...frame(request, reply),
          title: tellerOf(lookOf(request).locale)("records.none"),
          main: <Problem message={noRecord(request.params.piece)} />,
        }),
        404,
      );
    const { item, stated, curve } = read;
    const around = frame(request, reply);
    const view = {
      ...recordView(item, entries, stated, curve, {
        ...around,
        library: library(),
        judgedBy: await judgedBy(ledger, stated, library()),
      }),
      assay: assayView(item.id, entries, around),
      photos: item.photos.map((entry) => photoView(entry, item.ticket, around.zone)),
      excludePhoto: {
        action: (entry: string) =>
          `/records/${encodeURIComponent(item.id)}/photos/${encodeURIComponent(entry)}/voiding`,
        csrfToken: around.csrfToken,
        about: { subject: item.id, seen: entries.length },
        asksBy: true,
      },
      excludedPhotos: item.excludedPhotos.map(({ reason }) => reason),
      amendable: amendableReadings(item).map(({ id, role, text, unit }) => ({ id, role, text, unit })),
      photoForm: photoForm(`/records/${encodeURIComponent(item.id)}/photos`, around.csrfToken, {
        about: { subject: item.id, seen: entries.length },
        shows: refused?.from.endsWith("/photos") ? refused.typed.shows : undefined,
      }),
      ...(refused ? { refused } : {}),
    };
    return html(
      reply,
      page({
        ...around,
        title: tellerOf(around.locale)("records.record-of", { ticket: view.ticket }),
        main: <RecordPage {...view} />,
      }),
      refused ? 422 : 200,
    );
  }

  app.get<{ Params: { piece: string } }>("/records/:piece", (request, reply) => show(request, reply));

  /** Adds to what is known of a record; the first entry stays as it was. */
  function addition(
    path: string,
    adds: (about: Seen, request: FastifyRequest) => Promise<unknown>,
    part = "",
  ): void {
    app.post<{ Params: { piece: string } }>(
      path,
      { preHandler: app.csrfProtection },
      async (request, reply) => {
        const { piece } = request.params;
        try {
          await adds(seenOf(piece, request), request);
          return reply.redirect(`/records/${encodeURIComponent(piece)}${part}`, 303);
        } catch (error) {
          const { message } = refusalOf(error);
          return show(request, reply, { message, from: request.url, typed: asTyped(request) });
        }
      },
    );
  }
  addition("/records/:piece/amendments", (about, request) =>
    station.do({ do: "amend", ...about, ...formIn(request, amendmentForm) }),
  );
  addition("/records/:piece/voiding", (about, request) =>
    station.do({ do: "void", ...about, ...formIn(request, voidForm) }),
  );
  addition("/records/:piece/answers", (about, request) =>
    station.do({ do: "answer-check", ...about, ...formIn(request, answerForm) }),
  );
  addition(
    "/records/:piece/photos",
    async (about, request) =>
      station.do({ do: "add-photo", ...about, photo: await photoIn(request, photos) }),
    "#photos",
  );
  addition(
    "/records/:piece/photos/:entry/voiding",
    (about, request) =>
      station.do({ do: "exclude-photo", ...about, ...entryOf(request), ...formIn(request, excludeForm) }),
    "#photos",
  );
}

const entryOf = (request: FastifyRequest) => ({ entry: paramOf(request, "entry") });

function importedView(
  { id, hash, body }: EntryOf<"imported-weighing">,
  library: Library,
  { locale, zone }: Manner,
): ImportedView {
  const { from, measuredAt, description, claim, mass_g, density_g_cm3, u_g_cm3 } = body;
  return {
    from,
    when: whenOf(measuredAt, zone),
    description,
    claim: claim == null ? "" : nameIn(library, claim, locale),
    mass: `${mass_g} g`,
    density: `${density_g_cm3} g/cm³`,
    uncertainty: u_g_cm3 === undefined ? "" : `${u_g_cm3} g/cm³`,
    entry: id,
    hash,
  };
}
