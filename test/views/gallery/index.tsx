import type { Frame } from "../../../views/page.tsx";
import * as bench from "./benchside.tsx";
import { plots } from "./plots.tsx";
import { record, records, recordsEmpty } from "./records.tsx";

/** One page as it may look on some day; the names are file names of the pictures. */
export interface Shown {
  name: string;
  frame: Frame;
}

function shown(
  name: string,
  title: string,
  path: string,
  main: Frame["main"],
  more: Partial<Frame> = {},
): Shown {
  return { name, frame: { csrfToken: "gallery", demo: false, title, path, main, ...more } };
}

/** Every page in the states worth looking at, filled with invented things. */
export const gallery: readonly Shown[] = [
  shown("plots", "Plots", "/", plots, { demo: true }),
  shown("records", "Records", "/records", records),
  shown("records-empty", "Records", "/records", recordsEmpty),
  shown("record", "Record 214", "/records/214", record, { demo: true }),
  shown("metals", "Metals", "/metals", bench.metalsIndex),
  shown("metal", "Lead", "/metals/el-pb", bench.metalPage),
  shown("plan", "Plan", "/plan", bench.plan),
  shown("plan-problem", "Plan", "/plan", bench.planProblem),
  shown("evidence", "Other evidence", "/records/214", bench.evidence),
  shown("two-bodies", "Two bodies", "/plan/two-bodies", bench.twoBodies),
  shown("fineness", "Fineness", "/plan/fineness", bench.fineness),
  shown("checks", "Checks", "/checks", bench.checks),
  shown("check-form", "Reference piece", "/checks/reference", bench.checkForm),
  shown("balances", "Balances", "/balances", bench.balances),
  shown("learning", "Learn this balance", "/balances/learning", bench.learning),
  shown("asking", "Lines to ask with", "/balances/asking", bench.asking),
  shown("lots", "Lots", "/lots", bench.lots),
  shown("lot", "Lot 7", "/lots/7", bench.lot),
  shown("payout", "Payout of Lot 7", "/lots/7/payout", bench.payout),
  shown("settings", "Settings", "/settings", bench.settings, { locale: "de", mainLocale: "en" }),
  shown("first-start", "Welcome", "/first-start", bench.firstStart),
  shown("first-start-german", "Willkommen", "/first-start", bench.firstStartGerman, { locale: "de" }),
  shown("customer", "Scale", "/customer", bench.customer, { kind: "plain" }),
];
