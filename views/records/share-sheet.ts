import type { Message } from "../../calibration/message.ts";
import type { Locale } from "../messages/language.ts";
import { tell, tellerOf } from "../messages/tell.ts";
import type { DensityPlot } from "../plots/density-plot.ts";
import type { StateName } from "../result.tsx";

/** What of a record goes onto one page to share. Numbers are written out; what is left out was not ticked. */
export interface ShareSheet {
  /** from a simulated balance: an invented piece */
  simulated: boolean;
  voided: boolean;
  /** what a check of the balance had found when it was weighed all the same */
  closed: string | undefined;
  ticket?: string;
  piece?: string;
  day?: string;
  method: string;
  /** liquid with its temperature */
  liquid: string;
  readings: readonly { role: string; shown: string; typed: boolean }[];
  /** how many readings were voided */
  excluded: number;
  /** "10.488 ± 0.014 g/cm³" */
  density: string;
  /** undefined for an interval too coarse to tell anything */
  expanded: string | undefined;
  k: string;
  percent: string;
  interval: string;
  /** undefined when nothing was claimed */
  claimName: string | undefined;
  state: StateName;
  answer: Message | string;
  /** everything that is not excluded, the claim among it, by name in the reader's language */
  notExcluded: readonly string[];
  plot: Omit<DensityPlot, "id">;
}

/** One part of the page: a heading with its lines. */
export interface SharePart {
  heading: string;
  lines: readonly string[];
}

/** The sheet in words, in order; picture and text are both made of it, so that neither says more than the other. */
export function shareWords(sheet: ShareSheet, locale: Locale) {
  const t = tellerOf(locale);
  const source = (typed: boolean) =>
    typed ? t("share.typed") : sheet.simulated ? t("share.simulated") : t("share.from-balance");
  const named = [
    [t("record-page.ticket"), sheet.ticket],
    [t("record-page.piece"), sheet.piece],
    [t("share.weighed"), sheet.day],
  ].flatMap(([label, value]) => (value ? [`${label}: ${value}`] : []));
  const state = tell({ code: `state.${sheet.state}` }, locale);
  const parts: SharePart[] = [
    {
      heading: t("share.readings"),
      lines: [
        ...sheet.readings.map(({ role, shown, typed }) => `${role}: ${shown} (${source(typed)})`),
        ...(sheet.excluded > 0 ? [t("share.excluded", { count: sheet.excluded })] : []),
        `${t("record-page.method")}: ${sheet.method}; ${sheet.liquid}`,
      ],
    },
    {
      heading: t("result.heading"),
      lines: [
        sheet.claimName === undefined
          ? t("share.nothing-claimed")
          : t("share.said-to-be", { name: sheet.claimName, state }),
        typeof sheet.answer === "string" ? sheet.answer : tell(sheet.answer, locale),
      ],
    },
    {
      heading: t("share.not-excluded"),
      lines: sheet.notExcluded.length > 0 ? [`${sheet.notExcluded.join(", ")}.`] : [t("share.nothing-left")],
    },
  ];
  return {
    heading: t("share.heading"),
    warnings: [
      ...(sheet.simulated ? [t("share.demo")] : []),
      ...(sheet.voided ? [t("share.voided")] : []),
      ...(sheet.closed === undefined ? [] : [sheet.closed]),
    ],
    named,
    density: `${t("share.density")}: ${sheet.density}`,
    stated: [
      sheet.expanded === undefined
        ? t("share.too-coarse")
        : t("share.uncertainty", { expanded: sheet.expanded, k: sheet.k, percent: sheet.percent }),
      t("share.interval", { interval: sheet.interval }),
    ],
    parts,
    foot: t("share.foot"),
  };
}
