import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { fixed, plusMinus } from "../../views/numbers.ts";
import { page, render } from "../../views/page.tsx";
import { Problem } from "../../views/problem.tsx";
import { ImportedRecord, type ImportedView } from "../../views/records/imported.tsx";
import {
  FoundRecords,
  type RecordFilters,
  type RecordRow,
  RecordsIndex,
  type RecordsPage,
} from "../../views/records/index.tsx";
import { RecordPage } from "../../views/records/show.tsx";
import { type Locale, words } from "../../views/words/index.ts";
import { toldValue } from "../../views/words/told.ts";
import type { Library } from "../alloys/library.ts";
import { claimsOf, metalBands } from "../bench/metal-bands.ts";
import { Refusal } from "../bench/refusal.ts";
import type { Evaluate } from "../compute/evaluation.ts";
import type { EntryOf } from "../ledger/entry.ts";
import type { Ledger } from "../ledger/ledger.ts";
import type { MeasurementRecord, RecordQuery } from "../ledger/records.ts";
import { LedgerTrouble } from "../ledger/trouble.ts";
import { amendedWater } from "./amended-result.ts";
import { frameOf, lookOf } from "./look.ts";
import { fieldsOf, html, wantsPart } from "./page-request.ts";
import { photoForm, photoView } from "./photo-view.ts";
import { readRecord } from "./record-read.ts";
import { nameIn, recordView, whenOf } from "./record-view.ts";

interface RecordParts {
  ledger: Ledger;
  evaluate: Evaluate;
  demo: boolean;
  library: () => Library;
}

/** The list of records, one record with everything it rests on, and what may be added to it. */
export function recordRoutes(app: FastifyInstance, { ledger, evaluate, demo, library }: RecordParts): void {
  const frame = (request: FastifyRequest, reply: FastifyReply) =>
    frameOf(request, reply, { path: "/records", demo });

  app.get("/records", async (request, reply) => {
    const asked = request.query as Record<string, string | undefined>;
    const list = await listOf(ledger, asked, library(), lookOf(request).locale);
    if (wantsPart(request)) return html(reply, render(<FoundRecords {...list} />, lookOf(request).locale));
    const around = frame(request, reply);
    return html(
      reply,
      page({ ...around, title: words(around.locale).records.title, main: <RecordsIndex {...list} /> }),
    );
  });

  app.get<{ Params: { piece: string } }>("/records/:piece", async (request, reply) => {
    const entries = await ledger.entriesOf(request.params.piece);
    const imported = entries.find((entry) => entry.kind === "imported-weighing");
    if (imported?.kind === "imported-weighing") {
      const around = frame(request, reply);
      const title = words(around.locale).records.recordOf(imported.body.ticket);
      return html(
        reply,
        page({ ...around, title, main: <ImportedRecord {...importedView(imported, library())} /> }),
      );
    }
    const read = await readRecord(entries, evaluate);
    if (!read)
      return html(
        reply,
        page({
          ...frame(request, reply),
          title: words(lookOf(request).locale).records.none,
          main: (
            <Problem
              says={`No record is called "${request.params.piece}" in this ledger. Look for it in the list of records.`}
            />
          ),
        }),
        404,
      );
    const { piece, stated, curve } = read;
    const around = frame(request, reply);
    const view = {
      ...recordView(piece, entries, stated, curve, { ...around, library: library() }),
      photos: piece.photos.map((entry) => photoView(entry, piece.ticket)),
      photoForm: photoForm(`/records/${encodeURIComponent(piece.id)}/photos`, around.csrfToken),
    };
    return html(
      reply,
      page({
        ...around,
        title: words(around.locale).records.recordOf(piece.ticket),
        main: <RecordPage {...view} />,
      }),
    );
  });

  /** Adds to what is known of a record; the first entry stays as it was. */
  function addition(
    path: string,
    adds: (piece: string, fields: Record<string, string>) => Promise<unknown>,
  ): void {
    app.post<{ Params: { piece: string } }>(
      path,
      { preHandler: app.csrfProtection },
      async (request, reply) => {
        const { piece } = request.params;
        try {
          await adds(piece, fieldsOf(request));
          return reply.redirect(`/records/${piece}`, 303);
        } catch (error) {
          if (!(error instanceof LedgerTrouble || error instanceof Refusal || error instanceof RangeError))
            throw error;
          return html(
            reply,
            page({
              ...frame(request, reply),
              title: words(lookOf(request).locale).frame.notDone,
              main: <Problem says={error.message} />,
            }),
            422,
          );
        }
      },
    );
  }
  addition(
    "/records/:piece/amendments",
    async (
      piece,
      { ticket = "", piece: description = "", celsius = "", note = "", by = "", reason = "", step },
    ) => {
      const changed = {
        ...(ticket.trim() ? { ticket: ticket.trim() } : {}),
        ...(description.trim() ? { description: description.trim() } : {}),
      };
      const result =
        celsius.trim() === ""
          ? undefined
          : await amendedWater(await ledger.entriesOf(piece), celsius, evaluate);
      await ledger.append(
        "amendment",
        piece,
        {
          replaces: `result-${piece}`,
          reason: reason.trim(),
          by: by.trim(),
          ...(Object.keys(changed).length > 0 ? { piece: changed } : {}),
          ...(result ? { result } : {}),
        },
        step === undefined ? {} : { key: step },
      );
      if (note.trim())
        await ledger.append(
          "note",
          piece,
          { text: note.trim(), by: by.trim() },
          step === undefined ? {} : { key: `${step}-note` },
        );
    },
  );
  addition("/records/:piece/voiding", (piece, { by = "", reason = "", step }) =>
    ledger.append(
      "voiding",
      piece,
      { entry: `result-${piece}`, reason: reason.trim(), by: by.trim() },
      step === undefined ? {} : { key: step },
    ),
  );
}

function importedView({ id, hash, body }: EntryOf<"imported-weighing">, library: Library): ImportedView {
  const { from, measuredAt, description, claim, mass_g, density_g_cm3, u_g_cm3 } = body;
  return {
    from,
    when: whenOf(measuredAt),
    description,
    claim: claim == null ? "" : nameIn(library, claim),
    mass: `${mass_g} g`,
    density: `${density_g_cm3} g/cm³`,
    uncertainty: u_g_cm3 === undefined ? "" : `${u_g_cm3} g/cm³`,
    entry: id,
    hash,
  };
}

async function listOf(
  ledger: Ledger,
  asked: Record<string, string | undefined>,
  library: Library,
  locale: Locale,
): Promise<RecordsPage> {
  const filters: RecordFilters = {
    q: asked.q ?? "",
    state: asked.state ?? "",
    claim: asked.claim ?? "",
    from: asked.from ?? "",
    to: asked.to ?? "",
  };
  const found = await ledger.records(queryOf(filters, asked.before));
  const all = await ledger.records({ page: { size: 1 } });
  return {
    filters,
    claims: claimsOf(metalBands(library)).map(({ id, name }) => ({ id, name: toldValue(name, locale) })),
    rows: found.records.map((record) => rowOf(record, library, locale)),
    found: found.count,
    all: all.count,
    countedTo: { found: found.countIsFloor, all: all.countIsFloor },
    ...(found.next === null ? {} : { next: addressOf(filters, found.next) }),
  };
}

const states = ["agrees", "agrees-not-alone", "disagrees", "undecided"] as const;

function queryOf(filters: RecordFilters, before: string | undefined): RecordQuery {
  const state = states.find((one) => one === filters.state);
  const day = (text: string) => /^\d{4}-\d{2}-\d{2}$/.test(text);
  return {
    search: filters.q,
    filters: {
      ...(state ? { state } : {}),
      ...(filters.claim ? { claim: filters.claim } : {}),
      ...(day(filters.from) ? { from: `${filters.from}T00:00:00.000Z` } : {}),
      ...(day(filters.to) ? { until: `${filters.to}T23:59:59.999Z` } : {}),
    },
    page: before !== undefined && /^\d+$/.test(before) ? { before: Number(before) } : {},
  };
}

function addressOf(filters: RecordFilters, before: number): string {
  const query = new URLSearchParams(Object.entries(filters).filter(([, value]) => value !== ""));
  query.set("before", String(before));
  return `/records?${query}`;
}

function rowOf(record: MeasurementRecord, library: Library, locale: Locale): RecordRow {
  return {
    id: record.subject,
    when: whenOf(record.at),
    ticket: record.ticket,
    piece: record.description,
    mass: `${fixed(record.mass_g, 4, locale)} g`,
    density:
      record.expanded_g_cm3 === null
        ? fixed(record.density_g_cm3, 2, locale)
        : plusMinus(record.density_g_cm3, record.expanded_g_cm3, locale),
    claimName: record.claim === null ? "" : toldValue(nameIn(library, record.claim), locale),
    ...(record.state === null ? {} : { state: states.find((one) => one === record.state) ?? "undecided" }),
    ...(record.voided ? { since: "voided" as const } : {}),
  };
}
