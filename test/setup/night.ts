import { seed, whole } from "./long-run.ts";

/** Says before a night's run what is whole in it, and from which seed it can be repeated. */
export default function setup(): void {
  if (!whole) return;
  console.log(
    [
      `Nightly run from seed ${seed}; UNDERHOOK_SEED=${seed} npm run nightly repeats it.`,
      "Whole: damaged lines (a million to every generic shape), 1,000 unpluggings, 500 kills of the bench, the coverage of",
      "the virtual bench (more than 20,000 weighings), property runs, the set-up of a balance at a person's pace.",
      "Then the benchmarks at full size, among them a ledger of a million weighings.",
    ].join("\n"),
  );
}
