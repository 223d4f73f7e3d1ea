import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { purities } from "../../../calibration/liquid.ts";
import { massUnits } from "../../../calibration/units.ts";
import { isCode } from "../../../views/messages/catalogue.ts";
import { type Locale, locales } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { inLocale, readNumber } from "../../../views/numbers.ts";
import { page } from "../../../views/page.tsx";
import { Settings, type SettingsView } from "../../../views/settings/index.tsx";
import type { Ledger } from "../../ledger/ledger.ts";
import { LedgerTrouble } from "../../ledger/trouble.ts";
import { metalGroups } from "../../station/bench-settings.ts";
import type { KeptSettings } from "../../station/kept-settings.ts";
import { frameOf, keepLook, type Look, lookOf, themes } from "../look.ts";
import { fieldsOf, html } from "../page-request.ts";
import { benchSettingsFrom, numberFields } from "./settings-form.ts";

export interface SettingsParts {
  ledger: Ledger;
  settings: KeptSettings;
  demo: boolean;
}

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
    const { kept = "" } = request.query as { kept?: string };
    const keptCode = `settings.kept.${kept}`;
    const { method, metal, scaleStep, secondUnit, conditions, decisionRule, house, secondPerson } =
      settings.now;
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
      },
      scaleStep: typed.scaleStep ?? inLocale(scaleStep.text, frame.locale),
      scaleStepUnit: typed.scaleStepUnit ?? scaleStep.unit,
      units: massUnits,
      secondUnit: typed.secondUnit ?? secondUnit,
      house: typed.house ?? house.name,
      address: typed.address ?? house.address,
      contact: typed.contact ?? house.contact,
      accreditedBy: typed.accreditedBy ?? house.accreditedBy,
      accreditation: typed.accreditation ?? house.accreditation,
      verifiedScale: typed.verifiedScale ?? house.verifiedScale,
      verifiedUntil: typed.verifiedUntil ?? house.verifiedUntil,
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

  /** A form of the page: `does` gives the entries that need another look, none when all was kept. */
  function form(
    name: string,
    does: (fields: Record<string, string>, look: Look, reply: FastifyReply) => Promise<Problems> | Problems,
  ): void {
    app.post(`/settings/${name}`, { preHandler: app.csrfProtection }, async (request, reply) => {
      const fields = fieldsOf(request);
      try {
        const problems = await does(fields, lookOf(request), reply);
        if (problems.length === 0) return reply.redirect(`/settings?kept=${name}`, 303);
        return show(request, reply, { problems, typed: fields });
      } catch (error) {
        if (!(error instanceof LedgerTrouble)) throw error;
        return show(request, reply, { problems: [{ fieldId: "main", error: error.message }], typed: fields });
      }
    });
  }

  app.get("/settings", (request, reply) => show(request, reply));

  form("look", ({ theme, locale, keys }, look, reply) => {
    keepLook(reply, {
      theme: themes.find((one) => one === theme) ?? look.theme,
      locale: locales.find((one) => one === locale) ?? look.locale,
      keys: keys === "yes",
    });
    return [];
  });

  form("bench", async (fields, { locale }) => {
    const read = benchSettingsFrom(fields, locale, settings.now);
    if ("problems" in read) return read.problems;
    await settings.keep(read.settings);
    return [];
  });

  form("second-person", async ({ secondMassG = "", secondWorth = "" }, { locale }) => {
    const massG = limitOf(secondMassG, locale);
    const worth = limitOf(secondWorth, locale);
    const problems = [
      ...(typeof massG === "string" ? [] : [{ fieldId: "secondMassG", error: massG.error }]),
      ...(typeof worth === "string" ? [] : [{ fieldId: "secondWorth", error: worth.error }]),
    ];
    if (typeof massG !== "string" || typeof worth !== "string") return problems;
    await settings.keep({ secondPerson: { massG, worth } });
    return [];
  });

  form("house", async (fields, { locale }) => {
    const { house = "", address = "", contact = "", verifiedScale = "", verifiedUntil = "" } = fields;
    const { accreditedBy = "", accreditation = "" } = fields;
    if ((accreditedBy.trim() === "") !== (accreditation.trim() === ""))
      return [{ fieldId: "accreditation", error: tellerOf(locale)("settings.accreditation-half") }];
    await settings.keep({
      house: { name: house, address, contact, verifiedScale, verifiedUntil, accreditedBy, accreditation },
    });
    return [];
  });
}

/** A limit as typed: decimal text, empty for none, or why it is no limit. */
function limitOf(typed: string, locale: Locale): string | { error: string } {
  if (typed.trim() === "") return "";
  const read = readNumber(typed, locale);
  if (read.kind !== "number") return { error: read.says };
  return Number(read.text) > 0
    ? read.text
    : { error: `A limit of ${read.text} is none. Right: a number above 0, or nothing for never.` };
}
