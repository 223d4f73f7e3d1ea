// Prepares a release: npm run release shows what it would do, npm run release -- --tag does it.
// It needs a clean work tree, a version that has no tag yet, and the section "### VERSION" of the README, which becomes the
// text of the tag. It writes the list of packages in the program (CycloneDX) into dist.
import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";

const run = (program, ...args) => execFileSync(program, args, { encoding: "utf8", maxBuffer: 2 ** 26 });
const { version } = JSON.parse(readFileSync("package.json", "utf8"));
const tag = `v${version}`;

const faults = [];
if (!/^\d+\.\d+\.\d+$/.test(version)) faults.push(`${version} is no semantic version.`);
if (run("git", "status", "--porcelain") !== "") faults.push("The work tree is not clean. Commit first.");
if (run("git", "tag", "--list", tag) !== "")
  faults.push(`The tag ${tag} stands. Raise the version in package.json.`);
const [, changed = ""] = readFileSync("README.md", "utf8").split(`\n### ${version}\n`);
const text = changed.split(/\n(?:##|---)/)[0].trim();
if (text === "") faults.push(`The README has no section “### ${version}” that says what changed.`);
if (faults.length > 0) {
  for (const fault of faults) console.error(fault);
  process.exit(1);
}

const list = `dist/underhook-${version}.cyclonedx.json`;
const sbom = run("npm", "sbom", "--sbom-format", "cyclonedx", "--omit", "dev");
writeFileSync(list, sbom);
console.log(`${list}: ${JSON.parse(sbom).components.length} packages`);
if (process.argv.includes("--tag")) {
  run("git", "tag", "--annotate", tag, "--message", `Underhook ${version}\n\n${text}`);
  console.log(`${tag} is set here. git push origin ${tag} publishes it.`);
} else console.log(`${tag} would say:\n\n${text}`);
