import type { TestBench } from "../build.ts";

/** The address of a lot opened with a gross mass and a count. */
export async function openedLot(at: TestBench, fields: Record<string, string> = {}): Promise<string> {
  const answer = await at.post("/lots", {
    name: "Lot 7",
    gross: "20,05",
    grossUnit: "g",
    count: "2",
    ...fields,
  });
  return answer.headers.location ?? "";
}

/** Weighs one piece of a lot by typed readings, dry and immersed; its record is written by itself. */
export async function weighed(
  at: TestBench,
  lot: string,
  ticket: string,
  dry: string,
  immersed: string,
  claim = "au-585",
  unit = "g",
) {
  await at.post(`${lot}/pieces`, { ticket, claim, step: at.bench.nextPiece });
  await at.post(`${lot}/pieces`, { typed: dry, role: "dry", unit, step: `${at.bench.item?.id}-0` });
  return at.post(`${lot}/pieces`, {
    typed: immersed,
    role: "immersed",
    unit,
    step: `${at.bench.item?.id}-1`,
  });
}
