import type { FastifyInstance, FastifyRequest } from "fastify";
import { message } from "../../../calibration/message.ts";
import { massUnits } from "../../../calibration/units.ts";
import { tell, tellerOf } from "../../../views/messages/tell.ts";
import { OfflinePage } from "../../../views/offline/index.tsx";
import { page } from "../../../views/page.tsx";
import { sentenceText } from "../../../views/sentence.tsx";
import { LedgerError } from "../../ledger/error.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import type { Library } from "../../metals/library.ts";
import { rolesOf } from "../../methods/index.ts";
import type { Bench } from "../../station/bench.ts";
import type { SettingsRepository } from "../../station/settings-repository.ts";
import { postedForm } from "../forms/form.ts";
import { frameOf, lookOf } from "../look.ts";
import { claimOptions } from "../metals/claim-options.ts";
import { html } from "../page-request.ts";
import { refusalOf } from "../refused.ts";
import { keptRoles, offlineForm, offlineMethods, takeKept } from "./offline-weighing.ts";

interface Parts {
  bench: Bench;
  ledger: Ledger;
  settings: SettingsRepository;
  library: () => Library;
  demo: boolean;
}

/** What the device is told of one weighing: where it stands now, and where to see it. */
interface Answer {
  state: "recorded" | "open" | "waits" | "refused";
  message?: string;
  /** the entry that must be typed again */
  at?: string;
  href?: string;
}

/** Weighings typed while the bench is out of reach: their page, kept on the device, and what it sends later. */
export function offlineRoutes(app: FastifyInstance, { bench, ledger, settings, library, demo }: Parts): void {
  app.get("/offline", (request, reply) => {
    const frame = frameOf(request, reply, { path: "/offline", demo });
    const main = (
      <OfflinePage
        claims={claimOptions(library(), frame.locale, settings.now.metal)}
        methods={offlineMethods}
        method={offlineMethods.find((name) => name === settings.now.method) ?? offlineMethods[0]!}
        readings={keptRoles.map((role) => ({
          role,
          methods: offlineMethods.filter((name) => rolesOf(name).includes(role)),
        }))}
        units={massUnits}
        csrfToken={frame.csrfToken}
      />
    );
    return html(reply, page({ ...frame, title: tellerOf(frame.locale)("offline.title"), main }));
  });

  app.post("/offline/weighings", { preHandler: app.csrfProtection }, async (request, reply) => {
    return reply.send(await taken(request));
  });

  async function taken(request: FastifyRequest): Promise<Answer> {
    const { locale } = lookOf(request);
    const read = postedForm(
      request,
      offlineForm((id) => library().has(id)),
    );
    if ("problems" in read) {
      const [problem] = read.problems;
      return { state: "refused", message: tell(problem!.error, locale), at: problem!.fieldId };
    }
    const { key } = read.values;
    const before = await ledger.entriesOf(key);
    const other = bench.open && bench.open.id !== key ? bench.open.ticket : undefined;
    if (before.length === 0 && other !== undefined)
      return { state: "waits", message: tell(message("offline.waits-for", { ticket: other }), locale) };
    try {
      const item = await takeKept(read.values, bench, ledger);
      return item.closed?.how === "recorded"
        ? { state: "recorded", message: "", href: `/records/${key}` }
        : { state: "recorded", message: tell(message("offline.called-off"), locale), href: "/records" };
    } catch (error) {
      const refused = refusalOf(error);
      const sentence = sentenceText(refused.message, locale);
      // what could not be stored is sent again; what a check or a second person holds up is gone on with at the bench
      if (error instanceof LedgerError) return { state: "waits", message: sentence };
      if (bench.open?.id === key) return { state: "open", message: sentence, href: "/" };
      return { state: "refused", message: sentence, at: refused.field ?? "ticket" };
    }
  }
}
