import type { FastifyInstance } from "fastify";
import { z } from "zod";
import { purities } from "../../../calibration/liquid.ts";
import { message } from "../../../calibration/message.ts";
import { FirstStart } from "../../../views/first-start/index.tsx";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { Problem } from "../../../views/problem.tsx";
import { methodNames } from "../../methods/index.ts";
import { metalGroups, sources } from "../../station/bench-settings.ts";
import type { SettingsRepository } from "../../station/settings-repository.ts";
import { type Entries, postedForm } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { html } from "../page-request.ts";

/** Goes over to another bench once the answer has been sent; the pages stay at their address. */
export type ChangeBench = (to: "demonstration" | "typed") => void;

export interface FirstStartParts {
  settings: SettingsRepository;
  demo: boolean;
  /** whether a balance is on a cable already */
  cabled: boolean;
  /** undefined where this start of the bench cannot be exchanged for another */
  changeBench: ChangeBench | undefined;
}

const firstStartForm = ({ choice }: Entries) =>
  z.object({
    method: choice(methodNames),
    metal: choice(metalGroups, { first: "any" }),
    source: choice(sources),
    water: choice(purities, { first: "distilled" }),
  });

/** Where each answer about the source leads next. */
const next = { typed: "/", cable: "/balances", simulated: "/" } as const;

/** Three questions that set a new bench up; the answers are its first settings. */
export function firstStartRoutes(
  app: FastifyInstance,
  { settings, demo, cabled, changeBench }: FirstStartParts,
): void {
  app.get("/first-start", async (request, reply) => {
    const frame = frameOf(request, reply, { path: "/first-start", demo });
    const t = tellerOf(frame.locale);
    const { method, metal, source, conditions } = settings.now;
    const answers = { method, metal, source, water: conditions.purity };
    const main = (
      <FirstStart
        csrfToken={frame.csrfToken}
        locale={frame.locale}
        metals={metalGroups.map((id) => ({ id, name: t(`settings.metals.${id}`) }))}
        answers={settings.answered ? answers : cabled ? { source: "cable" } : {}}
        canTry={changeBench !== undefined && !demo}
      />
    );
    return html(
      reply,
      page({
        ...frame,
        title: settings.answered ? t("first-start.first-questions") : t("first-start.welcome"),
        main,
      }),
    );
  });

  app.post("/first-start", { preHandler: app.csrfProtection }, async (request, reply) => {
    const read = postedForm(request, firstStartForm);
    if ("problems" in read) {
      const frame = frameOf(request, reply, { path: "/first-start", demo });
      const t = tellerOf(frame.locale);
      const sentence = message("first-start.refused");
      return html(
        reply,
        page({ ...frame, title: t("first-start.welcome"), main: <Problem message={sentence} /> }),
        422,
      );
    }
    const { water, ...answers } = read.values;
    await settings.keep({ ...answers, conditions: { ...settings.now.conditions, purity: water } });
    const { source } = answers;
    if (source === "simulated" && !demo && changeBench)
      reply.raw.once("finish", () => changeBench("demonstration"));
    return reply.redirect(cabled ? "/" : next[source], 303);
  });
}
