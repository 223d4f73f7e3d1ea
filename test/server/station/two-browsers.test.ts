import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { buildTestBench, type TestBench } from "../build.ts";
import { asked, codesIn } from "../page-fields.ts";
import { telephoneJpeg } from "../photos/pictures.ts";
import { host, recorded, sendPhoto, wordsOf } from "../web/recorded.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

/** What the forms of a page name that was drawn at this moment, as its hidden fields hold it. */
async function drawn(url: string): Promise<Record<string, string>> {
  const { body } = await at.app.inject({ url, headers: { host } });
  const field = (name: string) => new RegExp(`name="${name}" value="([^"]*)"`).exec(body)?.[1] ?? "";
  return { subject: field("subject"), version: field("version"), lotVersion: field("lotVersion") };
}

const kindsOf = async (subject: string) => (await at.ledger.entriesOf(subject)).map(({ kind }) => kind);

/** Something another browser does to a weighing, so that every page drawn before it is stale. */
const touch = async (subject: string) => {
  await at.ledger.append("note", subject, { text: "the other browser was here" });
  await at.bench.resume();
};

describe("a form of a page that shows less than there is by now", () => {
  const typed = { reading: "27.94", unit: "g" };
  const bench: [form: string, fields: Record<string, string>, kept?: string][] = [
    ["/bench/typed-readings", { ...typed, role: "immersed" }, "27.94"],
    ["/bench/water", { celsius: "21.7" }, "21.7"],
    ["/bench/details", { method: "hung", wire: "0.25" }, "0.25"],
    ["/bench/captures", { role: "immersed" }],
    ["/bench/hands-free", {}],
    ["/bench/hands-free/end", {}],
    ["/bench/capture-by-hand", {}],
    ["/bench/capture-cancelled", {}],
    ["/bench/captures/:dry/voiding", { reason: "bubble at the rim" }, "bubble at the rim"],
    ["/bench/right-piece", { rightReason: "the list rounds" }],
    ["/bench/other-piece", {}],
    ["/bench/changed-over", {}],
    ["/bench/tests", { kind: "ring", "ring-heard": "clear", "ring-words": "long and high" }, "long and high"],
    ["/bench/photos/:photo/voiding", { reason: "blurred" }],
    ["/bench/call-off", { reason: "the owner left" }, "the owner left"],
    ["/bench/record", {}],
  ];

  beforeEach(async () => {
    await asked(at.bench).start({ ticket: "N8", claim: "ag-999" }, "n8");
    await asked(at.bench).type("dry", "31.10");
    await sendPhoto(at, "/bench/photos", telephoneJpeg(), { shows: "front" });
  });

  test.each(bench)("%s is refused by name, and nothing is written", async (form, fields, kept) => {
    const { captures = [], photos = [] } = at.bench.item ?? {};
    const path = form.replace(":dry", captures[0]?.id ?? "").replace(":photo", photos[0]?.id ?? "");
    const page = await drawn("/");
    await touch("n8");
    const before = await at.ledger.entriesOf("n8");
    const answer = await at.post(path, { ...page, ...fields });
    expect(answer.statusCode).toBe(422);
    expect(codesIn(answer.body)).toContain("weighing.stale");
    if (kept !== undefined) expect(answer.body).toContain(`value="${kept}"`);
    expect(await at.ledger.entriesOf("n8")).toEqual(before);
    expect(at.bench.waitingFor).toBeUndefined();
  });

  test("a photo is refused as well", async () => {
    const page = await drawn("/");
    await touch("n8");
    const answer = await sendPhoto(at, "/bench/photos", telephoneJpeg(), { ...page, shows: "edge" });
    expect(answer.statusCode).toBe(422);
    expect(codesIn(answer.body)).toContain("weighing.stale");
    expect(at.bench.item?.photos).toHaveLength(1);
  });

  test("a second person's reading is refused, and what was read stays in its field", async () => {
    await at.post("/settings/second-person", { secondMassG: "5", secondWorth: "" });
    await asked(at.bench).type("immersed", "28.14");
    const page = await drawn("/bench/second-person");
    await touch("n8");
    const read = { "reading-dry": "31.11", "reading-immersed": "28.15", by: "MT", typedBy: "KR" };
    const answer = await at.post("/bench/second-person", { ...page, ...read });
    expect(codesIn(answer.body)).toContain("weighing.stale");
    expect(answer.body).toContain('value="31.11"');
    expect(await kindsOf("n8")).not.toContain("second-reading");
  });

  test("a form that names nothing is refused too", async () => {
    const answer = await at.post("/bench/typed-readings", {
      ...typed,
      role: "dry",
      subject: "",
      version: "",
    });
    expect(codesIn(answer.body)).toContain("form.about-missing");
    expect(at.bench.item?.captures).toHaveLength(1);
  });
});

test("a reading typed for one ticket never lands on the one that another browser started since", async () => {
  await asked(at.bench).start({ ticket: "N8" }, "n8");
  const page = await drawn("/");
  await asked(at.bench).type("dry", "31.10");
  await at.post("/bench/call-off", { reason: "the owner left" });
  await asked(at.bench).start({ ticket: "N9" }, "n9");
  const answer = await at.post("/bench/typed-readings", {
    ...page,
    role: "dry",
    reading: "27.94",
    unit: "g",
  });
  expect(answer.statusCode).toBe(422);
  expect(codesIn(answer.body)).toContain("weighing.stale");
  for (const told of ["N8", "N9", "27.94"]) expect(answer.body).toContain(told);
  // the field of the other ticket stays empty: Enter pressed once more takes nothing
  expect(answer.body).not.toContain('value="27.94"');
  expect(await kindsOf("n9")).toEqual(["piece-opened"]);
});

test("two browsers start a ticket from the same page: the second is refused and told which one is on the bench", async () => {
  const page = await drawn("/");
  const start = (ticket: string) => at.post("/bench/piece", { ...page, ticket, method: "hung", claim: "" });
  expect((await start("N8")).statusCode).toBe(303);
  const second = await start("N9");
  expect(codesIn(second.body)).toContain("weighing.stale");
  expect(second.body).toContain("N9");
  expect(at.bench.item?.ticket).toBe("N8");
  // the same form sent twice is one weighing
  expect((await start("N8")).statusCode).toBe(303);
});

test("an entry that comes between reading and writing refuses the command: it is never decided on what was", async () => {
  await asked(at.bench).start({ ticket: "N8" }, "n8");
  const { seen } = at.bench.about;
  const note = { do: "note", subject: "n8", seen, message: { code: "happened.note" } } as const;
  await at.ledger.append("note", "n8", { text: "another program" });
  await expect(at.bench.station.do(note)).rejects.toMatchObject({ code: "weighing.stale" });
});

describe("a record", () => {
  const pages: [form: string, fields: Record<string, string>][] = [
    ["amendments", { by: "KR", reason: "misread", ticket: "B-2" }],
    ["voiding", { by: "KR", reason: "wire touched the wall" }],
    ["evidence", { kind: "ring", "ring-heard": "clear" }],
    [
      "laboratory",
      {
        metal: "silver",
        permille: "999.1",
        laboratory: "harbour assay",
        report: "7",
        method: "titration",
        date: "2026-03-02",
      },
    ],
  ];

  beforeEach(() => recorded(at, { id: "b1", claim: "ag-999", dry: "31.1035", immersed: "28.1435" }));

  test.each(pages)("%s of a stale page is refused by name", async (form, fields) => {
    const page = await drawn(
      form === "laboratory" || form === "evidence" ? `/records/b1/${form}` : "/records/b1",
    );
    await touch("b1");
    const before = await kindsOf("b1");
    const answer = await at.post(`/records/b1/${form}`, { ...page, ...fields });
    expect(answer.statusCode).toBe(422);
    expect(codesIn(answer.body).some((code) => code.endsWith(".stale"))).toBe(true);
    for (const kept of ["ticket", "report"].flatMap((name) => fields[name] ?? []))
      expect(answer.body).toContain(`value="${kept}"`);
    expect(await kindsOf("b1")).toEqual(before);
  });

  test.each(pages)(
    "void is final: no %s afterwards, from a stale page or a new one",
    async (form, fields) => {
      const page = await drawn("/records/b1");
      await at.post("/records/b1/voiding", { by: "KR", reason: "bubble under the rim" });
      const stale = await at.post(`/records/b1/${form}`, { ...page, ...fields });
      expect(codesIn(stale.body).some((code) => code.endsWith(".stale"))).toBe(true);
      const fresh = await at.post(`/records/b1/${form}`, fields);
      expect(fresh.statusCode).toBe(422);
      expect(codesIn(fresh.body)).toContain("record.voided");
      expect((await at.ledger.records()).records[0]).toMatchObject({ voided: true, amendments: 0 });
    },
  );

  test("void is final for photos, too, and an amendment written by an earlier version brings nothing back", async () => {
    await at.post("/records/b1/voiding", { by: "KR", reason: "wire touched the wall" });
    const photo = await sendPhoto(at, "/records/b1/photos", telephoneJpeg(), { shows: "front" });
    expect(codesIn(photo.body)).toContain("record.voided");
    const result = (await at.ledger.entriesOf("b1")).find((entry) => entry.kind === "result");
    await at.ledger.append("amendment", "b1", {
      replaces: "result-b1",
      reason: "as earlier versions let it",
      by: "KR",
      ...(result ? { result: result.body } : {}),
    });
    expect((await at.ledger.records()).records[0]).toMatchObject({ voided: true });
  });
});

describe("a lot", () => {
  let lot = "";
  const lotId = () => lot.replace("/lots/", "");
  const weigh = async (ticket: string, dry: string, immersed: string) => {
    await at.post(`${lot}/pieces`, { ticket, claim: "au-585" });
    await at.post(`${lot}/pieces`, { typed: dry, role: "dry", unit: "g" });
    return at.post(`${lot}/pieces`, { typed: immersed, role: "immersed", unit: "g" });
  };
  beforeEach(async () => {
    lot = (await at.post("/lots", { name: "Lot 7" })).headers.location ?? "";
    await at.post(`${lot}/pieces`, { celsius: "21.4" });
  });

  const forms: [form: string, fields: Record<string, string>][] = [
    ["pieces", { celsius: "22.0" }],
    ["flags", { flagTicket: "31", own: "clasp", reason: "magnet held it" }],
    ["again", { again: "31", againTyped: "12.90", unit: "g" }],
    ["closing", { note: "done" }],
    [
      "payout",
      {
        metal: "gold",
        price: "100",
        currency: "EUR",
        per: "g",
        source: "invented",
        at: "2026-11-25 09:00",
        rate: "95",
        fee: "0",
        rounding: "down",
      },
    ],
    ["terms", { ticket: "31", permille: "585", saidBy: "stamp" }],
  ];

  test.each(forms)("%s of a stale page is refused by name, and nothing is written", async (form, fields) => {
    await weigh("31", "12.90", "11.932");
    const page = await drawn(form === "payout" || form === "terms" ? `${lot}/payout` : lot);
    await at.ledger.append("lot-water", lotId(), { celsius: "21.9" });
    const before = await at.ledger.head();
    const answer = await at.post(`${lot}/${form}`, { ...page, ...fields });
    expect(answer.statusCode).toBe(422);
    expect(codesIn(answer.body)).toContain("lot.stale");
    expect(await at.ledger.head()).toEqual(before);
  });

  test("a row typed on a page that another browser went on from is refused, and the value stays in its field", async () => {
    await at.post(`${lot}/pieces`, { ticket: "31", claim: "au-585" });
    const page = await drawn(lot);
    await touch(at.bench.about.subject);
    const answer = await at.post(`${lot}/pieces`, { ...page, typed: "12.90", role: "dry", unit: "g" });
    expect(codesIn(answer.body)).toContain("weighing.stale");
    expect(answer.body).toContain('value="12.90"');
    expect(at.bench.item?.captures).toHaveLength(0);
  });

  // 12.90 g dry and 5.00 g immersed: lighter than any metal, which the floor of the beaker or what lies inside explains
  test("a row that a check stops is written and flagged, and counts for nothing until it is answered", async () => {
    await weigh("30", "7.15", "6.614");
    expect((await weigh("31", "12.90", "5.00")).statusCode).toBe(303);
    const [stopped] = (await at.ledger.records({ filters: { ticket: "31" } })).records;
    expect(stopped).toMatchObject({ state: "no-valid-reading", voided: false });
    const page = (await at.app.inject({ url: lot, headers: { host } })).body;
    expect(page).toContain('data-code="check.rests-on-bottom"');
    // its doubt is asked before the lot is closed, and it is in no sum
    const asked = await at.post(`${lot}/closing`, {});
    expect(codesIn(asked.body)).toContain("lot.closing-asks");
    const sums = async () => wordsOf((await at.app.inject({ url: lot, headers: { host } })).body);
    expect(await sums()).toMatch(/Sum of the pieces 7\.15 g/);
    const { subject = "" } = stopped ?? {};
    const answer = { subject, version: `${(await at.ledger.entriesOf(subject)).length}`, by: "KR" };
    expect((await at.post(`${lot}/answers`, { ...answer, found: " " })).statusCode).toBe(422);
    expect(
      (await at.post(`${lot}/answers`, { ...answer, found: "a bead of amber inside", stands: "yes" }))
        .statusCode,
    ).toBe(303);
    const [answered] = (await at.ledger.records({ filters: { ticket: "31" } })).records;
    expect(answered?.state).not.toBe("no-valid-reading");
    expect(await sums()).toMatch(/Sum of the pieces 20\.05 g/);
    expect(await kindsOf(subject)).toEqual(expect.arrayContaining(["check-answered", "amendment"]));
  });

  // 0.97 g: what the beaker would rise by, not what hangs in the water
  test.each(["0.00", "0.97"])(
    "readings that cannot be are not answered away: only an amendment or voiding settles the row (%s g)",
    async (typed) => {
      await weigh("31", "12.90", typed);
      const [{ subject } = { subject: "" }] = (await at.ledger.records()).records;
      const answer = await at.post(`/records/${subject}/answers`, {
        found: "it is so",
        stands: "yes",
        by: "KR",
      });
      expect(codesIn(answer.body)).toContain("weighing.check.impossible");
      const wet = (await at.ledger.entriesOf(subject)).findLast((entry) => entry.kind === "capture");
      const fields = { [`reading:${wet?.id}`]: "11.93", by: "KR", reason: "read off the wrong display" };
      expect((await at.post(`/records/${subject}/amendments`, fields)).statusCode).toBe(303);
      const [amended] = (await at.ledger.records()).records;
      expect(amended?.state).not.toBe("no-valid-reading");
    },
  );
});

test.each(["0.00", "0.97"])(
  "on the bench, %s g that cannot be is not answered away; it is excluded and taken anew",
  async (typed) => {
    const on = asked(at.bench);
    await on.start({ ticket: "N8", claim: "au-585" }, "n8");
    await on.type("dry", "12.90");
    await on.type("immersed", typed);
    await on.temperature("21.4");
    const refused = await at.post("/bench/record", { found: "it is so" });
    expect(codesIn(refused.body)).toContain("weighing.check.impossible");
    expect(await kindsOf("n8")).not.toContain("result");
    await on.exclude(at.bench.item?.captures.at(-1)?.id ?? "", "piece fell off the hook");
    await on.type("immersed", "11.93");
    expect((await at.post("/bench/record", {})).statusCode).toBe(303);
  },
);

test("an owner's metal taken out while it is claimed leaves the bench standing, and says that it is gone", async () => {
  const own = {
    id: "own-x",
    name: "Melt 7",
    composition: { Ag: [1, 1, 1] as [number, number, number] },
    density_g_cm3: { nominal: 10.5, low: 10.4, high: 10.6 },
    expansion_per_million_k: null,
    magnetism: "none" as const,
    conductivity_iacs_percent: null,
    sound_m_s: null,
    colour: "white" as const,
    likelihood: "common" as const,
    source: "an invented melt",
  };
  await at.library.keep({ underhook_metals: 1, version: 1, metals: [own] });
  const on = asked(at.bench);
  await on.start({ ticket: "N8", claim: "own-x" }, "n8");
  await on.type("dry", "31.10");
  await at.library.keep({ underhook_metals: 1, version: 2, metals: [] });
  const page = await at.app.inject({ url: "/", headers: { host } });
  expect(page.statusCode).toBe(200);
  expect(codesIn(page.body)).toContain("weighing.claim-gone");
  await on.type("immersed", "28.10");
  await on.temperature("21.4");
  expect((await at.app.inject({ url: "/", headers: { host } })).statusCode).toBe(200);
  expect(codesIn((await at.post("/bench/record", {})).body)).toContain("weighing.record.refused");
});
