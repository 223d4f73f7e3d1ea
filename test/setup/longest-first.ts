import { BaseSequencer, type TestSpecification } from "vitest/node";

/** Files that take a minute or more; one of them left for the end keeps a single core busy while the other waits. */
const longest = ["/virtual-bench/coverage.test.ts", "/server/bench.browser.test.ts"];

/** The usual order, but with the longest files at its head. */
export default class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const usual = await super.sort(files);
    const isLong = ({ moduleId }: TestSpecification) => longest.some((end) => moduleId.endsWith(end));
    return [...usual.filter(isLong), ...usual.filter((one) => !isLong(one))];
  }
}
