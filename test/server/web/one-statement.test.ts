import { randomBytes } from "node:crypto";
import { afterEach, beforeEach, expect, test } from "vitest";
import { compute } from "../../../server/compute/compute.ts";
import { csvRows } from "../../../server/ledger/csv.ts";
import { newToken } from "../../../server/ledger/tokens.ts";
import { calledById } from "../../../server/metals/composites/composite-by-id.ts";
import { builtIn } from "../../../server/metals/library.ts";
import { tellValue } from "../../../views/messages/tell.ts";
import { messageText } from "../../message-text.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { host, recorded, textOf } from "./recorded.ts";

let at: TestBench;
beforeEach(async () => {
  at = await buildTestBench();
  // invented readings: fine silver, 31.1 g
  await recorded(at, { id: "bar-1", ticket: "B-1", claim: "ag-999", dry: "31.1035", immersed: "28.1435" });
});
afterEach(() => at.close());

/** What the ledger froze with the record. */
async function frozen() {
  const entry = (await at.ledger.entriesOf("bar-1")).find(({ kind }) => kind === "result");
  if (entry?.kind !== "result" || !entry.body.statement) throw new Error("no statement was frozen");
  return entry.body;
}

test("what compute answers for the recorded request is the frozen statement, digit by digit", async () => {
  const { request, statement } = await frozen();
  const answer = compute(request);
  if ("error" in answer) throw new Error(answer.error.at);
  for (const key of ["density_g_cm3", "u_g_cm3", "k", "interval_g_cm3", "mass_g", "volume_cm3"] as const)
    expect(answer[key], key).toEqual(statement?.[key]);
  expect(answer.conformity.state).toBe(statement?.conformity.state);
  expect(answer.not_excluded.map(({ id }) => id)).toEqual(statement?.not_excluded.map(({ id }) => id));
  expect(answer.cautions).toEqual(statement?.cautions);
});

test("the record lists every alternative of the statement once, and its cautions", async () => {
  const { statement } = await frozen();
  const { body } = await at.app.inject({ url: "/records/bar-1", headers: { host } });
  const finding = /aria-labelledby="finding-heading"[\s\S]*?<\/section>/.exec(body)?.[0] ?? "";
  const listed = [...finding.matchAll(/href="\/metals\/([^"]+)"/g)].map(([, id]) => id);
  const others = statement?.not_excluded.map(({ id }) => id).filter((id) => id !== "ag-999");
  expect(listed).toEqual(others);
  const text = await textOf(at, "/records/bar-1");
  expect(statement?.cautions).toContain("lead");
  expect(text).toContain(messageText("hazard.of.lead"));
});

test("compute, record, evidence page, share sheet and API list the same alternatives, each once", async () => {
  const { request, statement } = await frozen();
  const ids = (list: readonly { id: string }[] | undefined) => (list ?? []).map(({ id }) => id);
  const left = ids(statement?.not_excluded);
  expect(new Set(left).size).toBe(left.length);
  const answer = compute(request);
  expect("error" in answer ? [] : ids(answer.not_excluded)).toEqual(left);
  const others = left.filter((id) => id !== "ag-999");
  // a part of the record; on the page of evidence a fold, up to what stands after it
  const listing = /aria-labelledby="finding-heading".*?<\/section>|id="not-excluded".*?id="size/s;
  for (const url of ["/records/bar-1", "/records/bar-1/evidence"]) {
    const { body } = await at.app.inject({ url, headers: { host } });
    const result = listing.exec(body)?.[0] ?? "";
    expect(
      [...result.matchAll(/href="\/metals\/([^"]+)"/g)].map(([, id]) => id),
      url,
    ).toEqual(others);
    expect(result, url).toContain(messageText("result.not-excluded", { count: others.length }));
  }
  const sheet = (await at.app.inject({ url: "/records/bar-1/share.txt", headers: { host } })).body;
  const named = left.map((id) => tellValue(calledById(id, builtIn), "en")).join(", ");
  expect(sheet).toContain(`${named}.`);
  const { token, tokenHash } = newToken(randomBytes(32));
  await at.ledger.append("token-issued", "tokens", {
    name: "laboratory",
    tokenHash,
    scopes: ["records:read"],
  });
  const api = await at.app.inject({
    url: "/api/records/bar-1",
    headers: { host, authorization: `Bearer ${token}` },
  });
  expect(ids(api.json().statement.not_excluded)).toEqual(left);
});

test("the list as CSV holds the statement and the readings, digit by digit", async () => {
  const statement = JSON.parse(JSON.stringify((await frozen()).statement));
  const { body } = await at.app.inject({ url: "/records.csv", headers: { host } });
  const [head, row] = [...csvRows(body)];
  const cell = (name: string) => row?.cells[head?.cells.indexOf(name) ?? -1];
  const { fineness, interval_g_cm3: interval, not_excluded, checks } = statement;
  expect({
    method: cell("method"),
    readings: cell("readings"),
    density: cell("density (g/cm3)"),
    from: cell("lower end of the interval (g/cm3)"),
    to: cell("upper end of the interval (g/cm3)"),
    k: cell("coverage factor k"),
    left: cell("not excluded"),
    fineness: [cell("fineness of"), cell("fineness from (permille)"), cell("fineness to (permille)")],
    checks: cell("checks"),
    library: cell("metals library"),
  }).toEqual({
    method: "hung",
    readings: "dry 31.1035 g; immersed 28.1435 g",
    density: `${statement.density_g_cm3}`,
    from: `${interval[0]}`,
    to: `${interval[1]}`,
    k: `${statement.k}`,
    left: not_excluded.map(({ id }: { id: string }) => id).join(" "),
    fineness: [fineness.element, `${fineness.permille[0]}`, `${fineness.permille[1]}`],
    checks: checks.map(({ code }: { code: string }) => code).join(" "),
    library: statement.versions.library,
  });
});

test("a coil that excludes the claim reaches record, share sheet and list", async () => {
  // invented readings of 19.27 g/cm³; the coil reads tungsten, 31.4 % IACS, where gold has 70 %
  await recorded(at, { id: "bar-2", ticket: "B-2", claim: "au-999", dry: "31.1035", immersed: "29.4925" });
  const coil = { "conductivity-percent": "31.4", "conductivity-within": "1", "conductivity-celsius": "20" };
  await at.post("/records/bar-2/evidence", { kind: "conductivity", ...coil });
  const [listed] = (await at.ledger.records({ filters: { ticket: "B-2" } })).records;
  expect(listed?.state).toBe("excluded");
  for (const page of ["/records/bar-2", "/records/bar-2/share.txt"]) {
    const { body } = await at.app.inject({ url: page, headers: { host } });
    expect(body, page).toContain(messageText("state.excluded"));
  }
});
