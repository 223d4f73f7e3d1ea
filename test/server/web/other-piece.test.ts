import { afterEach, beforeEach, expect, test } from "vitest";
import { buildTestBench, type TestBench } from "../build.ts";
import { telephoneJpeg } from "../photos/pictures.ts";
import { recorded, sendPhoto, textOf, wordsOf } from "./recorded.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

const open = (statedMass: string) =>
  at.post("/bench/piece", { ticket: "K-31", method: "hung", claim: "ag-925", key: "k31", statedMass });
const dry = (reading: string, unit = "g") => at.post("/bench/typed-readings", { role: "dry", reading, unit });
const immersed = (reading: string) =>
  at.post("/bench/typed-readings", { role: "immersed", reading, unit: "g" });
const stop = "Is this the piece of the ticket?";

test("a dry mass that is not the announced one stops the bench with both masses and the photo, until somebody says why", async () => {
  await open("31.1");
  await sendPhoto(at, "/bench/photos", telephoneJpeg(), { piece: "k31", shows: "front" });
  await dry("12.95");
  const page = await textOf(at, "/");
  expect(page).toContain(stop);
  expect(page).toMatch(/Announced for the ticket 31\.1 g On the pan, dry 12\.95 g/);
  expect(page).toContain("18.15 g; both displays explain 0.20 g at most");
  const refused = await immersed("11.90");
  expect(refused.statusCode).toBe(422);
  expect(wordsOf(refused.body)).toContain("Say first whether it is the right piece");
  expect((await at.post("/bench/record", {})).statusCode).toBe(422);
  expect((await at.post("/bench/right-piece", { rightReason: " " })).statusCode).toBe(422);
  await at.post("/bench/right-piece", { rightReason: "the chain was taken off", rightBy: "KR" });
  expect(await textOf(at, "/")).not.toContain(stop);
  expect((await immersed("11.90")).statusCode).toBe(303);
  await at.post("/bench/water", { celsius: "21.4" });
  expect((await at.post("/bench/record", {})).statusCode).toBe(303);
  expect(await textOf(at, "/records/k31")).toContain(
    "Weighs 12.95 g, announced 31.1 g; taken as the right piece: the chain was taken off (KR,",
  );
});

test("another piece is set aside with both masses, and its ticket is open again for the right one", async () => {
  await open("31.1");
  await at.post("/bench/water", { celsius: "21.4" });
  await dry("12.95");
  expect((await at.post("/bench/other-piece", {})).statusCode).toBe(303);
  const left = await at.ledger.entriesOf("k31");
  expect(left.at(-1)).toMatchObject({
    kind: "piece-left",
    body: {
      reason: {
        code: "weighing.call-off.another-item",
        params: { weighed: "12.95 g", announced: "31.1 g" },
      },
    },
  });
  expect(left.some(({ kind }) => kind === "capture")).toBe(true);
  expect(at.bench.item).toMatchObject({
    ticket: "K-31",
    claim: "ag-925",
    waterCelsius: "21.4",
    captures: [],
  });
  await dry("31.10");
  expect(await textOf(at, "/")).not.toContain(stop);
  expect((await immersed("28.14")).statusCode).toBe(303);
});

test("the unit is asked about where it would explain the difference, and a reading typed anew settles it", async () => {
  await open("31.10");
  await dry("20.00");
  expect(await textOf(at, "/")).toContain("Does the balance show dwt rather than g?");
  const [wrong] = at.bench.item?.captures ?? [];
  await at.post(`/bench/captures/${wrong?.id}/voiding`, { reason: "unit" });
  await dry("20.00", "dwt");
  expect(await textOf(at, "/")).not.toContain(stop);
});

test("what both displays explain is no other piece, and a ticket without a mass asks nothing", async () => {
  await open("31.1");
  await dry("31.29");
  expect(await textOf(at, "/")).not.toContain(stop);
});

test("a ticket opened again after its record was voided is held against what was weighed then, and against its photo", async () => {
  await recorded(at, { id: "first", ticket: "K-7", dry: "31.10", immersed: "28.14" });
  await sendPhoto(at, "/records/first/photos", telephoneJpeg(), { shows: "edge" });
  await at.post("/records/first/voiding", { by: "KR", reason: "wire touched the wall" });
  await at.post("/bench/piece", { ticket: "K-7", method: "hung", claim: "", key: "second" });
  await dry("30.80");
  const page = await textOf(at, "/");
  expect(page).toContain("Weighed earlier under this ticket 31.10 g");
  expect(page).toContain("edge,");
});

test("an imported lot stops at the piece that is not the list's, goes on once it is said why, and does not flag it again", async () => {
  const { headers } = await at.post("/lots", { name: "Lot 5" });
  const lot = headers.location ?? "";
  for (const [ticket, mass_g] of [
    ["41", "12.90"],
    ["42", "7.15"],
  ] as const)
    await at.ledger.append("ticket-announced", `ticket-${ticket}`, {
      ticket,
      description: "chain",
      claim: "au-585",
      lot: "Lot 5",
      mass_g,
      from: "list.csv",
    });
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  await at.post(`${lot}/pieces`, { ticket: "41", claim: "", step: at.bench.nextPiece });
  await at.post(`${lot}/pieces`, { typed: "7.15", role: "dry", unit: "g", step: "41-0" });
  expect(await textOf(at, lot)).toContain(stop);
  const refused = await at.post(`${lot}/pieces`, {
    typed: "6.61",
    role: "immersed",
    unit: "g",
    step: "41-1",
  });
  expect(refused.statusCode).toBe(422);
  await at.post(`${lot}/other-piece`, {});
  await at.post(`${lot}/pieces`, { typed: "12.10", role: "dry", unit: "g", step: "41b-0" });
  await at.post(`${lot}/right-piece`, { rightReason: "clasp missing" });
  await at.post(`${lot}/pieces`, { typed: "11.19", role: "immersed", unit: "g", step: "41b-1" });
  const text = await textOf(at, lot);
  expect(text).toContain("Scan the next ticket");
  expect(text).not.toContain("the list says");
});
