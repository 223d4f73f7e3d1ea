import { createLoadsTaken, type LoadEvent } from "../../../drivers/loads-taken.ts";
import { createRecordedBalance } from "../../../drivers/recorded-balance.ts";
import type { Bench, Load, LoadTruth, Stream } from "./stream.ts";

/** What was told of one load, times from when its display comes to rest. */
export interface ToldOfLoad {
  truth: LoadTruth;
  taken: { waitedSeconds: number; offMg: number; uMg: number; flags: readonly string[] }[];
  driftingAfterSeconds?: number;
  /** after the take */
  changedAfterSeconds?: number;
  /** the flag of a creep that may be there is lifted */
  excludedAfterSeconds?: number;
}

const decimals = (stepMg: number) => Math.max(0, Math.ceil(-Math.log10(stepMg / 1000) - 1e-9));

/** The bytes of the lines of a stream in a plain line format, as they arrive. */
export function chunksOf({ lines }: Stream, { stepMg }: Bench): { atMs: number; bytes: Uint8Array }[] {
  const word = (marked: boolean | null) => (marked === null ? "" : marked ? " stable" : " moving");
  const text = ({ mg, marked }: Stream["lines"][number]) =>
    `${(mg / 1000).toFixed(decimals(stepMg)).padStart(12)} g${word(marked)}\r\n`;
  return lines.map((line) => ({
    atMs: line.seconds * 1000,
    bytes: new TextEncoder().encode(text(line)),
  }));
}

/** Plays the lines of a stream through line cutter, line format and all. */
export function played(stream: Stream, bench: Bench): ToldOfLoad[] {
  const { lines, loads } = stream;
  const chunks = chunksOf(stream, bench);
  const balance = createRecordedBalance(chunks, () => ({}));
  const told = loads.map((truth): ToldOfLoad => ({ truth, taken: [] }));
  const hear = createLoadsTaken();
  const firstSeconds = lines[0]!.seconds;
  balance.onLine((record) => {
    const seconds = firstSeconds + record.monotonicMs / 1000;
    const load = told.findLast(({ truth }) => truth.fromSeconds <= seconds) ?? told[0]!;
    for (const event of hear(record)) tell(load, event, seconds);
  });
  balance.play();
  return told;
}

function tell(load: ToldOfLoad, event: LoadEvent, seconds: number): void {
  const { truth } = load;
  const since = seconds - truth.restSeconds;
  if (event.kind === "taken") {
    const { grams, uGrams, flags } = event.taken;
    load.taken.push({ waitedSeconds: since, offMg: grams * 1000 - truth.mg, uMg: uGrams * 1000, flags });
  } else if (event.kind === "drifting") load.driftingAfterSeconds ??= since;
  else {
    const after = since - (load.taken.at(-1)?.waitedSeconds ?? 0);
    if (event.kind === "creep-excluded") load.excludedAfterSeconds ??= after;
    else load.changedAfterSeconds ??= after;
  }
}

/** An empty pan, then the load; some empty time first lets the noise be learned. */
export const afterEmptyPan = (load: Load, emptySeconds = 20): Load[] => [
  { mg: 0, seconds: emptySeconds },
  load,
];
