// One thread of `underhook compute`: answers the lines it is handed.
export { answeredLines as default } from "./answered-line.ts";
