import { BaseSequencer, type TestSpecification } from "vitest/node";

/** Files that take a minute or more; one of them left for the end keeps a single core busy while the other waits. */
const longest = ["/virtual-bench/coverage.test.ts", "/server/bench.browser.test.ts"];

/** A worker goes on to a file of its own project only, else it is ended and its modules are loaded anew: one project after the other. */
const projects = ["browser", "serial", "unit"];

/** The usual order in each project, but with the longest files of all at the head. */
export default class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const usual = await super.sort(files);
    const place = ({ moduleId, project }: TestSpecification) =>
      longest.some((end) => moduleId.endsWith(end)) ? -1 : projects.indexOf(project.name);
    return usual.toSorted((one, other) => place(one) - place(other));
  }
}
