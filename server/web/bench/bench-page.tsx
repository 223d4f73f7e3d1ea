import { randomUUID } from "node:crypto";
import type { FastifyReply, FastifyRequest } from "fastify";
import { nameMessage } from "../../../drivers/balance-name.ts";
import { HandPart, type HandsView } from "../../../views/bench/hand-part.tsx";
import {
  BenchMain,
  BenchPhotos,
  ItemPart,
  LiveHeading,
  LivePart,
  PieceLine,
  ResultPart,
} from "../../../views/bench/index.tsx";
import type { BenchView, LiveView, Problem } from "../../../views/bench/view.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page, render } from "../../../views/page.tsx";
import type { Bench } from "../../station/bench.ts";
import type { RefusedForm } from "../evidence/size-view.ts";
import type { Draw } from "../live-stream.ts";
import { frameOf } from "../look.ts";
import { benchPhotos, type RefusedPhoto } from "../photos/photo-view.ts";
import { StandingRefusals } from "../standing-refusals.ts";
import type { BenchTests } from "./bench-tests.ts";
import { benchView } from "./bench-view.ts";
import { otherItemView } from "./other-item-view.ts";
import { PagesSeen } from "./pages-seen.ts";

/** What was sent back to the open pages, by the part that its form stands in. */
export interface BenchRefusals {
  item: StandingRefusals<Problem>;
  tests: StandingRefusals<RefusedForm>;
  photos: StandingRefusals<RefusedPhoto>;
}

/** A form of the page that was sent back: of the steps, of other tests, or of a photo. */
export interface RefusedBenchForm {
  problem?: Problem;
  tests?: RefusedForm;
  photo?: RefusedPhoto;
}

/** The Bench page as it is now: whole, and each of its live parts. */
export class BenchPage {
  readonly refusals: BenchRefusals = {
    item: new StandingRefusals(),
    tests: new StandingRefusals(),
    photos: new StandingRefusals(),
  };
  readonly seen = new PagesSeen();
  readonly #bench: Bench;
  readonly #tests: BenchTests;
  readonly #demo: boolean;
  readonly #hands: () => HandsView;

  constructor(bench: Bench, tests: BenchTests, demo: boolean, hands: () => HandsView) {
    this.#hands = hands;
    this.#bench = bench;
    this.#tests = tests;
    this.#demo = demo;
  }

  /** The piece that what is sent back is about. */
  get about(): string | undefined {
    return this.#bench.item?.id;
  }

  /** Each live part by the id of the element it fills. */
  get parts(): ReadonlyMap<string, Draw> {
    return new Map<string, Draw>([
      ["live-heading", (_, locale) => this.#heading(locale)],
      ["live-reading", (_, locale) => render(<LivePart {...this.#live()} />, locale)],
      ["piece-line", (token, locale, from) => this.#line(token, locale, from)],
      ["piece", (token, locale, from) => this.item(token, locale, this.refusals.item.of(from, this.about))],
      ["photos", (token, locale, from) => this.#photos(token, locale, from)],
      ["hands", () => render(<HandPart {...this.#hands()} />)],
      ["result", (token, locale, from) => this.#result(token, locale, from)],
    ]);
  }

  /** The part with the steps of the piece, or with the ticket of the next one. */
  item(token: string, locale: Locale, problem?: Problem): string {
    return render(<ItemPart view={this.#view(token, problem)} />, locale);
  }

  /** The whole page; with a form that was sent back. */
  whole(request: FastifyRequest, reply: FastifyReply, refused: RefusedBenchForm = {}): string {
    const frame = frameOf(request, reply, { path: "/", demo: this.#demo });
    const pageId = randomUUID();
    this.seen.drawn(pageId, this.#bench.about);
    return page({
      ...frame,
      title: tellerOf(frame.locale)("bench.title"),
      ownHeading: true,
      main: (
        <BenchMain
          view={this.#view(frame.csrfToken, refused.problem)}
          live={this.#live()}
          tests={this.#tests.view(frame.csrfToken, refused.tests)}
          photos={benchPhotos(this.#bench, frame.csrfToken, refused.photo)}
          hands={this.#hands()}
          pageId={pageId}
        />
      ),
    });
  }

  #heading(locale: Locale): string {
    const { scale } = this.#bench;
    return render(<LiveHeading scaleName={scale && nameMessage(scale.name)} />, locale);
  }

  #photos(token: string, locale: Locale, from: string | undefined): string {
    const problem = this.refusals.photos.of(from, this.about);
    return render(<BenchPhotos photos={benchPhotos(this.#bench, token, problem)} />, locale);
  }

  #line(token: string, locale: Locale, from: string | undefined): string {
    const view = this.#view(token, this.refusals.item.of(from, this.about));
    return render(<PieceLine view={view} />, locale);
  }

  #result(token: string, locale: Locale, from: string | undefined): string {
    const refused = this.refusals.tests.of(from, this.about);
    const tests = this.#tests.view(token, refused);
    return render(<ResultPart view={this.#view(token)} tests={tests} />, locale);
  }

  #live(): LiveView {
    const { scale, waitingFor, handsFree } = this.#bench;
    return {
      live: this.#bench.live,
      waitingFor,
      waitsBecause: scale?.waitsBecause?.(),
      handsFree: handsFree.now,
    };
  }

  #view(token: string, problem?: Problem): BenchView {
    const otherItem = otherItemView(this.#bench);
    return { ...benchView(this.#bench, token, this.#demo, problem), ...(otherItem ? { otherItem } : {}) };
  }
}
