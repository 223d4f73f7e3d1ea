import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { knownMixtures } from "../../../server/metals/composites/binary-mixtures.ts";
import { knownCoreAndSkins } from "../../../server/metals/composites/core-and-skin.ts";
import { builtIn, metals } from "../../../server/metals/library.ts";
import { writeOwnMetals } from "../../../server/metals/own-metals.ts";
import { publishedPairs } from "../../../server/metals/published-pairs.ts";
import { statementOf } from "../../../server/weighing/recorded-statement.ts";
import { messageText } from "../../message-text.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { textOf } from "./recorded.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
});
afterEach(() => at.close());

const get = (url: string, headers: Record<string, string> = {}) =>
  at.app.inject({ url, headers: { host: "localhost:1", ...headers } });

const idsIn = (body: string) => [...body.matchAll(/href="\/metals\/([^"]+)"/g)].map(([, id]) => id ?? "");

const bellMetal = {
  name: "Quay bell metal",
  composition: "Cu 78 77-79\nSn 22",
  nominal: "8,62",
  low: "8.55",
  high: "8.7",
  magnetism: "none",
  colour: "yellow",
  likelihood: "common",
  source: "own weighings",
};

describe("the library", () => {
  test("lists every metal, and a search narrows it by name, element and family", async () => {
    const all = await get("/metals");
    expect(new Set(idsIn(all.body).filter((id) => id !== "own")).size).toBe(metals.length);
    const gold = idsIn((await get("/metals?q=sterling")).body);
    expect(gold).toContain("ag-925");
    expect(gold).not.toContain("el-cu");
    const steel = idsIn((await get("/metals?family=steel")).body);
    expect(steel).toContain("steel-c");
    expect(steel).not.toContain("ag-925");
  });

  test("the whole library is drawn by its families, a narrowed one by its metals", async () => {
    const drawn = (body: string) => /<figure[\s\S]*?<\/figure>/.exec(body)![0];
    const whole = drawn((await get("/metals")).body);
    for (const family of ["Gold", "Silver", "Heavy metals"]) expect(whole).toContain(`>${family}</`);
    expect(whole).not.toContain(">Magnesium</");
    expect(drawn((await get("/metals?family=silver")).body)).toContain(">Silver 999 fine</");
  });

  test("finds what lies near a density, typed with a comma, nearest first", async () => {
    const near = idsIn((await get("/metals?density=19,3")).body);
    expect(near).toContain("el-w");
    expect(near).toContain("au-999");
    expect(near).not.toContain("el-pb");
  });

  test("answers a search from the page with the part alone", async () => {
    const { body } = await get("/metals?q=lead", { "hx-request": "true" });
    expect(body.startsWith('<div id="found">')).toBe(true);
    expect(body).not.toContain("<html");
  });

  test("a metal's page shows its band, both mixture laws, what other tests show, and its source", async () => {
    const { body } = await get("/metals/ag-925-cu");
    for (const words of [
      "mixture law",
      "with the excess terms",
      "% IACS",
      "longitudinal",
      "per kelvin",
      "Where this comes from",
      "What else lies here",
    ])
      expect(body).toContain(words);
    expect(body).toContain("92.5 %");
  });

  test("tungsten stands among what a density cannot tell from fine gold", async () => {
    expect(idsIn((await get("/metals/au-999")).body)).toContain("w-pure");
  });

  test("lead carries its caution", async () => {
    expect((await get("/metals/el-pb")).body).toContain('aria-label="Caution"');
  });

  test("the mixture law is drawn against every published density, in a phone's and a page's width", async () => {
    const { statusCode, body } = await get("/mixture-law");
    expect(statusCode).toBe(200);
    expect(publishedPairs.length).toBeGreaterThanOrEqual(40);
    expect(body.match(/<circle class="point"/g)).toHaveLength(2 * publishedPairs.length);
  });

  test("an unknown id is refused with the nearest names", async () => {
    const { statusCode, body } = await get("/metals/ag-952");
    expect(statusCode).toBe(404);
    expect(body).toContain("ag-952");
    expect(body).toContain("silver 925");
  });
});

describe("links from findings", () => {
  test("every metal of the library has its page", { timeout: 60_000 }, async () => {
    for (const { id } of metals) expect((await get(`/metals/${id}`)).statusCode, id).toBe(200);
  });

  test("so has every mixture and every cored piece that a finding can name", {
    timeout: 60_000,
  }, async () => {
    const named = [10.49, 15.5, 17.7, 19.3, 21.4].flatMap((rho) => {
      const interval = [rho * 0.99, rho * 1.01] as const;
      return [...knownMixtures(interval), ...knownCoreAndSkins(interval, builtIn, () => true)].map(
        ({ id }) => id,
      );
    });
    expect(named.length).toBeGreaterThan(20);
    for (const id of new Set(named)) expect((await get(`/metals/${id}`)).statusCode, id).toBe(200);
  });

  test("a tungsten core under gold says what any test of the skin sees", async () => {
    const { body } = await get("/metals/core-w-pure-skin-el-au");
    expect(body).toContain("sees the skin");
    expect(idsIn(body)).toEqual(expect.arrayContaining(["w-pure", "el-au"]));
  });
});

describe("metals of one's own", () => {
  test("one added by form stands in the library, in claims, in findings and in the version of the record", async () => {
    expect((await at.post("/metals/own", bellMetal)).statusCode).toBe(303);
    expect(at.library.now.version).toMatch(/\+own\.1$/);
    expect((await get("/metals/own-quay-bell-metal")).body).toContain("8.550 to 8.700");
    await at.post("/bench/piece", {
      ticket: "B-1",
      description: "a bell",
      method: "hung",
      claim: "own-quay-bell-metal",
      key: "bell",
    });
    await at.post("/bench/typed-readings", { role: "dry", reading: "86.2000", unit: "g" });
    await at.post("/bench/typed-readings", { role: "immersed", reading: "76.2200", unit: "g" });
    await at.post("/bench/water", { celsius: "20" });
    await at.post("/bench/record", {});
    const record = await get("/records/bell");
    expect(record.body).toContain("Quay bell metal");
    const result = (await at.ledger.entriesOf("bell")).find(({ kind }) => kind === "result");
    expect(result?.kind === "result" && result.body.versions.library).toMatch(/\+own\.1$/);
    expect(result?.kind === "result" && statementOf(result.body).not_excluded.map(({ id }) => id)).toContain(
      "own-quay-bell-metal",
    );
  });

  test("a metal that a record claims stays, and the record says by which library it was judged", async () => {
    await at.post("/metals/own", bellMetal);
    await at.post("/bench/piece", {
      ticket: "B-1",
      description: "",
      method: "hung",
      claim: "own-quay-bell-metal",
      key: "bell",
    });
    await at.post("/bench/typed-readings", { role: "dry", reading: "86.2000", unit: "g" });
    await at.post("/bench/typed-readings", { role: "immersed", reading: "76.2200", unit: "g" });
    await at.post("/bench/water", { celsius: "20" });
    await at.post("/bench/record", {});
    const refused = await at.post("/metals/own/own-quay-bell-metal/removal", {});
    expect(refused.statusCode).toBe(422);
    expect(refused.body).toContain(
      messageText("metal.own.in-records", { name: "Quay bell metal", records: 1 }),
    );
    expect(at.library.now.has("own-quay-bell-metal")).toBe(true);
    expect((await get("/records/bell")).body).toContain(at.library.now.version);
    await at.post("/metals/own", { ...bellMetal, name: "Second" });
    await at.post("/metals/own/own-second/removal", {});
    expect(at.library.now.version).toMatch(/\+own\.3$/);
    for (const url of ["/records/bell", "/records", "/"]) expect((await get(url)).statusCode, url).toBe(200);
    // its band moves away from the piece; the record is drawn as it was judged
    const bands = async () => (await textOf(at, "/records/bell")).match(/Quay bell metal \d\S+ \d\S+/g);
    const judged = await bands();
    const held = JSON.parse(writeOwnMetals(at.library.own!));
    held.version++;
    held.metals[0].density_g_cm3 = { nominal: 12, low: 11.9, high: 12.1 };
    const moved = { name: "json-file", text: JSON.stringify(held) };
    expect((await at.send("/metals/own/import", moved)).statusCode).toBe(303);
    expect(judged).not.toBeNull();
    expect(await bands()).toEqual(judged);
  });

  test("what was exported is taken over again by another bench, and survives its restart", async () => {
    await at.post("/metals/own", bellMetal);
    const file = (await get("/metals/own.json")).body;
    await at.close();
    at = await buildTestBench();
    expect((await at.post("/metals/own/import", { file })).statusCode).toBe(303);
    const ledgerFile = at.file;
    await at.close();
    at = await buildTestBench(ledgerFile);
    expect((await get("/metals/own.json")).body).toBe(file);
    expect(at.library.now.has("own-quay-bell-metal")).toBe(true);
  });

  test("a chosen file is taken over, and one with a fault is refused with its place while nothing changes", async () => {
    await at.post("/metals/own", bellMetal);
    const file = (await get("/metals/own.json")).body;
    await at.close();
    at = await buildTestBench();
    const faulty = file.replace('"yellow"', '"gold"');
    const refused = await at.send("/metals/own/import", { name: "json-file", text: faulty });
    expect(refused.statusCode).toBe(422);
    expect(refused.body).toContain("metals.0.colour");
    expect(at.library.own).toBeUndefined();
    const empty = await at.send("/metals/own/import", { name: "json-file", text: "" });
    expect(empty.body).toContain(messageText("upload.none"));
    expect((await at.send("/metals/own/import", { name: "json-file", text: file })).statusCode).toBe(303);
    expect((await get("/metals/own.json")).body).toBe(file);
  });

  test.each([
    [
      "a composition that does not add up",
      { composition: "Cu 50\nSn 22" },
      messageText("metal.own.sum-percent", { percent: 72 }),
    ],
    [
      "a share above a hundred per cent",
      { composition: "Cu 178\nSn 22" },
      messageText("metal.own.limits-percent", { line: "Cu 178" }),
    ],
    [
      "a band without width",
      { low: "8.62", high: "8.62" },
      messageText("metal.own.no-width", { name: "Quay bell metal" }),
    ],
    [
      "a line that is no composition",
      { composition: "mostly copper" },
      messageText("metal.own.composition-line", { line: "mostly copper" }),
    ],
    ["a low above the high", { low: "9" }, messageText("metal.own.band")],
    [
      "a density that is no number",
      { nominal: "heavy" },
      messageText("form.number.not-a-number", { typed: "heavy" }),
    ],
    ["a source left out", { source: "" }, messageText("metal.own.source")],
  ])("%s is refused in words, what was typed stays, and nothing changes", async (_what, wrong, message) => {
    const answer = await at.post("/metals/own", { ...bellMetal, ...wrong });
    expect(answer.statusCode).toBe(422);
    expect(answer.body).toContain(message);
    expect(answer.body).toContain('value="Quay bell metal"');
    expect(at.library.own).toBeUndefined();
  });

  test("a name stands once, and an id keeps its name", async () => {
    await at.post("/metals/own", bellMetal);
    const twice = await at.post("/metals/own", { ...bellMetal, name: "Quay-bell metal" });
    expect(twice.statusCode).toBe(422);
    const held = (await get("/metals/own.json")).body;
    const renamed = held.replace('"version": 1', '"version": 2').replace("Quay bell metal", "Quay tin");
    const answer = await at.post("/metals/own/import", { file: renamed });
    expect(answer.body).toContain(
      messageText("own.renamed", { id: "own-quay-bell-metal", held: "Quay bell metal", name: "Quay tin" }),
    );
    expect((await get("/metals/own.json")).body).toBe(held);
  });

  test("a file that is no JSON, and one of an older version, are refused", async () => {
    await at.post("/metals/own", bellMetal);
    await at.post("/metals/own", { ...bellMetal, name: "Second" });
    const held = (await get("/metals/own.json")).body;
    expect((await at.post("/metals/own/import", { file: "metals" })).body).toContain("JSON");
    const older = held.replace('"version": 2', '"version": 1');
    expect((await at.post("/metals/own/import", { file: older })).body).toContain(
      messageText("metal.file.version", { version: 1, held: 2 }),
    );
    expect(at.library.now.version).toMatch(/\+own\.2$/);
  });
});

describe("worth and occurrence", () => {
  test("figures of the owner are kept as a version, come back when emptied, and outlive a metal that is added", async () => {
    expect((await get("/worth")).statusCode).toBe(200);
    expect((await at.post("/worth", { "worth-Ag": "250", "offered-rare": "7" })).statusCode).toBe(303);
    await at.post("/metals/own", bellMetal);
    await at.post("/worth/occurrence", { metal: "el-cu", likelihood: "rare" });
    expect(at.library.own).toMatchObject({
      version: 3,
      worth: { Ag: 250 },
      other_in_thousand: { rare: 7 },
      likelihood: { "el-cu": "rare" },
    });
    expect(at.library.now.worth.of).toMatchObject({ Ag: 250, Au: 10_000 });
    expect(at.library.now.metal("el-cu").likelihood).toBe("rare");
    await at.post("/worth", { "worth-Ag": "", "offered-rare": "" });
    expect(at.library.now.worth.of.Ag).toBe(100);
  });

  test("what cannot be is refused at its entry, and nothing is kept", async () => {
    for (const [path, entry, typed] of [
      ["", "worth-Au", "0"],
      ["", "worth-Au", "dear"],
      ["", "offered-common", "500"],
      ["/occurrence", "metal", "au-750"],
      ["/occurrence", "metal", ""],
    ] as const) {
      const answer = await at.post(`/worth${path}`, { [entry]: typed, likelihood: "rare" });
      expect(answer.statusCode, typed).toBe(422);
      expect(answer.body).toContain(`href="#${entry}"`);
    }
    expect(at.library.own).toBeUndefined();
  });
});
