import type { ComponentChildren } from "preact";
import type { Message } from "../../calibration/message.ts";
import type { AssayView } from "../assays/view.ts";
import type { SecondReadingView } from "../bench/view.ts";
import type { ExcludePhotoForm, PhotoFormView, PhotoView } from "../photos.tsx";
import type { BudgetInput } from "../plots/budget.tsx";
import type { DensityPlot } from "../plots/density-plot.ts";
import type { RepeatsPlot } from "../plots/repeats.tsx";
import type { ResultView } from "../result.tsx";
import type { Sentence } from "../sentence.tsx";
import type { AmendableReading, Amendment, RefusedRecordForm } from "./amendments.tsx";
import type { StoppedRecord } from "./answer.tsx";
import type { Capture } from "./captures.tsx";

/** The numbers of a record, written out. */
export interface MeasuredView {
  /** "10.488 ± 0.014 g/cm³" and its words: at which temperature, which interval */
  density: string;
  densityWords: string;
  /** further results: at 20 °C, relative density, volume, mass */
  results: readonly (readonly [name: string, value: ComponentChildren])[];
  plot: Omit<DensityPlot, "id">;
}

/** Everything a record shows; numbers are written out, decimals as captured. */
export interface RecordView {
  id: string;
  ticket: string;
  piece: string;
  /** condition, marks, stones: the customer's words are marked as such */
  description?: string;
  saidByCustomer?: string;
  /** who brought it, in the house's own words */
  broughtBy?: string;
  when: string;
  operator?: string;
  place?: string;
  method: string;
  /** left out where the readings are those of no density */
  measured?: MeasuredView;
  /** liquid, air, balance, hanger, check of the day */
  conditions: readonly (readonly [name: string, value: ComponentChildren])[];
  result: ResultView;
  budget: readonly BudgetInput[];
  repeats?: Omit<RepeatsPlot, "id">;
  captures: readonly Capture[];
  /** what second persons read of typed readings, oldest first */
  secondReadings?: readonly SecondReadingView[];
  warnings: readonly (Message | string)[];
  /** answers to doubts and notes, in order */
  notes: readonly { when: string; by: string; message: Sentence }[];
  photos: readonly PhotoView[];
  photoForm: PhotoFormView;
  excludePhoto: ExcludePhotoForm;
  /** why each photo that was set aside was */
  excludedPhotos: readonly Sentence[];
  amendments: readonly Amendment[];
  /** typed readings that an amendment can put right */
  amendable: readonly AmendableReading[];
  /** the bench was closed by a failed check while it was weighed */
  closed?: { since: string; message: Sentence };
  /** set when the result shown is an amended one */
  amended?: { when: string; by: string };
  voided?: { when: string; by: string; reason: string };
  /** a form of the page that was sent back */
  refused?: RefusedRecordForm;
  /** set while checks stop what it states */
  stopped?: StoppedRecord;
  assay: AssayView;
  reports: readonly { number: string; href: string; when: string }[];
  /** place in the chain */
  chain: { sequence: number; hash: string; previous: string };
  versions: readonly (readonly [name: string, value: string])[];
  csrfToken: string;
  /** sent along so that a repeated submit stores once */
  stepKey: string;
  /** how many entries about it the page shows */
  version: number;
}
