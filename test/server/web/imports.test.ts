import { afterEach, beforeEach, expect, test } from "vitest";
import { tellerOf } from "../../../views/messages/tell.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { codesIn } from "../page-fields.ts";
import { host, sendForm, textOf, wordsOf } from "./recorded.ts";

const t = tellerOf("en");

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

/** Sends the form of a list with a file. */
function send(list: string, file: string | Uint8Array, from = "old book 2019") {
  const csv = new File([file as BlobPart], "list.csv", { type: "text/csv" });
  return sendForm(at, { url: "/imports", from: "/imports" }, { list, from, file: csv });
}

const take = ({ body }: { body: string }) =>
  at.post("/imports/taken", { held: /name="held" value="([^"]+)"/.exec(body)?.[1] ?? "" });

const weighings = [
  "ticket;description;measured_at;mass_g;density_g_cm3;u_g_cm3;claim",
  "H-1;Médaille;2019-05-02;31,10;10,34;0,02;ag-925",
  "H-2;ring;02.05.2019;4,1;15,2;;au-750",
  "H-3;bar;2019-05-04;100,0;10,4;;argent",
].join("\n");

test("a file is previewed with every refused cell, stores nothing, and is taken over once on a word", async () => {
  const preview = await send("weighings", weighings);
  const text = wordsOf(preview.body);
  expect(text).toContain("1 row is right. 2 cells are refused");
  expect(text).toContain(`3 measured_at 02.05.2019 ${t("import.cell.no-moment", { typed: "02.05.2019" })}`);
  expect(text).toContain(`4 claim argent ${t("import.cell.no-metal", { typed: "argent" })}`);
  expect((await at.ledger.records()).count).toBe(0);

  expect((await take(preview)).headers.location).toBe("/imports?taken=1&list=weighings");
  expect(await textOf(at, "/imports?taken=1&list=weighings")).toContain(
    t("imports.taken", { count: 1, list: "weighings" }).slice(0, -1),
  );
  const { records } = await at.ledger.records();
  expect(records).toMatchObject([{ ticket: "H-1", description: "Médaille", mass_g: 31.1 }]);
  expect((await take(await send("weighings", weighings))).headers.location).toContain("taken=0");
  expect((await at.ledger.records()).count).toBe(1);
});

test("a weighing taken over has a page of its own that says it was not measured here", async () => {
  await take(await send("weighings", weighings));
  const [record] = (await at.ledger.records()).records;
  const text = await textOf(at, `/records/${encodeURIComponent(record?.subject ?? "")}`);
  for (const part of [
    `${t("imported.from")} old book 2019`,
    "31.10 g",
    "10.34",
    "was not measured at this bench",
  ])
    expect(text).toContain(part);
});

test("older one-byte text is read, and a list without right rows offers nothing to take over", async () => {
  const oneByte = Uint8Array.from(weighings, (sign) => sign.charCodeAt(0));
  expect(wordsOf((await send("weighings", oneByte)).body)).toContain("Médaille");
  const none = await send("tickets", "ticket,description\nH-1,");
  expect(wordsOf(none.body)).toContain(t("imports.nothing-right"));
  expect(none.body).not.toContain('name="held"');
});

test("pasted lines do as well as a file; nothing at all, another table or no origin is refused in words", async () => {
  const pasted = await at.post("/imports", { list: "weighings", text: weighings, from: "x" });
  expect(wordsOf(pasted.body)).toContain("1 row is right");
  for (const [fields, message] of [
    [{ list: "weighings", text: "", from: "x" }, "No file was chosen and nothing was pasted"],
    [{ list: "weighings", text: "a,b\n1,2", from: "x" }, "The first line lacks ticket"],
    [{ list: "weighings", text: weighings, from: " " }, "Say where the list comes from"],
  ] as const) {
    const answer = await at.post("/imports", fields);
    expect([answer.statusCode, wordsOf(answer.body)]).toEqual([422, expect.stringContaining(message)]);
  }
  expect(wordsOf((await at.post("/imports/taken", { held: "0".repeat(64) })).body)).toContain(
    "no longer held",
  );
});

test("specifications and metals of one's own are taken over and count at once; what does not go together is refused", async () => {
  const specification = "id,name,metal,mass_g,fineness_permille,fine_mass_g,source";
  const preview = await send(
    "specifications",
    [
      specification,
      "own-medal,Harbour medal,ag-925,20.00,925,18.50,melt book",
      "own-bad,Bad sum,ag-925,20.00,925,12.00,melt book",
      "own-odd,No such metal,unobtainium,20.00,925,,melt book",
    ].join("\n"),
  );
  const text = wordsOf(preview.body);
  expect(text).toContain("1 row is right. 2 cells are refused");
  expect(text).toMatch(/3 fine_mass_g 12\.00 /);
  expect(text).toContain(`4 metal unobtainium ${t("import.cell.no-metal", { typed: "unobtainium" })}`);
  await take(preview);
  expect(await textOf(at, "/specifications")).toContain("Harbour medal");

  const metals = await send(
    "metals",
    "id,name,composition_percent,density_low_g_cm3,density_g_cm3,density_high_g_cm3,magnetism,colour,source\n" +
      "own-m,Melt 7,Au 75; Ag 12.5; Cu 12.5,15.3,15.5,15.7,none,yellow,melt book\n" +
      "own-n,Melt 8,Au 75; Ag 12.5; Cu 12.5,15.3,15.5,15.7,none,mauve,melt book",
  );
  expect(wordsOf(metals.body)).toMatch(/3 colour mauve /);
  await take(metals);
  expect(at.library.now.has("own-m")).toBe(true);
});

test("a ticket of a list waits, is put on the bench with what the customer said, and waits no more", async () => {
  const list = "ticket,description,claim,customer,mass_g\nH-7,ring,au-750,window,4.10\nH-8,chain,,,\n";
  await take(await send("tickets", list, "stock system"));
  const page = await at.app.inject({ url: "/tickets", headers: { host } });
  expect(wordsOf(page.body)).toMatch(/H-7 ring .*stock system.*H-8 chain nothing/);
  const id = /name="id" value="([^"]+)"/.exec(page.body)?.[1] ?? "";
  expect((await at.post("/tickets", { id })).headers.location).toBe("/");
  expect(at.bench.item).toMatchObject({ ticket: "H-7", claim: "au-750" });
  const [opened] = await at.ledger.entries({ kind: "piece-opened" });
  // who brought it is kept apart: the entry names it by its reference
  const [told] = at.ledger.names?.named([opened!], "") ?? [];
  expect(told?.body).toMatchObject({ customer: "window", customerSupplied: { mass_g: "4.10" } });
  expect(await textOf(at, "/tickets")).not.toContain("H-7");
  expect((await at.post("/tickets", { id })).statusCode).toBe(422);
});

/** As a German table program writes it: semicolons, decimal commas, own headings, two bytes a sign. */
const german = [
  "Etikett;Beschreibung;Angegeben als;Posten;Gewicht (g)",
  "K-1;Armreif;585;Los 3;1.234,5",
  "K-2;Ring;14 ct;Los 3;4,10",
  "K-3;Kette;Gold 750 (18 ct);Los 3;12,90",
  "K-4;Barren;999;Los 3;31,10",
  "K-5;Ring;585;Los 3;-4,10",
].join("\r\n");

const wide = (text: string, big: boolean) => {
  const bytes = Buffer.from(`\uFEFF${text}`, "utf16le");
  return new Uint8Array(big ? bytes.swap16() : bytes);
};

test.each([
  ["UTF-8", german],
  ["UTF-16, small end first", wide(german, false)],
  ["UTF-16, big end first", wide(german, true)],
  ["UTF-16 without a mark", wide(german, false).subarray(2)],
])("a German list in %s: headings, stamps and 1.234,5 are understood", async (_, file) => {
  const preview = await send("tickets", file, "Kasse");
  const codes = codesIn(preview.body);
  expect(codes).toContain("import.cell.metals");
  expect(codes).toContain("form.number.not-above-zero");
  expect((await take(preview)).headers.location).toContain("taken=3");
  const announced = await at.ledger.entries({ kind: "ticket-announced" });
  expect(announced.map(({ body }) => body)).toMatchObject([
    { ticket: "K-1", description: "Armreif", claim: "au-585", lot: "Los 3", mass_g: "1234.5" },
    { ticket: "K-2", claim: "au-585", mass_g: "4.10" },
    { ticket: "K-3", claim: "au-750", mass_g: "12.90" },
  ]);
});

test("a mass whose unit nobody names is asked for; another unit in the heading is refused", async () => {
  const open = await send("tickets", "Etikett;Beschreibung;Gewicht\nK-1;Ring;4,10\nK-2;Ring;4,10 g\n");
  expect(codesIn(open.body)).toContain("import.cell.unit-open");
  expect((await take(open)).headers.location).toContain("taken=1");
  const ounces = await send("tickets", "Etikett;Beschreibung;Gewicht (ozt)\nK-3;Ring;4,10\n");
  expect([ounces.statusCode, codesIn(ounces.body)]).toEqual([422, ["import.list.unit-other"]]);
});

test("a unit behind an underline and the customer's word for the mass are understood", async () => {
  const preview = await send(
    "tickets",
    "Schein;Beschreibung;Posten;Angegebene Masse_g\nS-1;Ring;Los 4;1.031,10\n",
  );
  expect((await take(preview)).headers.location).toContain("taken=1");
  const [announced] = await at.ledger.entries({ kind: "ticket-announced" });
  expect(announced?.body).toMatchObject({ ticket: "S-1", lot: "Los 4", mass_g: "1031.10" });
});

test("a number that the list leaves open is refused with what it can mean", async () => {
  const rows = 'ticket,description,mass_g\nL-1,ring,4.10\nL-2,ring,"1,234"\n';
  expect(codesIn((await send("tickets", rows)).body)).toContain("form.number.two-meanings");
});
