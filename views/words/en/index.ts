import { assay } from "./assay.ts";
import { balances } from "./balances.ts";
import { bench } from "./bench.ts";
import { beside } from "./beside.ts";
import { cautions } from "./cautions.ts";
import { checkForm, checks, guides } from "./checks.ts";
import { decision } from "./decision.ts";
import { evidence, specifications } from "./evidence.ts";
import { finding } from "./findings.ts";
import { drawings, firstStart, methods } from "./first-start.ts";
import { forTheReport } from "./for-the-report.ts";
import { frame, typedByBalance } from "./frame.ts";
import { imported, imports, tickets } from "./imports.ts";
import { ledger } from "./ledger.ts";
import { lots } from "./lots.ts";
import { metalPrice } from "./metal-price.ts";
import { composite, metal, metals, ownMetals } from "./metals.ts";
import { otherPiece } from "./other-piece.ts";
import { otherTests } from "./other-tests.ts";
import { payout } from "./payout.ts";
import { photos } from "./photos.ts";
import { plan } from "./plan.ts";
import { planPages } from "./plan-pages.ts";
import { plots } from "./plots.ts";
import { reaching } from "./reaching.ts";
import { amendments, captures, record, records } from "./records.ts";
import { report } from "./report.ts";
import { retention } from "./retention.ts";
import { secondPerson } from "./second-person.ts";
import { customer, settings } from "./settings.ts";
import { settingsPages } from "./settings-pages.ts";
import { share } from "./share.ts";
import { steps } from "./steps.ts";
import { tokens } from "./tokens.ts";
import { weighing } from "./weighing.ts";

/** English words, one file a page. Another language has the same files and the same keys. */
export const en = {
  language: "en",
  assay,
  frame,
  typedByBalance,
  bench,
  beside,
  decision,
  steps,
  weighing,
  methods,
  plots,
  drawings,
  finding,
  firstStart,
  lots,
  payout,
  photos,
  plan,
  reaching,
  otherPiece,
  otherTests,
  amendments,
  captures,
  record,
  records,
  report,
  customer,
  settings,
  tokens,
  forTheReport,
  imported,
  imports,
  tickets,
  ledger,
  retention,
  settingsPages,
  secondPerson,
  share,
  composite,
  metal,
  metalPrice,
  metals,
  ownMetals,
  checkForm,
  checks,
  guides,
  evidence,
  specifications,
  planPages,
  cautions,
  balances,
};

/** Every language has the words of English, the same keys and the same arguments. */
export type Words = typeof en;
