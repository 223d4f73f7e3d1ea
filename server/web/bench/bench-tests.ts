import type { FastifyRequest } from "fastify";
import { type Message, message } from "../../../calibration/message.ts";
import type { OtherTestsView } from "../../../views/bench/other-tests.tsx";
import { isRefused } from "../../compute/evaluation.ts";
import { beforeWeighing } from "../../conformity/before-weighing.ts";
import { evidenceKinds, isEvidenceKind } from "../../conformity/evidence/evidence.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import type { Specification } from "../../metals/specifications/specification.ts";
import type { Bench } from "../../station/bench.ts";
import { timeZoneOf } from "../../station/bench-settings.ts";
import { currentSpecifications } from "../../station/current-specifications.ts";
import { countingEvidence } from "../../weighing/counting-evidence.ts";
import type { Item } from "../../weighing/item.ts";
import { aboutIn } from "../about.ts";
import { typedTest } from "../evidence/evidence-entry.ts";
import { madeTest } from "../evidence/evidence-made.ts";
import { standingDry } from "../evidence/size-form.ts";
import { type RefusedForm, sizeView } from "../evidence/size-view.ts";
import { testChoices } from "../evidence/test-choices.ts";
import { checksOfTests, excludedBy, excludedByTests, nextOf } from "../evidence/tests-view.ts";
import { asTyped } from "../page-request.ts";

const target = { action: "/bench/tests", fills: "other-tests" };

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
  async load(): Promise<void> {
    this.#specifications = (await currentSpecifications(this.#ledger, this.#bench.library)).all;
  }

  /** The part of the page; undefined while no piece is on the bench. */
  view(csrfToken: string, refused?: RefusedForm): OtherTestsView | undefined {
    const { open: item, about } = this.#bench;
    if (!item) return undefined;
    const { tests } = item;
    const { library, preferences } = this.#bench;
    const zone = timeZoneOf(preferences);
    const evidence = countingEvidence(tests);
    const made = new Set(evidence.map(({ kind }) => kind));
    const standing = this.#standing(item);
    const { excluded, next } = standing;
    const kind = refused && isEvidenceKind(refused.kind) ? refused.kind : undefined;
    return {
      ...(evidence.length > 0 ? { standing } : {}),
      checks: standing.checks,
      notMade: evidenceKinds.filter((one) => !made.has(one)),
      excluded: excludedByTests(excluded, library).map(({ called }) => called),
      next,
      evidence: {
        ...target,
        choices: testChoices,
        made: tests.flatMap((one) =>
          madeTest(one, { zone, excludes: (of) => excludedBy(of, excluded, library) }),
        ),
        next,
        ...(refused && kind ? { refused: { ...refused, kind } } : {}),
        csrfToken,
        about,
      },
      size: sizeView(tests, {
        specifications: this.#specifications,
        zone,
        asksMass: standingDry(item) === undefined,
        refused,
        ...target,
        csrfToken,
        about,
      }),
    };
  }

  /** Keeps the test a form states; or gives the form back with what was refused of it. Throws as Station.do. */
  async keep(request: FastifyRequest): Promise<RefusedForm | undefined> {
    const { item, library } = this.#bench;
    const mass = item && standingDry(item);
    const typed = typedTest(request, { specifications: this.#specifications, mass, library });
    if ("problems" in typed) return { kind: typed.kind, values: asTyped(request), problems: typed.problems };
    await this.#bench.station.do({ do: "add-test", ...aboutIn(request), test: typed.body });
    return undefined;
  }

  get #weighed() {
    const { evaluation } = this.#bench;
    return evaluation && !isRefused(evaluation) ? evaluation : undefined;
  }

  /** What the statement says; before it is weighed, what the tests alone say. */
  #standing({ claim, tests }: Item) {
    const weighed = this.#weighed;
    if (weighed) {
      const { statement } = weighed;
      const { conformity, answer, excluded_by_tests: excluded } = statement;
      const checks = checksOfTests(statement);
      return { state: conformity.state, answer, checks, excluded, next: nextOf(statement) };
    }
    const next: Message[] = [message("answer.next.weigh")];
    return { ...beforeWeighing(claim, countingEvidence(tests), this.#bench.library), next };
  }
}
