import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { purities } from "../../../calibration/liquid.ts";
import { massUnits } from "../../../calibration/units.ts";
import { isCode } from "../../../views/messages/catalogue.ts";
import { locales } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { inLocale } from "../../../views/numbers.ts";
import { page } from "../../../views/page.tsx";
import { Settings, type SettingsView } from "../../../views/settings/index.tsx";
import type { Ledger } from "../../ledger/ledger.ts";
import { firstSettings, metalGroups, timeZoneOf } from "../../station/bench-settings.ts";
import type { SettingsRepository } from "../../station/settings-repository.ts";
import { type Entries, type Form, formIn, postedForm } from "../forms/form.ts";
import { type Appearance, frameOf, keepLook, lookOf, themes } from "../look.ts";
import { asTyped, html, queryOf } from "../page-request.ts";
import { refusalOf } from "../refused.ts";
import { benchForm, numberFields, organisationForm, placeForm, secondPersonForm } from "./settings-form.ts";

export interface SettingsParts {
  ledger: Ledger;
  settings: SettingsRepository;
  demo: boolean;
}

/** How this device shows pages; what is left out stays. */
const lookForm =
  (now: Appearance) =>
  ({ choice, box }: Entries) =>
    z.object({
      theme: choice(themes, { first: now.theme }),
      locale: choice(locales, { first: now.locale }),
      keys: box(),
    });

type Problems = SettingsView["problems"];

/** The Settings page and its forms. Every refusal leaves what was typed in its field. */
export function settingsRoutes(app: FastifyInstance, { ledger, settings, demo }: SettingsParts): void {
  async function show(
    request: FastifyRequest,
    reply: FastifyReply,
    { problems = [], typed = {} }: { problems?: Problems; typed?: Record<string, string> } = {},
  ): Promise<FastifyReply> {
    const frame = frameOf(request, reply, { path: "/settings", demo });
    const t = tellerOf(frame.locale);
    const { kept = "" } = queryOf(request);
    const keptCode = `settings.kept.${kept}`;
    const {
      method,
      metal,
      scaleStep,
      secondUnit,
      instruments,
      conditions,
      decisionRule,
      house: organisation,
      secondPerson,
      place,
    } = settings.now;
    const view: SettingsView = {
      ...frame,
      method: (typed.method as SettingsView["method"] | undefined) ?? method,
      metal: typed.metal ?? metal,
      metals: metalGroups.map((id) => ({ id, name: t(`settings.metals.${id}`) })),
      water: typed.water ?? conditions.purity,
      waters: purities.map((id) => ({ id, name: t(`settings.waters.${id}`) })),
      numbers: numberFields(conditions, typed, frame.locale),
      rule: {
        kind: typed.rule ?? decisionRule.kind,
        multiple: typed.ruleMultiple ?? inLocale(decisionRule.multiple, frame.locale),
      },
      secondPerson: {
        massG: typed.secondMassG ?? inLocale(secondPerson.massG, frame.locale),
        worth: typed.secondWorth ?? inLocale(secondPerson.worth, frame.locale),
        change: typed.secondChange ?? inLocale(secondPerson.change, frame.locale),
      },
      place: {
        timeZone: typed.timeZone ?? place.timeZone,
        currency: typed.currency ?? place.currency,
      },
      ownZone: timeZoneOf(firstSettings),
      scaleStep: typed.scaleStep ?? inLocale(scaleStep.text, frame.locale),
      scaleStepUnit: typed.scaleStepUnit ?? scaleStep.unit,
      units: massUnits,
      secondUnit: typed.secondUnit ?? secondUnit,
      instruments: typed.instruments ?? instruments,
      organisation: typed.organisation ?? organisation.name,
      address: typed.address ?? organisation.address,
      contact: typed.contact ?? organisation.contact,
      accreditedBy: typed.accreditedBy ?? organisation.accreditedBy,
      accreditation: typed.accreditation ?? organisation.accreditation,
      verifiedScale: typed.verifiedScale ?? organisation.verifiedScale,
      verifiedUntil: typed.verifiedUntil ?? organisation.verifiedUntil,
      storage: [t("settings.ledger-is", { place: ledger.place })],
      problems,
      demo,
      ...(isCode(keptCode) ? { kept: t(keptCode) } : {}),
    };
    return html(
      reply,
      page({ ...frame, title: t("settings.title"), main: <Settings {...view} /> }),
      problems.length > 0 ? 422 : 200,
    );
  }

  /** A form of the page: what it says is kept, or each entry that needs another look is named. */
  function form<T>(name: string, read: () => Form<T>, keep: (values: T) => Promise<void>): void {
    app.post(`/settings/${name}`, { preHandler: app.csrfProtection }, async (request, reply) => {
      const typed = asTyped(request);
      const found = postedForm(request, read());
      if ("problems" in found) return show(request, reply, { problems: found.problems, typed });
      try {
        await keep(found.values);
        return reply.redirect(`/settings?kept=${name}`, 303);
      } catch (error) {
        const { message } = refusalOf(error);
        return show(request, reply, { problems: [{ fieldId: "main", error: message }], typed });
      }
    });
  }

  app.get("/settings", (request, reply) => show(request, reply));
  app.post("/settings/look", { preHandler: app.csrfProtection }, (request, reply) => {
    keepLook(reply, formIn(request, lookForm(lookOf(request))));
    return reply.redirect("/settings?kept=look", 303);
  });
  form(
    "bench",
    () => benchForm(settings.now),
    (bench) => settings.keep(bench),
  );
  form(
    "second-person",
    () => secondPersonForm,
    (secondPerson) => settings.keep({ secondPerson }),
  );
  form(
    "place",
    () => placeForm,
    (place) => settings.keep({ place }),
  );
  form(
    "organisation",
    () => organisationForm,
    (organisation) => settings.keep({ house: organisation }),
  );
}
