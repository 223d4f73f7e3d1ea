import { afterEach, beforeEach, expect, test } from "vitest";
import { buildTestBench, type TestBench } from "../build.ts";
import { openedLot, weighed } from "../lots/screened.ts";
import { codesIn, formOn } from "../page-fields.ts";
import { host, textOf } from "../web/recorded.ts";

let at: TestBench;
let lot: string;
let melt: string;
beforeEach(async () => {
  at = await buildTestBench();
  lot = await openedLot(at, { gross: "22.90", count: "2" });
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  await weighed(at, lot, "31", "12.90", "11.932");
  await weighed(at, lot, "32", "10.00", "9.25");
});
afterEach(() => at.close());

const idOf = (path: string) => path.split("/")[2] ?? "";
const make = async (fields: Record<string, string> = {}, lots = [lot]) => {
  const ticked = Object.fromEntries(lots.map((one) => [`lot-${idOf(one)}`, "yes"]));
  const answer = await at.post("/melts", { name: "M-1", before: "22.90", by: "KR", ...ticked, ...fields });
  if (answer.statusCode === 303) melt = String(answer.headers.location);
  return answer;
};
/** Sends a form of the melt as its page, drawn at this moment, would. */
const send = async (form: string, fields: Record<string, string>) => {
  const version = `${(await at.ledger.entriesOf(idOf(melt))).length}`;
  return at.post(`${melt}/${form}`, { version, by: "KR", ...fields });
};
const assay = (permille: string, fields: Record<string, string> = {}) =>
  send("assays", {
    ...{ drilling: "D1", side: "house", metal: "gold", permille, laboratory: "an invented laboratory" },
    ...{ report: "L-9", method: "cupellation", date: "2024-03-28", ...fields },
  });
const lock = () =>
  at.post(`${lot}/payout`, {
    ...{ metal: "gold", price: "60", currency: "EUR", per: "g", source: "harbour board" },
    ...{ at: "2026-03-02 09:30", rate: "100", rounding: "down" },
  });
const closing = async () => {
  const entries = await at.ledger.entriesOf(idOf(lot));
  const last = entries.findLast((entry) => entry.kind === "lot-closed");
  return last?.kind === "lot-closed" ? last.body.settlement : undefined;
};

test("a melt's life: lots in, bar out, drilled, duplicates and both sides agreed, final, and the lot paid by it", async () => {
  expect((await make()).statusCode).toBe(303);
  expect((await send("bar", { after: "22.60", afterUnit: "g" })).statusCode).toBe(303);
  expect((await send("drillings", { drilling: "D1", mass: "0.50", massUnit: "g" })).statusCode).toBe(303);
  const unsettled = await send("settling", {});
  expect(codesIn(unsettled.body)).toContain("melt.no-assay");
  const tolerance = { metal: "gold", duplicates_permille: "0.5", sides_permille: "1.0" };
  await send("tolerances", tolerance);
  expect(codesIn((await send("tolerances", tolerance)).body)).toContain("settlement.reason-missing");
  for (const permille of ["581.0", "581.4"]) expect((await assay(permille)).statusCode).toBe(303);
  for (const permille of ["581.8", "582.0"]) await assay(permille, { side: "seller" });
  // 22.90 − 22.60; (581.2 + 581.9) ÷ 2
  const page = await textOf(at, melt);
  expect(page).toContain("0.3 g, 1.31 %");
  expect(page).toContain("581.55 ‰ mean of both sides");
  expect((await send("settling", {})).statusCode).toBe(303);
  // 22.60 × 581.55 ‰ = 13.14303 g; ÷ 22.90 = 573.93 ‰
  expect(await textOf(at, melt)).toContain("13.1430 g fine, 573.93 ‰ of what went in");
  // final is final
  expect(codesIn((await assay("590")).body)).toContain("melt.settled");
  await lock();
  expect((await at.post(`${lot}/closing`, { by: "KR" })).statusCode).toBe(303);
  const settled = await closing();
  // 12.90 g and 10.00 g of 22.90 g: 13.14303 g × 12.90 ÷ 22.90 × 60 = 444.2238…, × 10.00 ÷ 22.90 × 60 = 344.3588…
  expect(settled?.lines.map(({ pay, rests_on }) => [pay.low, rests_on.source, rests_on.report])).toEqual([
    ["444.22", "melt", "M-1"],
    ["344.35", "melt", "M-1"],
  ]);
  expect(settled?.totals).toMatchObject([{ paid: "788.57" }]);
  expect(await textOf(at, `${lot}/payout`)).toContain("its final figures count for this lot");
  expect((await at.ledger.verify()).good).toBe(true);
});

test.each([
  // all that was found is paid, and no more: 22.60 × 581.20 ‰ = 13.13512 g × 60 = 788.1072
  { before: "22.70", reason: "thread burnt off before", pays: ["443.95", "344.15"] },
  // of 25.00 g a part is not the lot's: 13.13512 ÷ 25.00 × 12.90 × 60 = 406.6633…, × 10.00 = 315.2428…
  { before: "25.00", reason: "solder of the house went in", pays: ["406.66", "315.24"] },
])("where $before g went in for 22.90 g of pieces, the pieces are paid $pays", async ({ pays, ...made }) => {
  expect((await make(made)).statusCode).toBe(303);
  await send("bar", { after: "22.60", afterUnit: "g" });
  await send("drillings", { drilling: "D1" });
  await send("tolerances", { metal: "gold", duplicates_permille: "0.5", sides_permille: "1.0" });
  for (const permille of ["581.0", "581.4"]) await assay(permille);
  await send("settling", {});
  await lock();
  await at.post(`${lot}/closing`, { by: "KR" });
  expect((await closing())?.lines.map(({ pay }) => pay.low)).toEqual(pays);
});

test("sides that do not agree need the umpire; opened again it takes two, and what it said stays", async () => {
  await make();
  await send("bar", { after: "22.60" });
  await send("drillings", { drilling: "D1" });
  await send("tolerances", { metal: "gold", duplicates_permille: "0.5", sides_permille: "1.0" });
  for (const permille of ["580.0", "580.2"]) await assay(permille);
  for (const permille of ["582.0", "582.2"]) await assay(permille, { side: "seller" });
  expect(codesIn((await send("settling", {})).body)).toContain("melt.missing.umpire");
  await assay("581.1", { side: "umpire" });
  await send("settling", {});
  expect(codesIn((await send("reopening", { reason: "misread", second: "kr" })).body)).toContain(
    "settlement.second-same",
  );
  expect((await send("reopening", { reason: "misread", second: "MT" })).statusCode).toBe(303);
  const [wrong] = await at.ledger.entries({ kind: "melt-assay", limit: 1 });
  expect(codesIn((await send("exclusions", { entry: wrong?.id ?? "", reason: "" })).body)).toContain(
    "settlement.reason-missing",
  );
  await send("exclusions", { entry: wrong?.id ?? "", reason: "a digit misread" });
  expect(codesIn((await send("settling", {})).body)).toContain("melt.missing.duplicates");
  await assay("581.5");
  expect(codesIn((await send("settling", {})).body)).toContain("melt.missing.duplicates-differ");
  const text = await textOf(at, melt);
  expect(text).toContain("excluded: a digit misread");
  expect(text).toContain("581.1 ‰ by the umpire");
});

test("a melt of two lots tells of neither alone, and a lot goes into one melt only", async () => {
  const other = await openedLot(at, { name: "Lot 8", gross: "10.00", count: "1" });
  expect(codesIn((await make({ before: "32.90" }, [lot, other])).body)).toContain("melt.lot-empty");
  await at.post(`${other}/pieces`, { celsius: "21.4" });
  await weighed(at, other, "41", "10.00", "9.20");
  expect((await make({ before: "32.90" }, [lot, other])).statusCode).toBe(303);
  expect(codesIn((await make({ name: "M-2" })).body)).toContain("melt.lot-elsewhere");
  await send("bar", { after: "32.80" });
  await send("drillings", { drilling: "D1" });
  await send("tolerances", { metal: "gold", duplicates_permille: "0.5", sides_permille: "1.0" });
  for (const permille of ["700.0", "700.2"]) await assay(permille);
  await send("settling", {});
  await lock();
  await at.post(`${lot}/closing`, { by: "KR" });
  expect((await closing())?.lines.map(({ rests_on }) => rests_on.source)).toEqual(["density"]);
  expect(await textOf(at, `${lot}/payout`)).toContain("several lots went in, so it tells of none alone");
});

test.each([
  ["another mass than the lots weigh", "make", { before: "21.90" }, "melt.before-differs"],
  ["no lot", "make-none", {}, "melt.lots-missing"],
  ["nobody's name", "make", { by: "" }, "settlement.by-missing"],
  ["a bar that gained", "bar", { after: "23.40" }, "melt.gained"],
  ["a bar nobody weighed", "bar", { after: "22.60", bar: "B-99" }, "melt.bar-unknown"],
  ["a drilling before the bar", "drillings", { drilling: "D1" }, "melt.not-poured"],
  ["an assay of a drilling nobody took", "assays", {}, "melt.drilling-unknown"],
  ["final figures before the bar", "settling", {}, "melt.not-poured"],
])("%s goes back in one sentence, with everything typed", async (_, form, fields, code) => {
  if (form !== "make" && form !== "make-none") await make();
  const head = await at.ledger.head();
  const answer =
    form === "make"
      ? await make(fields)
      : form === "make-none"
        ? await make(fields, [])
        : form === "assays"
          ? await assay("581.0", { drilling: "D7" })
          : await send(form, fields);
  expect([answer.statusCode, codesIn(answer.body).includes(code)]).toEqual([422, true]);
  for (const typed of Object.values(fields))
    if (typed !== "") expect(answer.body).toContain(`value="${typed}"`);
  expect(await at.ledger.head()).toEqual(head);
});

test("two browsers racing: the second is told what changed, and nothing is written", async () => {
  await make();
  const page = (await at.app.inject({ url: melt, headers: { host } })).body;
  const given = formOn(page, `${melt}/bar`);
  expect((await at.post(`${melt}/bar`, { ...given, after: "22.60", by: "KR" })).statusCode).toBe(303);
  const head = await at.ledger.head();
  const second = await at.post(`${melt}/bar`, { ...given, after: "22.50", by: "MT" });
  expect([second.statusCode, codesIn(second.body).includes("melt.stale")]).toEqual([422, true]);
  expect(await at.ledger.head()).toEqual(head);
});
