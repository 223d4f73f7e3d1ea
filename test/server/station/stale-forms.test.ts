import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { Ticket } from "../../../server/weighing/item.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { codesIn, formOn } from "../page-fields.ts";
import { telephoneJpeg } from "../photos/pictures.ts";
import { host, recorded, sendPhoto } from "../web/recorded.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

/** The fields of one form of a page that a browser was given at this moment. */
async function given(url: string, action: string): Promise<Record<string, string>> {
  return formOn((await at.app.inject({ url, headers: { host } })).body, action);
}

type Sent = [action: string, fields: Record<string, string>];

/** Two browsers are given the page; one sends a form of it, then the other one. What that came to. */
async function afterAnother(page: string, [first, typed]: Sent, [action, fields]: Sent) {
  const [one, other] = [await given(page, first), await given(page, action)];
  expect((await at.post(first, { ...one, ...typed })).statusCode).toBe(303);
  const before = await at.ledger.head();
  const answer = await at.post(action, { ...other, ...fields });
  expect(answer.statusCode).toBe(422);
  expect(await at.ledger.head()).toEqual(before);
  return codesIn(answer.body);
}

describe("a form of a lot that another browser sent first is refused by name, and nothing is written", () => {
  let lot = "";
  beforeEach(async () => {
    lot = (await at.post("/lots", { name: "Lot 7" })).headers.location ?? "";
    await at.post(`${lot}/pieces`, { celsius: "21.4" });
  });

  /** A ticket of the lot whose piece weighs another mass than the list announced. */
  async function otherMass() {
    const ticket: Ticket = {
      ticket: "31",
      description: "chain",
      method: "hung",
      lot: lot.replace("/lots/", ""),
      claim: "au-585",
      customerSupplied: { mass_g: "31.1" },
    };
    await at.bench.station.do({ do: "start-weighing", ...at.bench.about, ticket });
    await at.post(`${lot}/pieces`, { typed: "12.90", role: "dry", unit: "g" });
  }

  const right = (rightReason: string): Sent => [`${lot}/right-piece`, { rightReason, rightBy: "KR" }];

  test("that it is the right piece", async () => {
    await otherMass();
    const codes = await afterAnother(lot, right("the stones were taken out"), right("the list rounds"));
    expect(codes).toContain("weighing.stale");
  });

  test("that it is another piece", async () => {
    await otherMass();
    const codes = await afterAnother(lot, right("the stones were taken out"), [`${lot}/other-piece`, {}]);
    expect(codes).toContain("weighing.stale");
    expect(at.bench.open?.ticket).toBe("31");
  });

  test("the right piece, where another browser called it off: the ticket opened again is not confirmed", async () => {
    await otherMass();
    const first = at.bench.about.subject;
    const codes = await afterAnother(lot, [`${lot}/other-piece`, {}], right("the list rounds"));
    expect(codes).toContain("weighing.stale");
    expect(at.bench.about.subject).not.toBe(first);
  });

  test("an answer to what a check asks of a row", async () => {
    await at.post(`${lot}/pieces`, { ticket: "31", claim: "au-585" });
    await at.post(`${lot}/pieces`, { typed: "12.90", role: "dry", unit: "g" });
    await at.post(`${lot}/pieces`, { typed: "5.00", role: "immersed", unit: "g" });
    const answer = (found: string): Sent => [`${lot}/answers`, { found, stands: "yes", by: "KR" }];
    const codes = await afterAnother(lot, answer("a bead of amber inside"), answer("nothing found"));
    expect(codes).toContain("record.stale");
  });
});

describe("what a record rests on is excluded once: the page of another browser is refused by name", () => {
  const record = "/records/b1";
  beforeEach(() => recorded(at, { id: "b1", claim: "ag-999", dry: "31.1035", immersed: "28.1435" }));

  const entryOf = async (kind: string) =>
    (await at.ledger.entriesOf("b1")).findLast((entry) => entry.kind === kind)?.id ?? "";

  test.each([
    ["a test", "evidence", `${record}/evidence`, { kind: "ring", "ring-heard": "clear" }],
    [
      "an assay",
      "laboratory-assay",
      `${record}/laboratory`,
      {
        metal: "silver",
        permille: "999.1",
        laboratory: "harbour assay",
        report: "7",
        method: "titration",
        date: "2026-03-02",
      },
    ],
  ])("%s", async (_, kind, page, entered) => {
    expect((await at.post(page, entered)).statusCode).toBe(303);
    const action = `${page}/${await entryOf(kind)}/voiding`;
    const codes = await afterAnother(
      page,
      [action, { reason: "of another bar" }],
      [action, { reason: "slip" }],
    );
    expect(codes.some((code) => code.endsWith(".stale"))).toBe(true);
  });

  test("a photo", async () => {
    await sendPhoto(at, `${record}/photos`, telephoneJpeg(), { shows: "front" });
    const action = `${record}/photos/${await entryOf("photo")}/voiding`;
    const codes = await afterAnother(
      record,
      [action, { reason: "blurred", by: "KR" }],
      [action, { reason: "of another bar", by: "MT" }],
    );
    expect(codes.some((code) => code.endsWith(".stale"))).toBe(true);
  });
});
