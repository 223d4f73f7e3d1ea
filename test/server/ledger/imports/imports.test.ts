import { expect, test } from "vitest";
import { previewImport } from "../../../../server/ledger/imports/preview.ts";
import { takeOverTickets, takeOverWeighings } from "../../../../server/ledger/imports/take-over.ts";
import { testLedger } from "../bench-ledger.ts";

const head = "ticket,description,measured_at,mass_g,density_g_cm3,u_g_cm3,claim,temperature_c";

test("every refused cell is named with line, column, value and what would be right", async () => {
  const { rows, refused } = await previewImport(
    "weighings",
    [
      head,
      "H-1,medal,2019-05-02,31.10,10.34,0.02,ag-925,20.5",
      "H-2,ring,02.05.2019,4.1,15.2,,au-750,",
      "H-3,bar,2019-02-30,abc,10.4,,,",
      ',"no ticket",2019-05-03,10,8.9,,,',
      "H-5,kg per m3,2019-05-03,10,8900,,,",
    ].join("\n"),
  );
  expect(rows).toEqual([
    {
      line: 2,
      values: {
        ticket: "H-1",
        description: "medal",
        measured_at: "2019-05-02T00:00:00.000Z",
        mass_g: "31.10",
        density_g_cm3: "10.34",
        u_g_cm3: "0.02",
        claim: "ag-925",
        temperature_c: "20.5",
      },
    },
  ]);
  expect(refused.map(({ line, column, value }) => [line, column, value])).toEqual([
    [3, "measured_at", "02.05.2019"],
    [4, "measured_at", "2019-02-30"],
    [4, "mass_g", "abc"],
    [5, "ticket", ""],
    [6, "density_g_cm3", "8900"],
  ]);
  expect(refused.map(({ message }) => message.code)).toEqual([
    "import.cell.no-moment",
    "import.cell.no-moment",
    "form.number.not-a-number",
    "form.text.empty",
    "import.cell.too-dense",
  ]);
});

test("a list that shows its decimal comma is read by it; where nothing shows it, a comma that could be thousands is asked about", async () => {
  const head = "Ticket;Description;Measured at;Mass g;Density g cm3\r\n";
  const shown = await previewImport(
    "weighings",
    `${head}H-1;medal;2019-05-02;31,10;10,34\r\nH-2;bar;2019-05-02;1,234;10,3\r\n`,
  );
  expect(shown.refused).toEqual([]);
  expect(shown.rows.map(({ values }) => values.mass_g)).toEqual(["31.10", "1.234"]);
  const { refused } = await previewImport("weighings", `${head}H-2;bar;2019-05-02;1,234;10\r\n`);
  expect(refused).toEqual([
    {
      line: 2,
      column: "mass_g",
      value: "1,234",
      message: {
        code: "form.number.two-meanings",
        params: { typed: "1,234", meanings: { anyOf: [{ decimal: "1.234" }, { decimal: "1234" }] } },
      },
    },
  ]);
});

test("quoted cells keep commas, quotes and line ends, and lines are counted as an editor counts them", async () => {
  const { rows, refused } = await previewImport(
    "tickets",
    '\uFEFFticket,description,claim\nH-1,"medal, ""ship""\nrim knock",ag-925\n\nH-2,,\n',
  );
  expect(rows).toEqual([
    { line: 2, values: { ticket: "H-1", description: 'medal, "ship"\nrim knock', claim: "ag-925" } },
  ]);
  expect(refused).toEqual([
    { line: 5, column: "description", value: "", message: { code: "form.text.empty" } },
  ]);
});

test("own metals need a composition that adds up and densities in order", async () => {
  const { rows, refused } = await previewImport(
    "metals",
    [
      "id,name,composition_percent,density_low_g_cm3,density_g_cm3,density_high_g_cm3,magnetism,colour,source",
      "own-a,A,Au 75; Ag 12.5; Cu 12.5,15.3,15.5,15.7,none,yellow,melt book",
      "own-b,B,Au 75; Ag 12.5,15.3,15.5,15.7,none,yellow,melt book",
      "own-c,C,Ag 100,10.4,10.6,10.5,weakly,white,melt book",
      "own-d,D,Ag 100,10.4,10.6,10.5,none,white,melt book",
      "own-a,again,Ag 100,10.4,10.5,10.5,none,white,melt book",
    ].join("\n"),
  );
  expect(rows[0]?.values.composition_percent).toEqual({ Au: 0.75, Ag: 0.125, Cu: 0.125 });
  expect(refused.map(({ line, column, message }) => [line, column, message])).toEqual([
    [3, "composition_percent", { code: "import.cell.composition-sum", params: { sum_percent: 87.5 } }],
    [4, "magnetism", expect.objectContaining({ code: "import.cell.no-choice" })],
    [
      5,
      "density_g_cm3",
      {
        code: "form.number.out-of-range",
        params: { value: 10.6, unit: "\u00a0g/cm³", from: 10.4, to: 10.5 },
      },
    ],
    [6, "id", { code: "import.cell.stands-already", params: { line: 2 } }],
  ]);
});

const refusal = (code: string) => expect.objectContaining({ code });

test("a list of another kind is refused whole, with the headings it has and those it needs", async () => {
  await expect(previewImport("specifications", "a,b\n1,2")).rejects.toThrow(
    refusal("import.list.columns-missing"),
  );
  await expect(previewImport("tickets", "")).rejects.toThrow(refusal("import.list.empty"));
  await expect(previewImport("tickets", 'ticket,description\n"H-1,x')).rejects.toThrow(
    refusal("import.csv.quotes-open"),
  );
  await expect(previewImport("tickets", "ticket,description,ticket\na,b,c")).rejects.toThrow(
    refusal("import.list.column-twice"),
  );
  expect(await previewImport("tickets", "ticket,description,shelf\na,b,c")).toMatchObject({
    unknownColumns: ["shelf"],
  });
  const long = previewImport("tickets", `ticket,description\n${"a,b\n".repeat(100_001)}`);
  await expect(long).rejects.toThrow(refusal("import.list.too-long"));
});

test("old weighings are taken over once, say where they came from, and stand in the list", async () => {
  const ledger = await testLedger();
  const preview = await previewImport(
    "weighings",
    `${head}\nH-1,medal,2019-05-02,31.10,10.34,0.02,ag-925,20.5`,
  );
  expect(await takeOverWeighings(ledger, preview.rows, "old book, 2019")).toBe(1);
  expect(await takeOverWeighings(ledger, preview.rows, "old book, 2019")).toBe(0);
  const { records } = await ledger.records({ search: "H-1 medal" });
  expect(records).toMatchObject([
    { ticket: "H-1", at: "2019-05-02T00:00:00.000Z", mass_g: 31.1, expanded_g_cm3: 0.04 },
  ]);
  const [entry] = await ledger.entries({ kind: "imported-weighing" });
  expect(entry?.body).toMatchObject({ from: "old book, 2019", mass_g: "31.10" });
});

test("a long list is written some rows at a time: others write between, it stops when told, and goes on from there", async () => {
  const ledger = await testLedger();
  const lines = Array.from({ length: 3000 }, (_, i) => `T-${i},piece ${i}`);
  const { rows } = await previewImport("tickets", `ticket,description\n${lines.join("\n")}`);
  const stopping = new AbortController();
  const seen: number[] = [];
  const onProgress = (row: number) => {
    seen.push(row);
    if (row > 500) stopping.abort();
  };
  const first = takeOverTickets(ledger, rows, "a list", { onProgress, signal: stopping.signal });
  const between = await ledger.append("ticket-announced", "tickets", {
    ticket: "B-1",
    description: "by hand",
    from: "hand",
  });
  const written = await first;
  expect(written).toBe(seen.at(-1));
  expect(written).toBeLessThan(3000);
  const last = await ledger.head();
  expect(between.seq).toBeLessThan(last!.seq);
  expect(await takeOverTickets(ledger, rows, "a list")).toBe(3000 - written);
  expect(await takeOverTickets(ledger, rows, "a list")).toBe(0);
  expect((await ledger.verify()).good).toBe(true);
});

test("a moment is read by RFC 3339 with its offset, and one whose offset is no number is refused", async () => {
  const moments = [
    "2019-05-02T10:30:00+02:00",
    "2019-05-02T10:30:00.5Z",
    "2019-05-02T10:30-05:30",
    "2019-05-02T10:30+ab:cd",
  ];
  const { rows, refused } = await previewImport(
    "weighings",
    [head, ...moments.map((at, n) => `H-${n},medal,${at},31.10,10.34,0.02,,`)].join("\n"),
  );
  expect(rows.map(({ values }) => values.measured_at)).toEqual([
    "2019-05-02T08:30:00.000Z",
    "2019-05-02T10:30:00.500Z",
    "2019-05-02T16:00:00.000Z",
  ]);
  expect(refused.map(({ line, column }) => [line, column])).toEqual([[5, "measured_at"]]);
});

test("parts of an alloy below nothing, without a symbol or of another sum are refused; one of no share is taken", async () => {
  const columns =
    "id,name,composition_percent,density_low_g_cm3,density_g_cm3,density_high_g_cm3,magnetism,colour,source";
  const parts = ["Au 75; Ag 25; Cu 0", "Au 110; Ag -10", "75; Ag 25", "Au 75; Ag 20"];
  const { rows, refused } = await previewImport(
    "metals",
    [columns, ...parts.map((part, n) => `own-${n},M,${part},15.3,15.5,15.7,none,yellow,melt book`)].join(
      "\n",
    ),
  );
  expect(rows.map(({ values }) => values.composition_percent)).toEqual([{ Au: 0.75, Ag: 0.25, Cu: 0 }]);
  expect(refused.map(({ line, message: { code } }) => [line, code])).toEqual([
    [3, "import.cell.no-composition"],
    [4, "import.cell.no-composition"],
    [5, "import.cell.composition-sum"],
  ]);
});
