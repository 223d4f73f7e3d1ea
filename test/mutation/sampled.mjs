import { createHash } from "node:crypto";
import { declareClassPlugin, PluginKind } from "@stryker-mutator/api/plugin";

const share = Number(process.env.MUTATION_SHARE);

/** In the sample or not, by what is changed and the seed: the same again, wherever the folder lies. */
function inSample({ fileName, location: { start, end }, mutatorName, replacement }) {
  const place = [fileName.replace(/.*(?=calibration\/|server\/)/, ""), start, end];
  const text = JSON.stringify([process.env.MUTATION_SEED, place, mutatorName, replacement]);
  return createHash("sha256").update(text).digest().readUInt32BE(0) / 2 ** 32 < share;
}

/** Lets the changes of the sample pass; the others count as none. */
class Sample {
  async init() {}

  async group(mutants) {
    return [mutants.map(({ id }) => id)];
  }

  async check(mutants) {
    const outside = { status: "compileError", reason: "not in the sample" };
    return Object.fromEntries(
      mutants.map((mutant) => [mutant.id, inSample(mutant) ? { status: "passed" } : outside]),
    );
  }
}

export const strykerPlugins = [declareClassPlugin(PluginKind.Checker, "sample", Sample)];
