import { z } from "zod";
import { json, moment, sentence, words } from "./shapes.ts";

const hex64 = z.string().regex(/^[0-9a-f]{64}$/, { error: "64 hexadecimal digits" });

export const bookkeepingKinds = {
  /** the first entry of every ledger */
  "ledger-opened": z.strictObject({
    program: words,
    /** at most so many entries stand between two checkpoints; 0 when the ledger has no key */
    checkpointEvery: z.number().int().nonnegative(),
  }),
  /** a public key whose checkpoints count from here on */
  "signing-key": z.strictObject({
    keyId: hex64,
    publicKey: words,
    /** the key before signed the id of this one: its successor */
    vouchedBy: z.strictObject({ keyId: hex64, signature: words }).optional(),
  }),
  /** a signature over the chain up to the entry before */
  checkpoint: z.strictObject({
    seq: z.number().int().min(1),
    hash: hex64,
    keyId: hex64,
    signature: words,
    /** the same as a signed note over the tree of the entries up to seq (C2SP tlog-checkpoint) */
    note: words.optional(),
    /** roots of the full subtrees of that tree, largest first, so that the next one need not read all entries */
    peaks: z.array(hex64).optional(),
  }),
  /** who cosigns the checkpoints from here on, and whose this bench cosigns; the newest counts */
  witnesses: z.strictObject({
    /** folders, such as of a stick that is plugged in now and then */
    folders: z.array(words).max(8),
    /** other benches: where they are asked, and the key (NAME+ID+KEY) by which they cosign */
    benches: z.array(z.strictObject({ url: words, key: words })).max(8),
    /** keys (NAME+ID+KEY) of the ledgers whose checkpoints this bench cosigns */
    of: z.array(words).max(32),
  }),
  /** a witness saw this much of a ledger: its line of C2SP tlog-cosignature under the checkpoint of that size */
  cosignature: z.strictObject({
    origin: words,
    size: z.number().int().min(1),
    /** folder, address or bench that was asked */
    witness: words,
    line: words,
  }),
  /** this bench cosigned a checkpoint of another ledger: the longest it saw of that origin */
  witnessed: z.strictObject({ origin: words, size: z.number().int().min(0), root: words }),
  /** the wall clock went back or leapt; entries keep their order */
  "clock-jump": z.strictObject({ from: moment, to: moment, byMs: z.number(), says: sentence.optional() }),
  /** what was found and done when the ledger was opened after a crash, a restore or damage */
  recovery: z.strictObject({ says: sentence }),
  settings: z.looseObject({ settings: json, by: words.optional() }),
  /** where the bench hears its balance from here on; null: readings are typed; and which are heard beside it */
  "balance-choice": z.looseObject({
    choice: z.looseObject({ address: words }).nullable(),
    beside: z.array(z.looseObject({ address: words })).optional(),
  }),
  /** barcode reader and foot switch of the bench from here on; empty: none */
  "hand-devices": z.strictObject({ scanner: z.string(), scannerLine: z.string(), footSwitch: z.string() }),
  /** the sensors beside the balance from here on */
  sensors: z.strictObject({ sensors: z.array(z.looseObject({ address: words })), by: words.optional() }),
  /** records are kept at least so many years */
  /** a name that was kept apart is erased; its reference stays where it stands */
  "name-erased": z.strictObject({
    reference: z.string().regex(/^name:[0-9a-f]{64}$/, { error: "name: and 64 hexadecimal digits" }),
    by: words,
    reason: words,
  }),
  retention: z.strictObject({ years: z.number().positive(), by: words.optional(), reason: words.optional() }),
  "token-issued": z.strictObject({
    name: words,
    tokenHash: hex64,
    scopes: z.array(words),
    until: moment.optional(),
    by: words.optional(),
  }),
  "token-revoked": z.strictObject({ tokenHash: hex64, reason: words, by: words.optional() }),
};
