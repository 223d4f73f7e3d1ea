import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";

const entry = fileURLToPath(new URL("../../../dist/server/underhook.js", import.meta.url));

/** The built command, as `package.json` names it, fed through standard input. */
function underhook(input: string) {
  const { status, stdout } = spawnSync(process.execPath, [entry, "compute"], { input, encoding: "utf8" });
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
    const { status, answers } = underhook(`${good("one")}\nnot json\n\n${good("three")}\n`);
    expect(answers.map((answer) => answer.id)).toEqual(["one", null, "three"]);
    expect(answers[1].error.message).toMatch(/not JSON.*one whole object on each line/);
    expect(answers[2].density_g_cm3).toBe(answers[0].density_g_cm3);
    expect(status).toBe(1);
  });

  it("ends with status 0 when every line could be computed", () => {
    expect(underhook(good("only")).status).toBe(0);
  });
});
