import type { OtherTestsView } from "../../../views/bench/other-tests.tsx";
import type { Locale } from "../../../views/messages/language.ts";
import { isRefused } from "../../compute/evaluation.ts";
import { evidenceKinds } from "../../conformity/evidence/evidence.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import type { Specification } from "../../metals/specifications/specification.ts";
import type { Bench } from "../../station/bench.ts";
import { currentSpecifications } from "../../station/current-specifications.ts";
import { countingEvidence } from "../../weighing/counting-evidence.ts";
import type { Item } from "../../weighing/item.ts";
import { aboutOf } from "../about.ts";
import { typedTest } from "../evidence/evidence-entry.ts";
import { madeTest } from "../evidence/evidence-made.ts";
import { type Standing, standingOf, standingUnweighed } from "../evidence/evidence-standing.ts";
import { standingDry } from "../evidence/size-form.ts";
import { type RefusedForm, sizeView } from "../evidence/size-view.ts";

const target = { action: "/bench/tests", fills: "other-tests" };
const weighItNext = "Weigh it: of all harmless tests the density strikes out most.";

/** Other tests of the piece on the bench: its part of the page, and what its forms ask for. */
export class BenchTests {
  readonly #bench: Bench;
  readonly #ledger: Ledger;
  /** as last read: a part that is drawn at every line of the balance cannot wait for the ledger */
  #specifications: readonly Specification[] = [];

  constructor(bench: Bench, ledger: Ledger) {
    this.#bench = bench;
    this.#ledger = ledger;
  }

  /** Looks up what pieces may be held against; before a page is drawn whole and before a form is read. */
  async look(): Promise<void> {
    this.#specifications = (await currentSpecifications(this.#ledger, this.#bench.library)).all;
  }

  /** The part of the page; undefined while no piece is on the bench. */
  view(csrfToken: string, refused?: RefusedForm): OtherTestsView | undefined {
    const { open: item, about } = this.#bench;
    if (!item) return undefined;
    const { tests } = item;
    const standing = this.#standing(item);
    const { weighed } = standing;
    const kind = evidenceKinds.find((test) => test.kind === refused?.kind)?.kind;
    const next = this.#weighed ? weighed.nextTest?.says : weighItNext;
    return {
      ...(countingEvidence(tests).length > 0 ? { standing } : {}),
      contradictions: weighed.contradictions,
      doubts: weighed.doubts,
      holes: weighed.holes.map(({ name }) => name),
      struckOut: [...new Set(weighed.struck.map(({ name }) => name))],
      ...(next === undefined ? {} : { next }),
      evidence: {
        ...target,
        made: tests.flatMap((one) => madeTest(one, standing)),
        ...(refused && kind ? { refused: { ...refused, kind } } : {}),
        csrfToken,
        about,
      },
      size: sizeView(tests, {
        specifications: this.#specifications,
        weighed: this.#weighed?.statement,
        asksMass: standingDry(item) === undefined,
        refused,
        ...target,
        csrfToken,
        about,
      }),
    };
  }

  /** Keeps the test a form states; or gives the form back with what was refused of it. Throws as Station.do. */
  async keep(values: Record<string, string>, locale: Locale): Promise<RefusedForm | undefined> {
    const { item, library } = this.#bench;
    const mass = item && standingDry(item);
    const typed = typedTest(values, locale, { specifications: this.#specifications, mass, library });
    if ("problems" in typed) return { kind: values.kind ?? "", values, problems: typed.problems };
    await this.#bench.station.do({ do: "add-test", ...aboutOf(values), test: typed.body });
    return undefined;
  }

  get #weighed() {
    const { evaluation } = this.#bench;
    return evaluation && !isRefused(evaluation) ? evaluation : undefined;
  }

  #standing({ claim, tests }: Item): Standing {
    const { library } = this.#bench;
    const found = countingEvidence(tests);
    const weighed = this.#weighed;
    if (!weighed) return standingUnweighed(claim, found, library);
    const { request, statement } = weighed;
    const celsius = request.liquid?.kind === "water" ? request.liquid.temperature_c : 20;
    return standingOf({ statement, confidence: request.confidence, celsius, claim }, found, library);
  }
}
