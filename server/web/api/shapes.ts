import { z } from "zod";
import { massUnits } from "../../../calibration/units.ts";
import { states } from "../../conformity/state.ts";
import { laboratoryKinds } from "../../laboratory/kinds.ts";
import { anyEntry } from "../../ledger/export.ts";
import { kinds } from "../../ledger/kinds.ts";
import { decimalText, json } from "../../ledger/shapes.ts";
import { methodNames, roles, screeningMethods } from "../../methods/index.ts";
import { settled } from "../../settlements/kinds.ts";
import { problem } from "./problem.ts";

const hex64 = z.string().regex(/^[0-9a-f]{64}$/);
const state = z.enum(states);
const wholeIn = (from: number, to: number) => z.coerce.number().int().min(from).max(to);
const moment = z.iso.datetime().describe("ISO 8601, UTC");

/** One line of the list of finished measurements. */
const record = z.strictObject({
  seq: z.number().int().describe("place of the result in the chain; the order of the list"),
  subject: z.string().describe("id of the piece, under which all its entries stand"),
  entry_id: z.string().describe("the entry that states the measurement now: its result or latest amendment"),
  entry_hash: hex64,
  at: moment,
  bench: z.string(),
  ticket: z.string(),
  description: z.string(),
  claim: z.string().nullable(),
  lot: z.string().nullable(),
  operator: z.string().nullable(),
  customer: z.string().nullable().describe("who brought the piece, in the house's own words"),
  state: state.nullable(),
  mass_g: z.number(),
  dry: z.string().describe("what the balance showed dry, with its unit; empty where only the mass is known"),
  dry_g: z.number().describe("the same in g"),
  density_g_cm3: z.number().nullable().describe("null where the readings are those of no density"),
  expanded_g_cm3: z.number().nullable(),
  voided: z.boolean(),
  amendments: z.number().int(),
  photos: z.number().int().describe("photos of the piece that were not set aside"),
});

export const recordQuery = z.strictObject({
  q: z
    .string()
    .max(200)
    .optional()
    .describe("words, each the beginning of a word of ticket, piece, claim, lot, operator or who brought it"),
  ticket: z.string().optional(),
  claim: z.string().optional(),
  lot: z.string().optional(),
  bench: z.string().optional(),
  state: state.optional(),
  from: moment.optional(),
  until: moment.optional(),
  dry_from_g: z.coerce.number().optional().describe("what the balance showed dry, g, both ends included"),
  dry_to_g: z.coerce.number().optional(),
  photo: z.enum(["true", "false"]).optional().describe("with a photo, or without one"),
  voided: z.enum(["true", "false"]).optional(),
  before: wholeIn(1, Number.MAX_SAFE_INTEGER).optional().describe("`next` of the page before"),
  size: wholeIn(1, 500).default(50),
  count: z
    .enum(["fast", "exact"])
    .default("fast")
    .describe("`exact` counts beyond 1000, and may take longer"),
});

export const recordPage = z.strictObject({
  records: z.array(record).describe("newest first"),
  next: z.number().int().nullable().describe("`before` of the following page; null on the last"),
  count: z.number().int().describe("how many match; counted up to 1000 unless `count=exact` was asked for"),
  count_is_floor: z.boolean().describe("true when more than that match"),
});

export const oneRecord = z.strictObject({
  record,
  statement: z
    .looseObject({})
    .nullable()
    .describe(
      "what the record states now, as it was frozen: numbers and codes with values; null where none was stated",
    ),
  laboratory_results: z
    .array(laboratoryKinds["laboratory-assay"].extend({ entry: z.string(), at: moment }))
    .describe("what a laboratory found in the piece: of each metal the newest that was not excluded"),
  amendments: z
    .array(z.looseObject({ entry: z.string(), at: moment, reason: z.string(), by: z.string() }))
    .describe("what was corrected, why and by whom, oldest first; the values of before stay in the entries"),
  entries: z
    .array(anyEntry)
    .describe("everything written about the piece, oldest first; voided readings too"),
});

const lot = z.looseObject({
  id: z.string(),
  name: z.string(),
  openedAt: moment,
  method: z.enum(screeningMethods),
  pieces: z.number().int().describe("recorded pieces that are not voided; counted up to 1000"),
});

export const lotList = z.strictObject({ lots: z.array(lot).describe("newest first") });

const lotPiece = z.strictObject({
  id: z.string().describe("id of the record"),
  ticket: z.string(),
  claim: z.string().nullable(),
  state,
  mass_g: z.number().nullable().describe("corrected for air, as the record states it"),
  dry_g: z.number().describe("mean of the dry readings as the balance showed them; what is paid by"),
  density_g_cm3: z.number().nullable().describe("null where the readings are those of no density"),
  expanded_g_cm3: z.number().nullable(),
  typed: z.boolean().describe("true when a reading was typed"),
  voided: z.boolean(),
});

export const oneLot = z.strictObject({
  lot,
  pieces: z.array(lotPiece).describe("oldest first"),
  settlement: settled
    .nullable()
    .describe(
      "what is paid, in decimal text, masses in g: of a closed lot what it was closed with, of an open one as it stands; null while no price is promised",
    ),
});

export const pageQuery = z.strictObject({
  before: wholeIn(1, Number.MAX_SAFE_INTEGER).optional().describe("`next` of the page before"),
  size: wholeIn(1, 500).default(50),
});

export const feedQuery = z.strictObject({
  after: wholeIn(0, Number.MAX_SAFE_INTEGER)
    .default(0)
    .describe("`next` of the answer before; 0 from the first"),
  size: wholeIn(1, 500).default(100),
  kind: z.object(kinds).keyof().optional().describe("entries of this kind alone"),
});

export const entryFeed = z.strictObject({
  entries: z.array(anyEntry).describe("oldest first; a void or an amendment comes as an entry of its own"),
  next: z.number().int().describe("`after` of the following request"),
  more: z.boolean().describe("true when more entries stand already"),
});

/** A piece that is to be weighed, as a trade system knows it. */
export const announcement = z.strictObject({
  ticket: z.string().trim().min(1).max(200),
  description: z.string().max(2000).default(""),
  claim: z.string().min(1).max(200).optional().describe("id of a metal, such as au-750"),
  lot: z.string().min(1).max(200).optional().describe("id or name of a lot"),
  customer: z.string().min(1).max(200).optional().describe("who brought it"),
  mass_g: decimalText.optional().describe("what it is said to weigh, decimal text"),
});

export const announcementKey = z.looseObject({
  "idempotency-key": z
    .string()
    .min(1)
    .max(200)
    .describe("of the sender's choice; the same again does nothing twice"),
});

export const ticketAnnounced = z.strictObject({
  id: z.string().describe("id of the entry"),
  seq: z.number().int(),
  at: moment,
  ticket: z.string(),
});

/** A check as the ledger keeps it. */
const checkEntry = z.strictObject({
  seq: z.number().int(),
  id: z.string(),
  at: moment,
  bench: z.string(),
  of: z.string().describe("the balance or thermometer that was checked"),
  check: kinds.check,
  hash: hex64,
});

export const checkPage = z.strictObject({
  checks: z.array(checkEntry).describe("newest first, passed or not"),
  next: z.number().int().nullable(),
});

const params = z.record(z.string(), z.unknown()).describe("values of the message");

const unit = z.enum(massUnits);

/** What the balance shows at this moment, and what the bench is doing. */
export const live = z.strictObject({
  balance: z.string().nullable().describe("null where readings are typed"),
  reading: z
    .discriminatedUnion("state", [
      z.strictObject({
        state: z.literal("reading"),
        text: z.string().describe("decimal text with every digit shown"),
        unit,
        stability: z.enum(["stable", "moving", "unknown"]),
        at: moment,
      }),
      z.strictObject({
        state: z.literal("event"),
        code: z.string(),
        params,
        message: z.string(),
        at: moment,
      }),
      z.strictObject({
        state: z.literal("silent"),
        forSeconds: z.number(),
        code: z.string(),
        params,
        message: z.string(),
        last: z.strictObject({ text: z.string(), unit }).optional(),
      }),
    ])
    .nullable(),
  waiting_for: z.enum(roles).nullable().describe("the reading a capture waits for"),
  piece: z.strictObject({ id: z.string(), ticket: z.string(), method: z.enum(methodNames) }).nullable(),
});
export type Live = z.infer<typeof live>;

/** Shapes that the published document names once and refers to. */
export const namedShapes = z.registry<{ id: string }>();
namedShapes.add(anyEntry, { id: "Entry" });
namedShapes.add(record, { id: "Record" });
namedShapes.add(lot, { id: "Lot" });
namedShapes.add(checkEntry, { id: "Check" });
namedShapes.add(live, { id: "Live" });
namedShapes.add(problem, { id: "Problem" });
namedShapes.add(json, { id: "Json" });
