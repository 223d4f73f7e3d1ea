// npm run check: holds who imports whom (.dependency-cruiser.mjs), and that the whole house was looked at.
import { cruise } from "dependency-cruiser";
import extractTSConfig from "dependency-cruiser/config-utl/extract-ts-config";
import config from "../../.dependency-cruiser.mjs";

/** Fewer than these means that something was not looked at. */
const leastModules = 300;
const folders = ["calibration", "drivers", "server", "views", "test", "vitest.config.ts"];

const { forbidden, options } = config;
const { output, exitCode } = await cruise(
  folders,
  { ...options, ruleSet: { forbidden }, validate: true, outputType: "err-long" },
  undefined,
  { tsConfig: extractTSConfig(options.tsConfig.fileName) },
);
console.log(output);
const found = Number(/\((\d+) modules|(\d+) modules,/.exec(String(output))?.slice(1).find(Boolean));
if (!(found > leastModules)) {
  console.error(
    `${found} modules were looked at; more than ${leastModules} are there. Run from the top folder.`,
  );
  process.exitCode = 1;
}
if (exitCode !== 0) process.exitCode = 1;
