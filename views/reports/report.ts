import type { Locale } from "../messages/language.ts";

/** One line of a report: what, and how it is written. */
export interface Line {
  label: string;
  value: string;
}

/** Who issues reports. Everything may be left out: a hobbyist's report has no laboratory and no customer. */
export interface Organisation {
  name?: string;
  address?: string;
  contact?: string;
  /** where the work was done, when not at the address */
  location?: string;
  /** number on the seal of a scale verified for trade, and until when, as the house states it */
  verifiedScale?: string;
  /** only with an accreditation may reserved words be printed (see reserved-words.ts) */
  accreditation?: { body: string; number: string };
}

export interface ReportReading {
  what: string;
  /** as shown on the display, unit beside it */
  shown: string;
  at: string;
  source: string;
  /** why it was taken as settled, or that it was typed */
  because: string;
  /** the reason, when the reading was declared void */
  voided: string | null;
}

export interface ReportResult {
  quantity: string;
  /** with its expanded uncertainty: "10.334 ± 0.008" */
  value: string;
  unit: string;
  /** the coverage factor of U, or why there is none; null for a bare quotient */
  uncertainty: string | null;
}

export interface BudgetLine {
  input: string;
  value: string;
  unit: string;
  u: string;
  sensitivity: string;
  contribution: string;
  /** share of the variance in per cent; negative when inputs cancel */
  share: string;
}

/** A metal that is not excluded. Densities in g/cm³ at 20 °C; null when the library does not know it any more. */
export interface NotExcludedMetal {
  id: string;
  name: string;
  /** how often it is met in the trade, in words; empty for the claim itself and where no entry tells it */
  occurrence: string;
  band: readonly [low: number, high: number] | null;
}

export interface Replacement {
  /** number of the report that this one replaces; null when the earlier record was never reported */
  number: string | null;
  reason: string;
  by: string;
  at: string;
}

/** A picture of the item, kept beside the ledger under its SHA-256; width and height in pixels. */
export interface ReportPhoto {
  hash: string;
  type: "image/jpeg" | "image/png" | "image/webp";
  shows: string;
  at: string;
  width: number;
  height: number;
}

/**
 * What a report states, as plain data in words and rounded numbers: the HTML page and the PDF draw this and add only
 * the headings of its language. The letters are the items of ISO/IEC 17025:2017, 7.8.2.1.
 */
export interface Report {
  /** the language everything below is written in */
  locale: Locale;
  /** the sentences that language does not have, which stand in English */
  onlyEnglish: readonly string[];
  /** a */
  title: string;
  /** what the measurement says, first of all: the one sentence, then value ± U with its unit, temperature and k */
  headline: { answer: string; density: string; of: string };
  /** readings of a simulated balance: said at the head of each page */
  demonstration: boolean;
  /** b, c */
  organisation: Line[];
  /** d: the same number for the same record; a further print is a further copy */
  number: string;
  copy: number;
  /** e; in words where nobody was named */
  customer: string;
  /** f */
  method: string;
  /** g */
  item: Line[];
  /** pictures of the item; a PDF tells them by their check sums, the page shows them */
  photos: ReportPhoto[];
  /** h, i, j */
  dates: Line[];
  /** k */
  sampling: string;
  /** m */
  results: ReportResult[];
  uncertaintyStatement: string;
  /** n: additions to, deviations and exclusions from the method */
  deviations: string[];
  /** o */
  authorisedBy: string | null;
  /** 7.8.3: conditions and equipment */
  conditions: Line[];
  corrections: string[];
  readings: ReportReading[];
  budget: BudgetLine[];
  /** 7.8.6: which rule, and its risk */
  decision: string[];
  /** 7.8.7: apart from the results, and marked */
  opinion: {
    state: string;
    because: string;
    notExcluded: NotExcludedMetal[];
    /** bodies made for this density, in a sentence; null where none is left */
    purposeMade: string | null;
    /** fineness and fine mass if it is what it is claimed as, and what they rest on */
    fineness: string[];
    /** what may be in it and harms whoever works on it */
    hazards: string[];
  };
  /** other weighings of the same ticket on the same day, and checks of the equipment that failed on it */
  attempts: string[];
  /** what a laboratory found of the piece, as it was written down */
  laboratory: string[];
  /** every amendment of the record, oldest first */
  amendments: string[];
  /** lines to sign on */
  signatures: readonly string[];
  /** other evidence recorded with the piece and still standing: stated, and kept apart from the density */
  otherTests: string[];
  /** 7.8.2.2: from the customer, not measured */
  customerSupplied: Line[];
  /** 7.8.8 */
  replaces: Replacement | null;
  voided: string | null;
  warnings: string[];
  /** l, and that the report is whole */
  statements: string[];
  cautions: string[];
  /** for the plot: g/cm³ at 20 °C */
  plot: { value: number; low: number; high: number; confidence: number; claim: string | null };
  record: {
    subject: string;
    entry: string;
    /** hash of the entry that states the result, 64 hex digits; also in the QR code */
    hash: string;
    row: number;
    keyId: string | null;
    checkHow: string;
    versions: Line[];
  };
  /** when the report was issued; also the date inside the PDF */
  issuedAt: string;
}
