// npm run check: style, types, imports and what nobody uses, side by side; what each says is printed whole, in this order.
import { spawn } from "node:child_process";

const checks = ["biome ci .", "tsc -p tsconfig.json", "node test/setup/imports.mjs", "knip --no-progress"];

function run(command) {
  const child = spawn(command, { shell: true, stdio: ["ignore", "pipe", "pipe"] });
  let said = "";
  for (const stream of [child.stdout, child.stderr]) stream.on("data", (chunk) => (said += chunk));
  return new Promise((resolve) => child.on("close", (status) => resolve({ command, status, said })));
}

const outcomes = await Promise.all(checks.map(run));
for (const { command, status, said } of outcomes) {
  console.log(`${command}: ${status === 0 ? "clean" : `status ${status}`}`);
  if (said.trim() !== "") console.log(said.trim());
}
process.exitCode = outcomes.every(({ status }) => status === 0) ? 0 : 1;
