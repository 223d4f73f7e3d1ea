import { execFileSync } from "node:child_process";

/** The command line and the worker are tested as they are shipped, so the build comes before every run. */
export default function build(): void {
  execFileSync("npm", ["run", "build", "--silent"], { stdio: "inherit" });
}
