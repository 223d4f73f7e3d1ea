import { spawn, spawnSync } from "node:child_process";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { message } from "../../../calibration/message.ts";
import { tell } from "../../../views/messages/tell.ts";

const entry = fileURLToPath(new URL("../../../dist/server/underhook.js", import.meta.url));

/** The built command, as `package.json` names it, fed through standard input. */
function underhook(input: string, ...options: string[]) {
  const { status, stdout } = spawnSync(process.execPath, [entry, "compute", ...options], {
    input,
    encoding: "utf8",
    maxBuffer: 2 ** 26,
  });
  return {
    status,
    answers: stdout
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line)),
  };
}

const good = (id: string) =>
  JSON.stringify({
    id,
    method: "displaced",
    dry: { readings: ["31.10"] },
    rise: { readings: ["2.96"] },
    liquid: { kind: "water", temperature_c: 20 },
    air: { altitude_m: 0 },
    balance: { readability_g: 0.01, repeatability_g: 0.01 },
  });

describe("underhook compute", () => {
  it("answers every line in order, a bad one with its error, and ends with status 1", () => {
    const nested = `{"pieces":${"[".repeat(40_000)}${"]".repeat(40_000)}}`;
    const { status, answers } = underhook(`${good("one")}\nnot json\n\n${good("three")}\n${nested}\n`);
    expect(answers.map((answer) => answer.id)).toEqual(["one", null, "three", null]);
    expect(answers[1].error.message).toMatch(/not JSON.*one whole object on each line/);
    expect(answers[3].error.message).toBe(tell(message("compute.too-deep", { most: 32 }), "en"));
    expect(answers[2].density_g_cm3).toBe(answers[0].density_g_cm3);
    expect(status).toBe(1);
  });

  it("totals every line that was weighed, and apart the mass of those whose fine metal counts", () => {
    const claimed = (id: string, claim: string) => JSON.stringify({ ...JSON.parse(good(id)), claim });
    const { answers } = underhook(
      `${claimed("silver", "ag-999")}\n${claimed("not gold", "au-999")}\n`,
      "--total",
    );
    const [silver, notGold, { total }] = answers;
    expect(notGold.conformity.state).toBe("excluded");
    expect(total).toMatchObject({ items: 2, counted: 1, counted_mass_g: silver.mass_g });
    expect(total.mass_g).toBeCloseTo(2 * silver.mass_g, 9);
    expect(total.fine).toMatchObject([{ element: "Ag", fine_g: silver.fineness.fine_g }]);
  });

  it("ends with status 0 when every line could be computed", () => {
    expect(underhook(good("only")).status).toBe(0);
  });

  // more than one thread answers from about the hundredth line on
  it("gives the answers of a long file in the order of its lines, each as it is answered alone", () => {
    const lines = Array.from({ length: 400 }, (_, n) => (n === 250 ? "not json" : good(`${n}`)));
    const { status, answers } = underhook(`${lines.join("\n")}\n`);
    expect(answers.map((answer) => answer.id)).toEqual(lines.map((_, n) => (n === 250 ? null : `${n}`)));
    const { id: _, ...alone } = underhook(good("alone")).answers[0];
    for (const { id, error, ...answer } of answers) if (!error) expect(answer, id).toEqual(alone);
    expect(status).toBe(1);
  });

  it("answers each line of an open pipe without waiting for more, also after many", async () => {
    const child = spawn(process.execPath, [entry, "compute"], { stdio: ["pipe", "pipe", "inherit"] });
    const answers = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
    child.stdin.write(`${Array.from({ length: 130 }, (_, n) => good(`${n}`)).join("\n")}\n`);
    for (let n = 0; n < 130; n++) expect(JSON.parse((await answers.next()).value).id).toBe(`${n}`);
    for (const id of ["one more", "and one"]) {
      child.stdin.write(`${good(id)}\n`);
      expect(JSON.parse((await answers.next()).value).id).toBe(id);
    }
    child.stdin.end();
    expect((await answers.next()).done).toBe(true);
  });
});
